import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { NeedsTally } from '#shared/contract/tally.ts';
import { useRead, type Reading } from '../../desk/useDesk.ts';

/** How often (ms) it is asked how far the work is. */
const every = 500;

/** The tally, asked again until the past seasons are gone through. */
export function useTally(): Reading<NeedsTally> {
  const client = useQueryClient();
  const reading = useRead('needs.tally', {}, { keep: true });
  const working = reading.data !== undefined && (reading.data.state === 'running' || reading.data.state === 'moved');
  useEffect(() => {
    if (!working) return;
    const timer = setInterval(() => void client.invalidateQueries({ queryKey: ['needs.tally'] }), every);
    return () => clearInterval(timer);
  }, [client, working]);
  return reading;
}
