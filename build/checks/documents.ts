import { posix } from 'node:path';
import type { Finding } from './finding.ts';

/** What the documents may speak of: the files there are and the scripts of package.json. */
export interface DocumentedHouse {
  readonly files: ReadonlySet<string>;
  readonly scripts: ReadonlySet<string>;
}

/**
 * Checks one Markdown document against the house: every link and picture leads to a file (and heading) that is there,
 * every path in code marks exists, and every npm command is one that package.json knows.
 */
export function judgeDocument(file: string, text: string, house: DocumentedHouse, headingsOf: (file: string) => readonly string[]): Finding[] {
  const findings: Finding[] = [];
  const folders = new Set([...house.files].flatMap((path) => parents(path)));
  const there = (path: string) => house.files.has(path) || folders.has(path.replace(/\/$/, ''));

  text.split('\n').forEach((content, index) => {
    const found = (sentence: string) => void findings.push({ file, line: index + 1, sentence });
    for (const [, address] of content.matchAll(/!?\[[^\]]*\]\(([^)\s]+)[^)]*\)/g)) {
      if (address === undefined || /^(?:https?|mailto):/.test(address)) continue;
      const [path = '', heading] = address.split('#');
      const target = path === '' ? file : posix.normalize(posix.join(posix.dirname(file), path));
      if (!there(target)) found(`leads to ${address}, which is not there`);
      else if (heading !== undefined && !headingsOf(target).includes(heading)) found(`leads to ${address}, but ${target} has no such heading`);
    }
    for (const [, path] of content.matchAll(/`((?:build|core|electron|renderer|shared|tests)\/[\w./-]*)`/g)) {
      if (path !== undefined && !there(path)) found(`speaks of ${path}, which is not there`);
    }
    for (const [command, script] of content.matchAll(/\bnpm (?:run (?:-s |--silent )?)?([a-z][\w:-]*)/g)) {
      const name = /^npm run\b/.test(command) ? script : ['start', 'test'].includes(script ?? '') ? script : undefined;
      if (name !== undefined && !house.scripts.has(name)) found(`says ${command}, but package.json has no script ${name}`);
    }
  });
  return findings;
}

/** The anchors of a Markdown text's headings, as they are written in links. */
export function headings(text: string): string[] {
  return [...text.matchAll(/^#{1,6} +(.+?) *$/gm)].map(([, heading = '']) =>
    heading.toLowerCase().replace(/[^\w\- ]/g, '').replace(/ /g, '-'),
  );
}

function parents(path: string): string[] {
  const parts = path.split('/').slice(0, -1);
  return parts.map((_, index) => parts.slice(0, index + 1).join('/'));
}
