import { useEffect, useRef, useState } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { readConfidence, readTarget } from './readPlan.ts';

export type PlanChoice = OutputOf<'order.kept'>;

/** What is typed: text, so that nothing is changed under the fingers. */
export interface PlanTyping {
  readonly target: string;
  readonly confidence: string;
  readonly source: PlanChoice['source'];
  readonly hiveFrames: PlanChoice['hiveFrames'];
}

export interface PlanDesk {
  readonly typing: PlanTyping | null;
  readonly type: (part: Partial<PlanTyping>) => void;
  /** The last typing that could be read, once the fingers have rested; what the plan is asked for. */
  readonly settled: PlanChoice | null;
  readonly badTarget: boolean;
  readonly badConfidence: boolean;
}

/** Long enough to type two digits in one go. */
const rest = 300;

/** The plan's target, confidence and choices: kept with the book, answered as they are typed. */
export function usePlanChoice(): PlanDesk {
  const { data: kept } = useRead('order.kept', {});
  const { send } = useWrite('order.keep');
  const [typing, setTyping] = useState<PlanTyping | null>(null);
  const [settled, setSettled] = useState<PlanChoice | null>(null);
  const loaded = useRef(false);
  const waiting = useRef<PlanChoice | null>(null);

  // The kept choice is taken up once; after that the fingers lead.
  useEffect(() => {
    if (!kept || loaded.current) return;
    loaded.current = true;
    setTyping({
      target: kept.target === null ? '' : String(kept.target),
      confidence: String(Math.round(kept.confidence * 1000) / 10),
      source: kept.source,
      hiveFrames: kept.hiveFrames,
    });
    setSettled(kept);
  }, [kept]);

  useEffect(() => {
    if (typing === null || settled === null) return;
    const read = readTyping(typing);
    waiting.current = null;
    if (read === null || same(read, settled)) return;
    waiting.current = read;
    const timer = setTimeout(() => {
      waiting.current = null;
      setSettled(read);
      void send(read);
    }, rest);
    return () => clearTimeout(timer);
  }, [typing, settled, send]);

  // Leaving the screen before the fingers have rested keeps the choice all the same.
  useEffect(
    () => () => {
      if (waiting.current !== null) void send(waiting.current);
    },
    [send],
  );

  return {
    typing,
    type: (part) => setTyping((before) => (before === null ? before : { ...before, ...part })),
    settled,
    badTarget: typing !== null && readTarget(typing.target) === undefined,
    badConfidence: typing !== null && readConfidence(typing.confidence) === null,
  };
}

function readTyping(typing: PlanTyping): PlanChoice | null {
  const target = readTarget(typing.target);
  const confidence = readConfidence(typing.confidence);
  if (target === undefined || confidence === null) return null;
  return { target, confidence, source: typing.source, hiveFrames: typing.hiveFrames };
}

function same(a: PlanChoice, b: PlanChoice): boolean {
  return a.target === b.target && a.confidence === b.confidence && a.source === b.source && a.hiveFrames === b.hiveFrames;
}
