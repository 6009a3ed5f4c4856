import { part } from './paperTables.ts';
import type { SectionMaker } from './sectionFacts.ts';

/** Section 6: how far the numbers reach. */
export const sayParts: SectionMaker = ({ answers, season }) => [part('say', '', { sentences: answers.factors(season, 'season').say })];

/** Section 7: what one wrote to oneself, only where it is kept. */
export const noteParts: SectionMaker = ({ notes }) => {
  const lines = (text: string) => text.split('\n').filter((line) => line.trim() !== '');
  if (notes === null) return [];
  const { text, before } = notes;
  return [
    ...(before === null ? [] : [part('notes-before', `What you wrote after ${before.name}`, { sentences: lines(before.text) })]),
    ...(text.trim() === '' ? [] : [part('notes', before === null ? '' : 'For the next year', { sentences: lines(text) })]),
  ];
};
