import type { QueenView } from '#shared/contract/journal.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import type { ColonyState, Look, Reign } from '#core/journal/colonyState.ts';
import type { Names } from '#core/journal/kindRules.ts';
import { queenColour } from './queenColour.ts';

export function queenView(reign: Reign): QueenView {
  return {
    id: reign.queen,
    year: reign.year,
    colour: reign.year === null ? null : queenColour(reign.year),
    marked: reign.marked,
    source: reign.source,
    since: reign.since,
  };
}

/** The queen at the end of that day; null where none is known. */
export function queenOn(state: ColonyState, day: Day): QueenView | null {
  const reign = state.reigns.findLast((one) => one.since <= day && (one.until === null || one.until > day));
  return reign === undefined ? null : queenView(reign);
}

export function lookSentence(look: Look): string {
  const parts: string[] = [];
  if (look.framesBees !== null) parts.push(`${look.framesBees} frames of bees`);
  if (look.framesBrood !== null) parts.push(`${look.framesBrood} of brood`);
  if (look.framesStores !== null) parts.push(`${look.framesStores} of stores`);
  return parts.length === 0 ? 'looked at' : parts.join(', ');
}

/** How a colony came to be, and how it ended: "Package from Sandel Road Bees, hived 24 April 2024 at Larch Bend; lost 3 February 2025: mites." */
export function colonySentence(state: ColonyState, names: Names): string {
  const first = state.stays[0];
  const where = first === undefined ? '' : ` at ${names.yard(first.yard).name}`;
  const from = state.supplier === null ? '' : ` from ${state.supplier}`;
  const began: Record<ColonyState['origin'], string> = {
    package: `Package${from}, hived ${dayInWords(state.start)}${where}`,
    nuc: `Nuc${from}, installed ${dayInWords(state.start)}${where}`,
    swarm: `Swarm, hived ${dayInWords(state.start)}${where}`,
    'bought colony': `Colony bought${from}, placed ${dayInWords(state.start)}${where}`,
    opening: `In the book since ${dayInWords(state.start)}${where}`,
    split: `Split from ${state.mother === null ? 'an unknown colony' : names.colony(state.mother)} on ${dayInWords(state.start)}${where}`,
  };
  return `${began[state.origin]}${endWords(state, names)}.`;
}

function endWords(state: ColonyState, names: Names): string {
  if (state.end === null) return '';
  const day = dayInWords(state.end);
  switch (state.how) {
    case 'lost':
      return `; lost ${day}${state.causes.length === 0 ? '' : `: ${state.causes.join('; ')}`}`;
    case 'sold':
      return `; sold ${day}`;
    case 'given':
      return `; given away ${day}`;
    case 'combined':
      return `; combined into ${state.into === null ? 'another' : names.colony(state.into)} ${day}`;
    case 'absconded':
      return `; absconded ${day}`;
    case 'alive':
      return '';
  }
}
