import type { Finding } from './finding.ts';

/** A folder of somebody's own machine, and the addresses of package shops: neither belongs in a program others clone. The window's own addresses of the work are no folders. */
const machinePath = /(?:^|[^a-zA-Z0-9_./-])(\/(?:work\/(?!(?:tasks|hours|worked|calendar)\b)|(?:farm|root|tmp)\/)[a-zA-Z0-9_])/;
const packageShop = /registry\.(?:npm[j]s|yarn[p]kg)|(?:deb|security|ftp)\.debian\.[o]rg|npm[m]irror|\/artifactory\//;
const secret = /-----BEGIN [A-Z ]*PRIVATE KEY-----|\bgh[pousr]_[A-Za-z0-9]{20,}|\bnpm_[A-Za-z0-9]{30,}|\bAKIA[0-9A-Z]{16}\b/;

/** What one text file says that is true of one machine only. */
export function judgeMachineWords(file: string, text: string): Finding[] {
  return text.split('\n').flatMap((content, index) => {
    const sentences: string[] = [];
    const path = file === 'package-lock.json' ? null : machinePath.exec(content);
    if (path) sentences.push(`names a folder of one machine (${path[1]}...): use a path from the root or the system's scratch folder`);
    if (packageShop.test(content)) sentences.push('names the address of a package shop: leave that to the machine');
    if (secret.test(content)) sentences.push('holds what looks like a secret');
    return sentences.map((sentence) => ({ file, line: index + 1, sentence }));
  });
}

const binaryEnding = /\.(?:png|jpe?g|gif|ico|icns|woff2?|ttf|otf|outyard|wasm|pdf|zip|gz)$/i;

export function isText(file: string): boolean {
  return !binaryEnding.test(file);
}
