import type { SpaceColony, SpaceList } from '#shared/contract/space.ts';
import { counted } from '#shared/figures.ts';
import { monthDayInWords, type Day } from '#shared/days.ts';
import { sourceOf } from '#core/attention/needs/needLines.ts';
import { spaceRuleDefinitions } from '#core/rules/spaceRules.ts';
import { inSeasonOf, inYearWindow } from '#core/rules/yearWindow.ts';
import { boxesWanted, freeInShed, type BoxWanted } from '#core/space/boxesWanted.ts';
import { hiveBoxesOf, splitDaysOf } from '#core/space/hiveBoxes.ts';
import { spaceNeed } from '#core/space/spaceNeed.ts';
import { splitCandidate, splitDaysOfSeason } from '#core/space/splits.ts';
import { swarmRisk } from '#core/space/swarmRisk.ts';
import { addingCaution } from '#core/stores/lifting.ts';
import type { Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { stockBookOf } from './stockAccount.ts';
import { yardsWithColonies } from './yardsWithColonies.ts';

export const spaceHandlers: Handlers<'space.list'> = {
  'space.list': async (_, context) => {
    const book = context.open();
    const picture = await book.picture();
    const asOf = await book.today(context.options.now().day);
    return keptFor(picture, `space ${asOf}`, () => listOf(book, picture, asOf));
  },
};

async function listOf(book: Book, picture: Picture, asOf: Day): Promise<SpaceList> {
  const { rules } = picture;
  const account = await stockBookOf(book, asOf);
  const wanted: BoxWanted[] = [];
  const standing = yardsWithColonies(picture, asOf).map(({ yard, states }) => ({
    yard,
    colonies: states.map((state): SpaceColony => {
      const boxes = hiveBoxesOf(account, state.id, rules);
      const facts = { day: asOf, rules, boxes, splitDays: splitDaysOf(state, picture.byId, asOf) };
      const need = spaceNeed(state, facts);
      if (need.add !== null && boxes !== null) wanted.push({ yard: yard.id, ...need.add, frames: boxes.frames });
      const risk = swarmRisk(state, facts);
      const split = splitCandidate(state, facts);
      return {
        id: state.id, label: state.label, need,
        risk: risk === null ? null : { ...risk, reasons: [...risk.reasons], unknown: [...risk.unknown] },
        split: split === null ? null : { bees: split.bees, brood: split.brood, look: split.look, ways: [...split.ways], reason: split.reason },
      };
    }),
  }));
  const boxes = boxesWanted(wanted, account, rules);
  const yards = standing.map(({ yard, colonies }) => ({ id: yard.id, code: yard.code, name: yard.name, colonies, boxes: boxes.filter((one) => one.yard === yard.id).map(({ yard: _, ...one }) => one) }));
  const sizes = [...new Map(boxes.map(({ box, frames }) => [`${box} ${frames}`, { box, frames }])).values()];
  const window = (from: string, until: string) => ({ now: inYearWindow(asOf, from, until, rules), from: inSeasonOf(asOf, from, rules), until: inSeasonOf(asOf, until, rules) });
  const { from, frost, latest } = splitDaysOfSeason(asOf, rules);
  const found = {
    asOf, adding: window('space.from', 'space.until'), swarming: window('space.swarm.from', 'space.swarm.until'),
    splits: { from, frost, latest: latest.map((one) => ({ ...one, past: asOf > one.day })) },
    yards, shed: sizes.map(({ box, frames }) => ({ box, frames, free: freeInShed(account, box, frames, rules) })), sources: spaceRuleDefinitions.flatMap(({ key }) => sourceOf(key, rules)),
  };
  return { ...found, sentence: spaceSentence(found), lifting: addingCaution() };
}

function spaceSentence({ adding, swarming, splits, yards }: Omit<SpaceList, 'sentence' | 'lifting'>): string {
  const colonies = yards.flatMap((yard) => yard.colonies);
  if (colonies.length === 0) return 'No colonies stand in any yard.';
  const boxes = yards.flatMap((yard) => yard.boxes);
  const lack = boxes.reduce((sum, box) => sum + (box.lack ?? 0), 0);
  const uncounted = boxes.reduce((sum, box) => sum + (box.lack === null ? box.wanted - box.inYard : 0), 0);
  const want = colonies.filter(({ need }) => need.say === 'add').length;
  const high = colonies.filter(({ risk }) => risk?.level === 'high').length;
  const room = !adding.now
    ? `Boxes are added from ${monthDayInWords(adding.from)} to ${monthDayInWords(adding.until)}; this is not the time.`
    : want === 0 ? 'No colony wants a box by its last look.' : `${counted(want, 'colony wants', 'colonies want')} a box now${lack === 0 ? '' : `, and ${counted(lack, 'box is', 'boxes are')} not there`}${uncounted === 0 ? '' : `; ${counted(uncounted, 'box is', 'boxes are')} of a size that the shed’s account does not name`}.`;
  const swarms = !swarming.now ? '' : high === 0 ? ' None is at high swarm risk.' : ` ${counted(high, 'is', 'are')} at high swarm risk.`;
  const last = splits.latest.toSorted((a, b) => (a.day < b.day ? 1 : -1))[0];
  const split = last === undefined || !adding.now ? '' : last.past ? ' It is too late to split for this winter.' : ` Splits are made until ${monthDayInWords(last.day)} at the latest.`;
  return `${room}${swarms}${split}`;
}
