import { dayInWords } from '#shared/days.ts';
import { countedItems } from '#shared/itemWords.ts';
import type { HiveRules } from './hives.ts';

/** What the account takes for granted where the record is silent. */
export function assumptions({ usual, startDeeps, fullDeeps, nucFrames, splitFrames, drawnDays }: HiveRules, combYears: number): string[] {
  const boxes = (count: number) => (count === 1 ? 'one deep box' : `${count} deep boxes`);
  return [
    `A package, nuc, swarm or split begins on ${boxes(startDeeps)} of ${usual} frames with floor, lids, stand and feeder, by the house rules; “eight-frame” or “two deeps” in its note says otherwise.`,
    'What a hive gets comes from what lies sound in its yard at the day’s end, else from the shed; before an item has a stock row of its own, it counts as having been there.',
    `A nuc brings ${nucFrames} frames; a bought colony comes in its hive; one taken into the book stood in it already.`,
    `A split takes its frames of brood and stores along (${splitFrames} where they were not written down), and the mother gets as many new ones.`,
    `Deep boxes brought to a yard, beyond what is needed there that day, go on the hives that have fewer than ${fullDeeps}, the oldest first, and come off the youngest first.`,
    'Supers taken off lie in the yard until a row says that they were carried home. A row that repeats what the hives carried that day, as when they moved, is not counted twice.',
    'A lost or absconded colony leaves its hive in the yard to be checked; a united one leaves it free; one sold or given away takes it along, unless its note says “on five frames” or “the hive stays”.',
    `A frame counts as drawn after ${drawnDays} summer days on a hive, or when honey was taken; that is the year of its comb. Brood comb (deep frames) is due for rotation after ${combYears} years.`,
    `A name that says nothing of its size is for ${usual} frames; one that says nothing of its state is sound.`,
  ];
}

export const diseaseCaution = 'Where foulbrood may have been, use nothing again and move nothing: call the bee inspector first. The law and the inspector say what may be kept.';

/** "The book has 44, you counted 41: 3 are missing and will be written off." */
export function countSentence(counted: number, had: number, item: string, place: string): string {
  const where = place === 'shed' ? 'in the shed' : `free at ${place}`;
  const start = `The book has ${countedItems(had, item)} ${where}, you counted ${counted}`;
  if (counted === had) return `${start}: they agree.`;
  const by = Math.round(Math.abs(counted - had) * 1000) / 1000;
  const one = by === 1;
  return counted < had ? `${start}: ${by} ${one ? 'is' : 'are'} missing and will be written off.` : `${start}: ${by} more ${one ? 'is' : 'are'} there than the book has and will be added.`;
}

export function shortageSentence(place: string, item: string, count: number, day: Parameters<typeof dayInWords>[0]): string {
  const where = place === 'shed' ? 'the shed' : place;
  return `By the record ${countedItems(-count, item)} more left ${where} than had come there; the entry of ${dayInWords(day)} was the first to take what was not there.`;
}
