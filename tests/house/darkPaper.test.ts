import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const renderer = fileURLToPath(new URL('../../renderer', import.meta.url));
const files = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter((file) => /\.(css|tsx?)$/.test(file));
const textOf = (file: string) => readFileSync(join(renderer, file), 'utf8').replaceAll(/\/\*[^]*?\*\//g, '');

/** What stands between the braces that open at or after `from`. */
function block(text: string, from: number): string {
  const start = text.indexOf('{', from);
  let depth = 0;
  for (let at = start; at < text.length; at += 1) {
    if (text[at] === '{') depth += 1;
    if (text[at] === '}' && (depth -= 1) === 0) return text.slice(start + 1, at);
  }
  throw new Error('braces do not close');
}

/** Names of the properties that a file sets on dark paper alone. */
function setOnDark(css: string): string[] {
  return [...css.matchAll(/prefers-color-scheme:\s*dark/g)].flatMap(({ index }) => [...block(css, index).matchAll(/([\w-]+)\s*:[^;{}]+;/g)].map(([, name = '']) => name));
}

// The screen tests look for faults of access on light paper by all rules and on dark paper by those about colour: see tests/screens/support/axe.ts.
test('dark paper is the same page in other colours', () => {
  const set = files.filter((file) => file.endsWith('.css')).flatMap((file) => setOnDark(textOf(file)).map((name) => `${file}: ${name}`));
  expect(set.length).toBeGreaterThan(10);
  expect(set.filter((one) => !/: (--[\w-]+|color-scheme|color|background|background-color|border-color|fill|stroke)$/.test(one))).toEqual([]);
  expect(files.filter((file) => !file.endsWith('.css') && /prefers-color-scheme/.test(textOf(file)))).toEqual([]);
});

test('a rule that hides something on dark paper would be seen', () => {
  expect(setOnDark('@media (prefers-color-scheme: dark) { :root { --paper: #111; } .note { display: none; } } p { margin: 0; }')).toEqual(['--paper', 'display']);
});
