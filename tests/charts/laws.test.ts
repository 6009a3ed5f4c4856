import fc from 'fast-check';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { intervalEnd } from '../../renderer/charts/IntervalDots.tsx';
import { linearScale, niceTicks } from '../../renderer/charts/scale.ts';
import { seriesStyle } from '../../renderer/charts/series.ts';
import { survivalGeometry, type PlacedText } from '../../renderer/charts/survivalGeometry.ts';
import { survivorGeometry } from '../../renderer/charts/survivorGeometry.ts';
import { spread, textSize, textWidth } from '../../renderer/charts/text.ts';
import { ageTicks, monthTicks } from '../../renderer/charts/timeTicks.ts';
import { sampleCurve } from './sampleCurves.ts';

const span = fc.record({ exit: fc.integer({ min: 1, max: 182 }), lost: fc.boolean() });
const curves = fc
  .array(fc.array(span, { minLength: 1, maxLength: 40 }), { minLength: 1, maxLength: 8 })
  .map((groups) => groups.map((group, place) => ({ key: String(place), label: `Yard number ${place}`, place, curve: sampleCurve(group, 182) })));

test('a scale keeps the order and reaches both ends', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: 1, max: 5000 }), fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (from, width, parts) => {
      const scale = linearScale([from, from + width], [10, 400]);
      expect(scale(from)).toBe(10);
      expect(scale(from + width)).toBe(400);
      const placed = parts.sort((a, b) => a - b).map((part) => scale(from + part * width));
      for (let index = 1; index < placed.length; index += 1) expect(placed[index]!).toBeGreaterThanOrEqual(placed[index - 1]!);
    }),
  );
});

test('ticks rise evenly and stay inside', () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: 0.01, max: 5000, noNaN: true }), fc.integer({ min: 1, max: 12 }), (from, width, count) => {
      const ticks = niceTicks(from, from + width, count);
      for (const tick of ticks) {
        expect(tick).toBeGreaterThanOrEqual(from - width * 1e-6);
        expect(tick).toBeLessThanOrEqual(from + width * (1 + 1e-6));
      }
      expect(ticks.length).toBeLessThanOrEqual(count + 1);
    }),
  );
});

test('spread labels keep their gap, their order and their room', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 12 }), (wishes) => {
      const places = spread(wishes, 16, 0, 200);
      const sorted = wishes.map((wish, index) => ({ wish, place: places[index]! })).sort((a, b) => a.wish - b.wish || a.place - b.place);
      sorted.forEach(({ place }, index) => {
        expect(place).toBeGreaterThanOrEqual(-1e-9);
        expect(place).toBeLessThanOrEqual(200 + 1e-9);
        const next = sorted[index + 1];
        if (next) expect(next.place - place).toBeGreaterThanOrEqual(16 - 1e-9);
      });
    }),
  );
});

test('a label that has room stays where it wants to be', () => {
  expect(spread([20, 100, 180], 16, 0, 200)).toEqual([20, 100, 180]);
});

test('no two texts of a survival picture overlap, and all stay in it', () => {
  fc.assert(
    fc.property(curves, fc.integer({ min: 320, max: 1200 }), fc.boolean(), (lines, width, calendar) => {
      const picture = survivalGeometry(lines, { origin: calendar ? day('2025-10-01') : null, width });
      const texts = [
        ...picture.xLabels, ...picture.lines.flatMap((line) => [line.label, line.stripLabel, ...line.strip]), picture.stripTitle,
        ...(picture.axisTitle ? [picture.axisTitle] : []),
      ].map(boxOf);
      for (const [index, box] of texts.entries()) {
        expect(box.right, box.text).toBeLessThanOrEqual(width + 1);
        expect(box.bottom, box.text).toBeLessThanOrEqual(picture.height);
        for (const other of texts.slice(index + 1)) expect(overlap(box, other), `${box.text} / ${other.text}`).toBe(false);
      }
    }),
    { numRuns: 60 },
  );
});

test('every interval of a survival curve is drawn, and lies round its curve', () => {
  fc.assert(
    fc.property(curves, (lines) => {
      const picture = survivalGeometry(lines, { origin: null, width: 600 });
      picture.lines.forEach((drawn, index) => {
        const { curve } = lines[index]!;
        const steps = drawn.bands.join('').match(/H/g)?.length ?? 0;
        // A step of the band is one stroke right on its upper and one left on its lower edge.
        expect(steps).toBe(2 * curve.low.filter((low) => low !== null).length);
      });
    }),
    { numRuns: 60 },
  );
});

test('the drawn curve never rises', () => {
  fc.assert(
    fc.property(curves, (lines) => {
      for (const { path } of survivalGeometry(lines, { origin: null, width: 600 }).lines) {
        const heights = [...path.matchAll(/V([\d.]+)/g)].map((match) => Number(match[1]));
        heights.forEach((height, index) => expect(height).toBeGreaterThanOrEqual(heights[index - 1] ?? 0));
      }
    }),
    { numRuns: 60 },
  );
});

test('every number of survivors with a real chance has a bar; those of the 80 % range are marked', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 500 }), fc.integer({ min: 200, max: 900 }), (living, target, width) => {
      const chances = Array.from({ length: living + 1 }, (_, survivors) => ({ survivors, chance: 1 / (living + 1) }));
      const low = Math.floor(living * 0.1);
      const high = Math.ceil(living * 0.9);
      const picture = survivorGeometry({ chances, low, high, target }, width);
      expect(picture.bars.length).toBe(living + 1);
      expect(picture.bars.filter((bar) => bar.inside).map((bar) => bar.survivors)).toEqual(chances.map((one) => one.survivors).filter((one) => one >= low && one <= high));
      expect(picture.target.x).toBeGreaterThanOrEqual(picture.left);
      expect(picture.target.x).toBeLessThanOrEqual(picture.right);
    }),
  );
});

test('the shared axis of intervals reaches the largest bound', () => {
  expect(intervalEnd([{ label: 'a', rate: 0.1, interval: [0.02, 0.3] }])).toBe(0.5);
  expect(intervalEnd([{ label: 'a', rate: 0.5, interval: [0.2, 0.81] }])).toBe(1);
  expect(intervalEnd([{ label: 'a', rate: 0.5, interval: [0.2, 0.75] }])).toBe(0.75);
  expect(intervalEnd([{ label: 'a', rate: null, interval: null }])).toBe(0.5);
});

test('months are ticked where they begin', () => {
  const ticks = monthTicks(day('2025-10-01'), 182);
  expect(ticks.map(({ label }) => label)).toEqual(['Oct', 'Nov', 'Dec', 'Jan', 'Feb', 'Mar']);
  expect(ticks.map(({ at }) => at)).toEqual([0, 31, 61, 92, 123, 151]);
});

test('ages are counted in days up to two years and in years above', () => {
  expect(ageTicks(600).map(({ label }) => label)).toEqual(['0', '100', '200', '300', '400', '500', '600']);
  expect(ageTicks(2000).map(({ label }) => label)).toEqual(['0', '1', '2', '3', '4', '5']);
});

test('the first eight series differ in their dashes alone', () => {
  expect(new Set(Array.from({ length: 8 }, (_, place) => seriesStyle(place).dash)).size).toBe(8);
});

interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

function boxOf({ x, y, text, anchor }: PlacedText): Box {
  const width = textWidth(text);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { text, left, right: left + width, top: y - textSize * 0.75, bottom: y + textSize * 0.25 };
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.2 && b.top < a.bottom - 0.2;
}
