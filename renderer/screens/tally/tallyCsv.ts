import type { NeedsTally, TallyShare } from '#shared/contract/tally.ts';
import { csvText } from '../../parts/csv.ts';
import { words } from './words.ts';

const limits = (share: TallyShare | null) => (share?.interval ?? [null, null]).map((one) => (one === null ? null : Math.round(one * 1000) / 1000));
const counts = (share: TallyShare | null) => (share === null ? [null, null] : [share.count, share.of]);

/** The tally for a spreadsheet: shares with their counts and the limits of their 95 % interval. */
export function tallyCsv({ rules }: NeedsTally): string {
  return csvText(
    words.csvHead,
    rules.map(({ title, verdict, per, asked, answered, late, fell, harm, done, left, others, foretold, says }) => [
      title, words.groups[verdict], per === 'time' ? 'time' : 'colony and season', asked, ...counts(answered), ...limits(answered), late, fell, harm, ...counts(done), ...limits(done), ...counts(left), ...limits(left), ...counts(others),
      foretold?.of ?? null, foretold?.count ?? null, says,
    ]),
  );
}
