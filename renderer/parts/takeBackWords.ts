import type { ActConsequence } from '#shared/contract/acts.ts';
import { counted, number } from './format.ts';

/** What is said before an act is taken back. */
export const takeBackWords = {
  open: 'Take this back…',
  openImport: 'Take this import back…',
  heading: 'If it is taken back:',
  do: (entries: number) => (entries === 0 ? 'Take it back' : `Take back ${counted(entries, 'entry', 'entries')}`),
  leave: 'Leave it',
  working: 'Working out what that would do…',
  again: 'It can be brought back afterwards.',
  bringBack: 'Bring it back',
  sentences: (found: ActConsequence): string[] => {
    const { struck, lifted, gone, changed, goneLabels, unsorted } = found;
    const said: string[] = [];
    if (struck > 0) said.push(`${counted(struck, 'entry no longer counts', 'entries no longer count')}.`);
    if (lifted > 0) said.push(`${counted(lifted, 'struck entry counts', 'struck entries count')} again.`);
    if (gone > 0) {
      const more = gone - goneLabels.length;
      said.push(`${counted(gone, 'colony is', 'colonies are')} no longer in the book: ${goneLabels.join(', ')}${more > 0 ? ` and ${number(more)} more` : ''}.`);
    }
    if (changed > 0) said.push(`${counted(changed, 'colony is', 'colonies are')} again as before.`);
    if (gone === 0 && changed === 0) said.push('No colony changes.');
    if (unsorted > 0) said.push(`${counted(unsorted, 'row to sort out goes', 'rows to sort out go')} along.`);
    return said;
  },
} as const;
