import { useSearch } from 'wouter';
import { navigate } from 'wouter/use-hash-location';
import type { Season } from '#shared/seasons.ts';

/** The season in the address, `/losses?season=2025`; undefined where it names none. */
export function useSeason(): [Season | undefined, (season: Season) => void] {
  const named = /^[1-9]\d{0,3}$/.exec(new URLSearchParams(useSearch()).get('season') ?? '');
  return [named === null ? undefined : Number(named[0]), (season) => navigate(`/losses?season=${season}`, { replace: true })];
}
