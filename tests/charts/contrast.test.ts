import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync(new URL('../../renderer/charts/charts.css', import.meta.url), 'utf8');
const tokens = readFileSync(new URL('../../renderer/styles/tokens.css', import.meta.url), 'utf8');

/** The custom properties of the first rule with a selector. */
function properties(sheet: string, selector: string): Map<string, string> {
  const from = sheet.indexOf(`${selector} {`);
  expect(from, selector).toBeGreaterThanOrEqual(0);
  const body = sheet.slice(sheet.indexOf('{', from) + 1, sheet.indexOf('}', from));
  return new Map([...body.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6})/g)].map((found) => [found[1]!, found[2]!]));
}

/** Contrast ratio of WCAG 2.2, "contrast ratio" and "relative luminance". */
function contrast(one: string, other: string): number {
  const luminance = (colour: string) => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

test('the contrast formula gives its known ends', () => {
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 10);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

test.each([':root', ":root:not([data-theme='light'])", ":root[data-theme='dark']"])('lines have 3:1 and their names 4.5:1 under %s', (selector) => {
  const series = properties(css, selector);
  const paper = properties(tokens, selector).get('--paper')!;
  expect(series.size).toBe(8);
  for (const [name, colour] of series) expect(contrast(colour, paper), name).toBeGreaterThanOrEqual(name.endsWith('-text') ? 4.5 : 3);
});

test('both ways into dark paper have the same colours', () => {
  expect(properties(css, ":root:not([data-theme='light'])")).toEqual(properties(css, ":root[data-theme='dark']"));
});
