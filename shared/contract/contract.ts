import type { z } from 'zod';
import type { Answer } from '../faults.ts';
import { answerOperations } from './answers.ts';
import { actOperations } from './acts.ts';
import { breederOperations } from './breeders.ts';
import { bookOperations } from './book.ts';
import { calendarOperations } from './calendar.ts';
import { colonyOperations } from './colonies.ts';
import { decisionOperations } from './decision.ts';
import { deadOutOperations } from './deadOut.ts';
import { findOperations } from './find.ts';
import { journalOperations } from './journal.ts';
import { lineOperations } from './lines.ts';
import { lossFactorOperations } from './lossFactors.ts';
import { lossOperations } from './losses.ts';
import { lossSectionOperations } from './lossSections.ts';
import { lotOperations } from './lots.ts';
import { mendingOperations } from './mending.ts';
import { miteOperations } from './mites.ts';
import { offerOperations } from './offers.ts';
import { orderOperations } from './order.ts';
import { planChangeOperations } from './planChange.ts';
import { placedOperations } from './placed.ts';
import { budgetLineOperations } from './budgetLines.ts';
import { returnsOperations } from './returns.ts';
import { roundOperations } from './rounds.ts';
import { ruleOperations } from './rules.ts';
import { queenOperations } from './queens.ts';
import { dueOperations } from './due.ts';
import { moveDayOperations } from './moveDays.ts';
import { nearItemOperations } from './nearItems.ts';
import { needOperations } from './needs.ts';
import { paperOperations } from './paper.ts';
import { sheetOperations } from './sheets.ts';
import { sortOutOperations } from './sortOut.ts';
import { spaceOperations } from './space.ts';
import { stockOperations } from './stock.ts';
import { storesOperations } from './stores.ts';
import { stripOperations } from './strip.ts';
import { tallyOperations } from './tally.ts';
import { tripOperations } from './trips.ts';
import { workOperations } from './work.ts';
import { workDayOperations } from './workDays.ts';
import { workedOperations } from './worked.ts';
import { yardOperations } from './yards.ts';
import { yieldOperations } from './yields.ts';

/** Everything that can be asked of the desk; the keeper's registration, the bridge and the screens' client follow from it. */
export const contract = {
  ...actOperations,
  ...bookOperations,
  ...breederOperations,
  ...journalOperations,
  ...colonyOperations,
  ...lineOperations,
  ...lossOperations,
  ...lossSectionOperations,
  ...lossFactorOperations,
  ...mendingOperations,
  ...miteOperations,
  ...orderOperations,
  ...placedOperations,
  ...returnsOperations,
  ...budgetLineOperations,
  ...roundOperations,
  ...ruleOperations,
  ...offerOperations,
  ...decisionOperations,
  ...sheetOperations,
  ...sortOutOperations,
  ...stockOperations,
  ...nearItemOperations,
  ...storesOperations,
  ...spaceOperations,
  ...stripOperations,
  ...yardOperations,
  ...findOperations,
  ...queenOperations,
  ...dueOperations,
  ...needOperations,
  ...deadOutOperations,
  ...answerOperations,
  ...paperOperations,
  ...tripOperations,
  ...workOperations,
  ...workDayOperations,
  ...planChangeOperations,
  ...moveDayOperations,
  ...calendarOperations,
  ...workedOperations,
  ...lotOperations,
  ...yieldOperations,
  ...tallyOperations,
} as const;

export type OperationName = keyof typeof contract;
/** What a caller may pass. Reads that show the operation take the day to show it as of; see `asOf.ts`. */
export type InputOf<Name extends OperationName> = (typeof contract)[Name]['kind'] extends 'read' ? WithDay<z.input<(typeof contract)[Name]['input']>> : z.input<(typeof contract)[Name]['input']>;
type WithDay<Own> = (Own extends Record<string, never> ? unknown : Own) & { readonly asOf?: string | undefined };
/** What the desk receives after parsing. */
export type ParsedInputOf<Name extends OperationName> = z.output<(typeof contract)[Name]['input']>;
export type OutputOf<Name extends OperationName> = z.output<(typeof contract)[Name]['output']>;

/** The one way in and out, on both sides of the wall. */
export interface DeskClient {
  call<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<Answer<OutputOf<Name>>>;
}

export function isOperationName(name: unknown): name is OperationName {
  return typeof name === 'string' && Object.hasOwn(contract, name);
}
