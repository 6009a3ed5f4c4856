import type { Curve } from '#shared/contract/losses.ts';

/** A Kaplan-Meier curve without ties between losses and departures, from spans of days; bands by the log-log method. */
export function sampleCurve(spans: readonly { exit: number; lost: boolean }[], last: number): Curve {
  const z = 1.959963984540054;
  const times = [...new Set(spans.filter(({ lost }) => lost).map(({ exit }) => exit))].sort((a, b) => a - b);
  const atRisk = times.map((time) => spans.filter(({ exit }) => exit >= time).length);
  const lost = times.map((time) => spans.filter((span) => span.exit === time && span.lost).length);
  let alive = 1;
  let greenwood = 0;
  const steps = times.map((_, index) => {
    const n = atRisk[index] ?? 0;
    const d = lost[index] ?? 0;
    alive *= 1 - d / n;
    greenwood += d / (n * (n - d));
    if (alive === 0) return { alive, low: null, high: null };
    const theta = (z * Math.sqrt(greenwood)) / Math.abs(Math.log(alive));
    return { alive, low: alive ** Math.exp(theta), high: alive ** Math.exp(-theta) };
  });
  return {
    colonies: spans.length,
    losses: lost.reduce((sum, count) => sum + count, 0),
    times,
    atRisk,
    lost,
    survival: steps.map((step) => step.alive),
    low: steps.map((step) => step.low),
    high: steps.map((step) => step.high),
    censored: spans.filter((span) => !span.lost).map(({ exit }) => exit),
    strip: Array.from({ length: 7 }, (_, index) => Math.round((last / 6) * index)).map((time) => ({
      time,
      atRisk: spans.filter(({ exit }) => exit >= Math.max(time, 1)).length,
    })),
    last,
    warning: null,
  };
}

export const noColonies: Curve = {
  colonies: 0, losses: 0, times: [], atRisk: [], lost: [], survival: [], low: [], high: [], censored: [], strip: [], last: 182, warning: null,
};

/** Nine colonies of a windy yard, five lost, one sold in December. */
export const northSlope = sampleCurve(
  [
    { exit: 102, lost: true }, { exit: 124, lost: true }, { exit: 124, lost: true }, { exit: 150, lost: true }, { exit: 159, lost: true },
    { exit: 80, lost: false }, { exit: 182, lost: false }, { exit: 182, lost: false }, { exit: 182, lost: false },
  ],
  182,
);

/** Ninety-five colonies elsewhere, 20 lost. */
export const otherYards = sampleCurve(
  Array.from({ length: 95 }, (_, index) => (index < 20 ? { exit: 50 + index * 6, lost: true } : { exit: 182, lost: false })),
  182,
);

/** Everything lost: the last band is undefined. */
export const allLost = sampleCurve([{ exit: 30, lost: true }, { exit: 60, lost: true }, { exit: 90, lost: true }], 182);
