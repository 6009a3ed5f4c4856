import { keepPreviousData, useIsFetching, useQuery, useQueryClient, type Query, type QueryClient } from '@tanstack/react-query';
import { useCallback, useDeferredValue, useEffect, useState } from 'react';
import { answersAsOf } from '#shared/contract/asOf.ts';
import type { contract, InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { asOfDay, useAsOf } from './asOfDay.ts';
import { desk } from './deskClient.ts';

type NamesOf<Kind extends 'read' | 'write'> = {
  [Name in OperationName]: (typeof contract)[Name]['kind'] extends Kind ? Name : never;
}[OperationName];
export type ReadName = NamesOf<'read'>;
export type WriteName = NamesOf<'write'>;

export interface ReadOptions {
  /** False: do not ask yet. */
  readonly enabled?: boolean;
  /** Keep showing the last answer while the next one, for another input, is on its way. */
  readonly keep?: boolean;
  /** Never an answer from before this screen: a form is filled from it, and begins anew with another. */
  readonly fresh?: boolean;
  /** Answered as of today, whatever day is looked at. */
  readonly now?: boolean;
}

export interface Reading<Value> {
  readonly data: Value | undefined;
  /** What the desk refused, as a value. */
  readonly fault: Fault | undefined;
  /** True until there is the first answer. */
  readonly loading: boolean;
  /** True while what is shown (`keep`) still answers an earlier input. */
  readonly stale: boolean;
}

/** Reads from the desk, as of the day that is looked at; read again by itself after every write. */
export function useRead<Name extends ReadName>(name: Name, input: InputOf<Name>, options: ReadOptions = {}): Reading<OutputOf<Name>> {
  const day = useAsOf();
  const asked: InputOf<Name> = day !== null && options.now !== true && answersAsOf(name) ? { ...input, asOf: day } : input;
  const query = useQuery<Answer<OutputOf<Name>>>({
    queryKey: [name, asked],
    queryFn: () => desk.call(name, asked),
    enabled: options.enabled ?? true,
    ...(options.keep ? { placeholderData: keepPreviousData } : {}),
    ...(options.fresh === true ? { refetchOnMount: 'always' } : {}),
  });
  const old = options.fresh === true && !query.isFetchedAfterMount;
  const answer = old ? undefined : query.data;
  return {
    data: answer?.ok ? answer.value : undefined,
    fault: answer && !answer.ok ? answer : undefined,
    loading: old || query.isPending,
    stale: old || query.isPending || query.isPlaceholderData,
  };
}

/**
 * As `useRead`, for answers that take long to draw: a new one is drawn in slices between what the person does, and until
 * it is ready what was drawn before stands.
 */
export function useCalmRead<Name extends ReadName>(name: Name, input: InputOf<Name>, options: ReadOptions = {}): Reading<OutputOf<Name>> {
  const reading = useRead(name, input, options);
  const data = useDeferredValue(reading.data);
  return { ...reading, data, stale: reading.stale || data !== reading.data };
}

/** Reads that nobody waits for, and that a whole operation's record is gone through for. */
const quietNames: ReadonlySet<unknown> = new Set<ReadName>(['needs.count']);
const isQuiet = ({ queryKey }: Query) => quietNames.has(queryKey[0]);
const isHeard = (query: Query) => !isQuiet(query);
/** The screen has had its answers for so long (ms) before a quiet read is asked. */
const rest = 250;

/** As `useRead`, asked only when nothing that the screen waits for is on its way; until then there is no answer. */
export function useQuietRead<Name extends ReadName>(name: Name, input: InputOf<Name>): OutputOf<Name> | undefined {
  const waiting = useIsFetching({ predicate: isHeard }) > 0;
  const [rested, setRested] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setRested(!waiting), waiting ? 0 : rest);
    return () => clearTimeout(timer);
  }, [waiting]);
  return useRead(name, input, { enabled: rested && !waiting }).data;
}

export interface Writing<Name extends WriteName> {
  send(input: InputOf<Name>): Promise<Answer<OutputOf<Name>>>;
  readonly busy: boolean;
}

/** Writes through the desk; after a success all reads are asked again. */
export function useWrite<Name extends WriteName>(name: Name): Writing<Name> {
  const client = useQueryClient();
  const [running, setRunning] = useState(0);
  const send = useCallback(
    async (input: InputOf<Name>) => {
      setRunning((count) => count + 1);
      const answer = await desk.call(name, input);
      setRunning((count) => count - 1);
      refresh(client, name, answer);
      return answer;
    },
    [client, name],
  );
  return { send, busy: running > 0 };
}

const anotherBook: ReadonlySet<OperationName> = new Set(['book.create', 'book.open', 'book.demo', 'book.close']);
/** Typing that is kept from keystroke to keystroke changes nothing that a screen shows. */
const unseen: ReadonlySet<OperationName> = new Set(['draft.keep', 'draft.drop']);

function refresh(client: QueryClient, name: OperationName, answer: Answer<unknown>): void {
  if (!answer.ok) {
    if (answer.code === 'no-book' || answer.code === 'moved-on') void client.invalidateQueries();
    return;
  }
  if (unseen.has(name)) return;
  if (anotherBook.has(name)) {
    asOfDay.backToToday();
    client.setQueryData(['book.status', {}], answer);
    void client.resetQueries({ predicate: (query) => query.queryKey[0] !== 'book.status' });
    return;
  }
  void client.invalidateQueries({ predicate: isHeard });
  // Out of date from now on, and asked again when the screen has what it shows.
  void client.invalidateQueries({ predicate: isQuiet, refetchType: 'none' });
}
