/** The program's version; a test holds it equal to the package's own. */
export const version = '0.1.0';

/** The program's name and version, as it stands in books and messages. */
export const program = `Outyard ${version}`;
