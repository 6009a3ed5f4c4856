import { feeds, massUnits } from '#shared/entryForms.ts';
import { ordinary } from '#shared/ordinary.ts';
import { readFeed, readWeight, weightIn, type Feed } from './sheetAmounts.ts';
import { readCell, type Reading } from './sheetCell.ts';
import { acts, columnKeys, fieldsOf, isActKey, type Act, type ColumnKey, type TypedRow } from './sheetColumns.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { words } from './words.ts';

export type RowReadings = Readonly<Record<ColumnKey, Reading>>;

/** What holds for the whole sheet where a row does not say otherwise; '' when not said. */
export interface SheetWide {
  /** Bees in a mite sample, and how they were washed. */
  readonly sample: string;
  readonly method: '' | 'alcohol wash' | 'sugar roll';
  readonly feed: '' | Feed;
  /** `1 gal`: what a colony got that is marked as fed. */
  readonly amount: string;
  /** Empty weight of what was weighed full. */
  readonly tare: string;
  readonly lot: string;
  readonly ingredient: string;
  /** The day the treatment comes off, as typed. */
  readonly until: string;
  /** The work of the round, entered with it if any is given. */
  /** What was done of the yard as a whole, in the words of the work entry, parted by `; `. */
  readonly also: string;
  readonly hours: string;
  readonly people: string;
  readonly miles: string;
}

/** Reads one colony's row, each cell and then what the cells say together. */
export function readRow(row: Readonly<TypedRow>, wide: SheetWide, setting: SheetSetting): RowReadings {
  const read = Object.fromEntries(columnKeys.map((key) => [key, readCell(key, row[key] ?? '', setting)])) as Record<ColumnKey, Reading>;
  read.brood = askIf(read.brood, broodBeyondBees(read));
  read.act = askIf(read.act, lostYetAlive(read));
  readMites(read, wide, setting);
  readFed(read, wide, setting);
  readHarvest(read, wide, setting);
  if (read.treat.state === 'read' && read.treat.value === 'yes' && wide.ingredient.trim() === '') read.treat = refuse(words.refused.noIngredient);
  readActFields(read);
  return read;
}

/** The sample that a mite count of this row stands on: the row's own, else the sheet's; refused when neither says. */
export function sampleOf(own: Reading, wide: SheetWide, setting: SheetSetting): Reading {
  if (own.state !== 'empty') return own;
  const sheet = readCell('sample', wide.sample, setting);
  return sheet.state === 'empty' ? refuse(words.refused.noSample) : sheet;
}

/** Which act the row holds beside losses; null for a loss or none. */
export function actOf(read: Pick<RowReadings, 'act'>): Act | null {
  return (read.act.state === 'read' && acts.find((one) => read.act.state === 'read' && one === read.act.value)) || null;
}

function readMites(read: Record<ColumnKey, Reading>, wide: SheetWide, setting: SheetSetting): void {
  if (read.mites.state === 'read') {
    const sample = sampleOf(read.sample, wide, setting);
    if (sample.state === 'refused') {
      if (read.sample.state === 'empty') read.mites = refuse(words.refused.noSample);
    } else if (sample.state === 'read') {
      const [mites, bees] = [Number(read.mites.value), Number(sample.value)];
      const many = mites * 100 > ordinary.mitesPer100 * bees;
      // The desk would refuse it, so it is not asked about.
      if (mites > bees) read.mites = refuse(words.refused.mitesBeyond(String(mites), String(bees)));
      else read.mites = askIf(read.mites, many ? words.question.mites(String(mites), String(bees)) : null);
    }
  } else if (read.mites.state === 'empty' && read.sample.state === 'read') {
    read.sample = refuse(words.refused.sampleAlone);
  }
}

