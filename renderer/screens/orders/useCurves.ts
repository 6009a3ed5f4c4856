import { useCallback, useEffect, useState } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { OrderDecision } from '#shared/contract/decision.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { desk } from '../../desk/deskClient.ts';
import type { Question } from './readQuestion.ts';

export type CurvePoint = OutputOf<'order.point'>;

export interface Curves {
  readonly byConfidence: readonly CurvePoint[];
  readonly byTarget: readonly CurvePoint[];
  readonly done: number;
  readonly all: number;
  readonly stopped: boolean;
  readonly stop: () => void;
  readonly goOn: () => void;
}

const confidences = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95];
/** The answer itself comes first; the curves wait until the person has rested on it. */
const rest = 900;

interface Asked {
  readonly by: 'confidence' | 'target';
  readonly target: number;
  readonly confidence: number;
}

/** The points of both curves, asked one by one, so that what is typed meanwhile never waits behind more than one of them. */
export function useCurves(decision: OrderDecision, question: Question): Curves {
  const { target, confidence } = decision;
  const day = useAsOf();
  const key = JSON.stringify([question, target, decision.asOf, decision.living, decision.onOrder]);
  const [found, setFound] = useState<{ readonly key: string; readonly points: ReadonlyMap<string, CurvePoint> }>({ key, points: new Map() });
  const [stopped, setStopped] = useState<string | null>(null);
  const asked = pointsOf(target, confidence);

  useEffect(() => {
    if (stopped === key) return;
    let here = true;
    const points = new Map(found.key === key ? found.points : []);
    const work = async () => {
      for (const one of pointsOf(target, confidence)) {
        if (!here) return;
        if (points.has(nameOf(one))) continue;
        const answer = await desk.call('order.point', { question, target: one.target, confidence: one.confidence, ...(day === null ? {} : { asOf: day }) });
        if (!here || !answer.ok) return;
        points.set(nameOf(one), answer.value);
        setFound({ key, points: new Map(points) });
      }
    };
    const timer = setTimeout(() => void work(), rest);
    return () => {
      here = false;
      clearTimeout(timer);
    };
    // What was found is the work's own product: it must not begin the work anew.
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- see above
  }, [key, stopped]);

  const points = found.key === key ? found.points : new Map<string, CurvePoint>();
  const of = (by: Asked['by']) => asked.filter((one) => one.by === by).flatMap((one) => points.get(nameOf(one)) ?? []);
  return {
    byConfidence: of('confidence'), byTarget: of('target'), done: asked.filter((one) => points.has(nameOf(one))).length, all: asked.length,
    stopped: stopped === key, stop: useCallback(() => setStopped(key), [key]), goOn: useCallback(() => setStopped(null), []),
  };
}

function pointsOf(target: number, confidence: number): Asked[] {
  const step = Math.max(1, Math.round(target / 20));
  const sure = [...new Set([...confidences, confidence])].toSorted((a, b) => a - b);
  const targets = [-3, -2, -1, 0, 1, 2].map((times) => target + times * step).filter((one) => one > 0);
  return [...sure.map((one): Asked => ({ by: 'confidence', target, confidence: one })), ...targets.map((one): Asked => ({ by: 'target', target: one, confidence }))];
}

function nameOf({ target, confidence }: Asked): string {
  return `${target} ${confidence}`;
}
