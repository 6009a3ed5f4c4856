import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { OrderDecision } from '#shared/contract/decision.ts';
import type { United } from '#shared/contract/values.ts';
import type { Fault } from '#shared/faults.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { desk } from '../../desk/deskClient.ts';
import { useRead } from '../../desk/useDesk.ts';
import { useUnited } from '../losses/useUnited.ts';
import { readConfidence, readCount, readQuestion, type Question, type Typing } from './readQuestion.ts';

/** Long enough to type two digits in one go, and for a slider to come to rest. */
const rest = 250;
/** An answer that takes longer than this says that it is on its way. */
const patience = 300;

/** What was asked last in each book, so that the paper and the way back from it find it; forgotten when the window closes. */
const remembered = new Map<string, Typing>();

export interface QuestionDesk {
  readonly typing: Typing | null;
  readonly type: (part: Partial<Typing>) => void;
  readonly question: Question | null;
  readonly decision: OrderDecision | undefined;
  readonly fault: Fault | undefined;
  /** The answer is late; `stop` goes back to the last one. */
  readonly working: boolean;
  /** What is shown still answers the question before. */
  readonly stale: boolean;
  readonly stop: () => void;
}

interface Settled {
  readonly question: Question;
  readonly typing: Typing;
}

function settle(typing: Typing | undefined, united: United): Settled | null {
  const question = typing === undefined ? null : readQuestion(typing, united);
  return typing === undefined || question === null ? null : { question, typing };
}

/** The question as it is typed, asked once the fingers rest; an answer to an earlier one is never shown as the new one's. */
export function useQuestion(book: string): QuestionDesk {
  const { data: kept } = useRead('order.kept', {});
  const [united] = useUnited();
  const client = useQueryClient();
  const looking = useAsOf();
  const [typing, setTyping] = useState<Typing | null>(() => remembered.get(book) ?? null);
  const [settled, setSettled] = useState<Settled | null>(() => settle(remembered.get(book), united));
  const question = settled?.question ?? null;

  useEffect(() => {
    if (kept === undefined || typing !== null) return;
    const first: Typing = {
      target: kept.target === null ? '' : String(kept.target), confidence: String(Math.round(kept.confidence * 1000) / 10), frames: kept.hiveFrames === 8 ? '8' : '10',
      splits: 'yes', queens: 'raised', requeen: '', budget: '', hours: '', price: 100, loss: null,
    };
    setTyping(first);
    setSettled(settle(first, united));
  }, [kept, typing, united]);

  // Target, confidence and hive stay with the book; what is only asked about does not.
  const keep = useCallback((next: Typing) => {
    const choice = { target: readCount(next.target) ?? null, confidence: readConfidence(next.confidence) ?? 0.8, source: 'package' as const, hiveFrames: next.frames === '8' ? (8 as const) : (10 as const) };
    // Another day is only looked at: nothing is kept by it.
    if (looking !== null) return;
    client.setQueryData(['order.kept', {}], { ok: true, value: choice });
    void desk.call('order.keep', choice);
  }, [client, looking]);
  const waiting = useRef<Typing | null>(null);

  useEffect(() => {
    if (typing === null) return;
    remembered.set(book, typing);
    const next = readQuestion(typing, united);
    waiting.current = null;
    if (next === null || JSON.stringify(next) === JSON.stringify(question)) return;
    waiting.current = typing;
    const timer = setTimeout(() => {
      waiting.current = null;
      setSettled({ question: next, typing });
      keep(typing);
    }, rest);
    return () => clearTimeout(timer);
  }, [typing, question, united, keep, book]);
  // Leaving the screen before the fingers have rested keeps the choice all the same.
  useEffect(() => () => { if (waiting.current !== null) keep(waiting.current); }, [keep]);

  const { data, fault, stale } = useRead('order.decide', question ?? {}, { enabled: question !== null, keep: true });
  const answered = useRef<Settled | null>(null);
  useEffect(() => {
    if (!stale && data !== undefined) answered.current = settled;
  }, [stale, data, settled]);
  const late = useLate(question !== null && stale);

  return {
    typing, question, decision: data, fault, working: late, stale: question !== null && stale,
    type: (part) => setTyping((before) => (before === null ? before : { ...before, ...part })),
    stop: () => {
      if (answered.current === null) return;
      setTyping(answered.current.typing);
      setSettled(answered.current);
    },
  };
}

/** True once something has been so for a while. */
function useLate(so: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!so) {
      setLate(false);
      return;
    }
    const timer = setTimeout(() => setLate(true), patience);
    return () => clearTimeout(timer);
  }, [so]);
  return late;
}
