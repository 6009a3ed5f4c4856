/** What to do about the Node that runs this, in a sentence, or null if it will serve. */
export function unfitNode(version: string): string | null {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > 22 || (major === 22 && minor >= 12)) return null;
  return (
    `Outyard needs Node 22.12 or newer and this is Node ${version}. ` +
    'Start it with npm (npm start, npm run outyard), which brings its own Node on Linux and Windows; elsewhere install Node 24 first.'
  );
}
