// Plain JavaScript on purpose: it must still run where TypeScript does not, to say so in a sentence.
// Older ones either cannot read .ts files or end without a word when the database is loaded.

/** The oldest Node that reads .ts files as they are and carries the database. */
export const oldest = [22, 18];

/**
 * What to tell the person about their Node; null when it serves.
 * @param {string} version as in process.versions.node
 * @returns {string | null}
 */
export function nodeSentence(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > oldest[0] || (major === oldest[0] && minor >= oldest[1])) return null;
  return (
    `Outyard needs Node ${oldest.join('.')} or later, and this is Node ${version}. ` +
    'On 64-bit Linux and Windows "npm ci" brings the right one and "npm start" and "npm test" use it; ' +
    'elsewhere install a current Node, then run "npm ci" again.'
  );
}

const sentence = nodeSentence(process.versions.node);
if (sentence !== null) {
  console.error(sentence);
  process.exit(1);
}
