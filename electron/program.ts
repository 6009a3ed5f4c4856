import packageJson from '../package.json' with { type: 'json' };

/** The program's name and version, as it stands in books and messages. */
export const program = `Outyard ${packageJson.version}`;
