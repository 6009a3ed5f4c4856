import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { IncidenceChart } from '../../renderer/charts/IncidenceChart.tsx';
import { IntervalDots } from '../../renderer/charts/IntervalDots.tsx';
import { SurvivalChart } from '../../renderer/charts/SurvivalChart.tsx';
import { SurvivorBars } from '../../renderer/charts/SurvivorBars.tsx';
import { allLost, noColonies, northSlope, otherYards, sampleCurve } from './sampleCurves.ts';

/** One element a line, so that a changed picture shows as a readable difference. */
function picture(element: React.ReactElement): string {
  return `${renderToStaticMarkup(element).replaceAll('><', '>\n<')}\n`;
}

const winter = [
  { key: 'rest', label: 'other yards', place: 0, curve: otherYards },
  { key: 'NS', label: 'North Slope', place: 1, curve: northSlope },
];

test('survival since 1 October', async () => {
  const drawn = picture(<SurvivalChart lines={winter} origin={day('2025-10-01')} width={380} />);
  await expect(drawn).toMatchFileSnapshot('pictures/survival-since-october.svg');
});

test('survival since the start, with a group that lost every colony and one without colonies', async () => {
  const lines = [...winter, { key: 'KF', label: 'Kiln Field', place: 2, curve: allLost }, { key: 'QY', label: 'Quarry', place: 3, curve: noColonies }];
  const drawn = picture(<SurvivalChart lines={lines} origin={null} width={620} height={240} />);
  expect(drawn).not.toContain('NaN');
  await expect(drawn).toMatchFileSnapshot('pictures/survival-since-start.svg');
});

test('a winter that still runs ends where the watching ends', async () => {
  const running = sampleCurve([{ exit: 30, lost: true }, ...Array.from({ length: 10 }, () => ({ exit: 55, lost: false }))], 182);
  const drawn = picture(<SurvivalChart lines={[{ key: 'all', label: 'All yards', place: 0, curve: running }]} origin={day('2026-10-01')} width={380} />);
  await expect(drawn).toMatchFileSnapshot('pictures/survival-running.svg');
});

test('rates with their intervals', async () => {
  const rows = [
    { label: 'North Slope', rate: 5 / 9, interval: [0.2667, 0.8112] as const, marked: true },
    { label: 'Millrace', rate: 4 / 19, interval: [0.0851, 0.4333] as const },
    { label: 'Old Orchard', rate: null, interval: null },
    { label: 'All yards', rate: 27 / 104, interval: [0.1853, 0.3514] as const },
  ];
  const drawn = picture(<IntervalDots rows={rows} width={360} />);
  expect(drawn).toContain('Old Orchard: no rate');
  await expect(drawn).toMatchFileSnapshot('pictures/intervals.html');
});

test('survivors against the target', async () => {
  // Binomial chances of 12 colonies at 0.8: enough of a shape to look at.
  const chances = [0, 0, 0, 0.0001, 0.0005, 0.0033, 0.0155, 0.0532, 0.1329, 0.2362, 0.2835, 0.2062, 0.0687].map((chance, survivors) => ({ survivors, chance }));
  const drawn = picture(<SurvivorBars data={{ chances, low: 8, high: 11, target: 16 }} width={420} />);
  await expect(drawn).toMatchFileSnapshot('pictures/survivors.svg');
});

test('lost, sold and united beside each other, and a curve that begins late', async () => {
  const incidence = {
    times: [60, 100], atRisk: [20, 18], alive: [0.9, 0.75], sentence: '',
    fates: [
      { fate: 'lost' as const, colonies: 4, share: [0.1, 0.2], low: [0.02, 0.06], high: [0.28, 0.39] },
      { fate: 'sold' as const, colonies: 1, share: [0, 0.05], low: [null, 0], high: [null, 0.21] },
      { fate: 'united' as const, colonies: 0, share: [0, 0], low: [null, null], high: [null, null] },
    ],
  };
  const drawn = picture(<IncidenceChart incidence={incidence} origin={day('2025-10-01')} last={182} width={480} />);
  expect(drawn).not.toMatch(/NaN|united<\/text>/);
  await expect(drawn).toMatchFileSnapshot('pictures/incidence.svg');
  const late = picture(<SurvivalChart lines={[{ key: 'all', label: 'All', place: 0, curve: { ...northSlope, from: 40 } }]} origin={day('2025-10-01')} width={380} />);
  expect(late).not.toContain('d="M32 10H');
});