function readFed(read: Record<ColumnKey, Reading>, wide: SheetWide, setting: SheetSetting): void {
  if (read.feed.state !== 'read') return;
  const given = readFeed(read.feed.value, setting);
  if (given?.feed == null && !feeds.some((feed) => feed === wide.feed)) read.feed = refuse(words.refused.noFeed);
  else if (given?.amount == null && wideAmount(wide, setting) === 'refused') read.feed = refuse(words.refused.wideAmount(wide.amount));
}

/** The sheet's own amount of feed; a kind of feed in it would contradict the choice beside it. */
export function wideAmount(wide: SheetWide, setting: SheetSetting): { amount: number; unit: ReturnType<typeof unitOf> } | null | 'refused' {
  if (wide.amount.trim() === '') return null;
  const read = readFeed(wide.amount.trim(), setting);
  return read === null || read.feed !== null || read.amount === null ? 'refused' : { amount: read.amount.amount, unit: unitOf(read) };
}

function unitOf(read: NonNullable<ReturnType<typeof readFeed>>) {
  return read.amount?.unit ?? null;
}

function readHarvest(read: Record<ColumnKey, Reading>, wide: SheetWide, setting: SheetSetting): void {
  if (read.full.state === 'empty') {
    for (const key of ['empty', 'moisture', 'lot'] as const) if (read[key].state === 'read') read[key] = refuse(words.refused.fullMissing);
    return;
  }
  if (read.full.state !== 'read') return;
  const tare = tareOf(read.empty, wide, setting);
  if (tare.state === 'refused') {
    if (read.empty.state === 'empty') read.full = refuse(tare.sentence);
    return;
  }
  const [gross, less] = [readWeight(read.full.value, setting), tare.state === 'read' ? readWeight(tare.value, setting) : null];
  if (gross === null || less === null) return;
  if (weightIn(less, massUnits[0]) > weightIn(gross, massUnits[0])) read.full = refuse(words.refused.tareBeyond(`${less.amount} ${less.unit}`, `${gross.amount} ${gross.unit}`));
}

/** The empty weight that a harvest of this row is less by: the row's own, else the sheet's; refused when neither says. */
export function tareOf(own: Reading, wide: SheetWide, setting: SheetSetting): Reading {
  if (own.state !== 'empty') return own;
  const sheet = readCell('empty', wide.tare, setting);
  return sheet.state === 'empty' ? refuse(words.refused.noTare) : sheet;
}

/** The fields under the row belong to the act; what was typed for another one is said, not dropped. */
function readActFields(read: Record<ColumnKey, Reading>): void {
  const act = actOf(read);
  if (act === 'split' && read.newLabel.state === 'empty') read.newLabel = refuse(words.refused.noLabel);
  if (act === 'combined' && read.into.state === 'empty') read.into = refuse(words.refused.noInto);
  const mine: readonly ColumnKey[] = act === null ? [] : fieldsOf[act];
  const left = columnKeys.filter((key) => isActKey(key) && !mine.includes(key) && read[key].state !== 'empty');
  // While the act itself cannot be read its fields wait for it.
  if (left.length > 0 && read.act.state !== 'refused') for (const key of left) read[key] = refuse(words.refused.fieldAlone(words.names[key]));
}

function broodBeyondBees(read: RowReadings): string | null {
  if (read.bees.state !== 'read' || read.brood.state !== 'read') return null;
  return Number(read.brood.value) > Number(read.bees.value) ? words.question.broodBeyondBees(read.brood.value, read.bees.value) : null;
}

function lostYetAlive(read: RowReadings): string | null {
  if (read.act.state !== 'read' || actOf(read) !== null) return null;
  if (read.bees.state === 'read' && Number(read.bees.value) > 0) return words.question.lostYetBees(read.bees.value);
  const seen = [read.eggs, read.queen].some((cell) => cell.state === 'read' && cell.value === 'yes');
  return seen ? words.question.lostYetSeen : null;
}

function askIf(reading: Reading, question: string | null): Reading {
  if (question === null || reading.state !== 'read' || reading.question !== undefined) return reading;
  return { ...reading, question };
}

function refuse(sentence: string): Reading {
  return { state: 'refused', sentence };
}
