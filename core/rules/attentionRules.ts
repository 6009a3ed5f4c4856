import type { HouseRule } from '#shared/contract/order.ts';

type Definition = Omit<HouseRule, 'value'>;

function days(key: string, label: string, standard: number, most: number, source: string, confidence: HouseRule['confidence']): Definition {
  return { key, label, room: 'attention', unit: 'days', type: 'number', default: standard, range: [0, most], source, confidence };
}

const walkAway = 'Practice page on walk-away splits: a mated queen 21 days after (buttsbees.com, beekeeping tip 7)';
const newQueen = 'Extension guides for packages and caged queens: eggs by day 7 to 10';
const emergency = 'An emergency queen emerges 12 days after the loss; eggs 21 to 28 days after it (follows from her days of growth)';
const practice = 'common practice, no source';

/** By which day something is due after an entry: the numbers of the rules in `core/attention/`. */
export const attentionRuleDefinitions: readonly Definition[] = [
  days('attention.walkAway.from', 'Walk-away split: look for eggs from day', 21, 60, walkAway, 'read-weak'),
  days('attention.walkAway.by', 'Walk-away split: verdict by day', 28, 90, 'Extension practice', 'from memory'),
  days('attention.newQueen.from', 'New queen: look for eggs from day', 7, 30, newQueen, 'from memory'),
  days('attention.newQueen.by', 'New queen: eggs by day', 10, 60, newQueen, 'from memory'),
  days('attention.queenless.from', 'Queen missing: look for eggs from day', 21, 60, emergency, 'from memory'),
  days('attention.queenless.by', 'Queen missing: verdict by day', 28, 90, emergency, 'from memory'),
  days('attention.swarmCells.by', 'Swarm cells seen: look again within', 7, 14, 'A queen cell is sealed 8 days after the egg, so a look every 7 days: Southport and District Beekeepers, Numbers', 'read'),
  days('attention.treatmentOff.by', 'Treatment taken off within, after its last day', 3, 30, 'House choice; the label says when it must be off', practice),
  days('attention.recount.from', 'Mites counted again, after a treatment ends: from day', 7, 60, 'Count before and after each treatment (Penn State, Lopez-Uribe lab, read); the days are a house choice', practice),
  days('attention.recount.by', 'Mites counted again, after a treatment ends: by day', 28, 120, 'Count before and after each treatment (Penn State, Lopez-Uribe lab, read); the days are a house choice', practice),
  days('attention.letGo', 'What was not done is let go after', 42, 365, 'House choice', practice),
  days('attention.renewal', 'Yard registration is called due, before its day', 60, 365, 'House choice', practice),
];
