import { useCallback } from 'react';
import { useLocation } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import type { RoundKind } from '#shared/roundSheets.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { drafts } from './drafts.ts';
import { indexKey, noRounds, noteRound, readIndex, writeIndex } from './roundIndex.ts';

/** Opens today's round sheet of a yard as a kind of round; typing that waits on it stays. Answers a fault if it cannot. */
export function useOpenRound(): (yard: YardId, today: Day, kind: RoundKind) => Promise<Fault | null> {
  const { send } = useWrite('rounds.layout');
  const [, navigate] = useLocation();
  return useCallback(
    async (yard, today, kind) => {
      const answer = await send({ yard, day: today, kind });
      if (!answer.ok) return answer;
      const kept = await drafts.fetch(indexKey);
      const index = kept.ok && kept.value.body !== null ? readIndex(kept.value.body) : noRounds;
      const filled = index.open.find((round) => round.yard === yard && round.day === today)?.filled ?? 0;
      drafts.change(indexKey, writeIndex(noteRound(index, yard, today, filled)));
      await drafts.flush();
      navigate('/tonight');
      return null;
    },
    [send, navigate],
  );
}
