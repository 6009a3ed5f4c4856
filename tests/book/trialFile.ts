import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { contract, type InputOf, type OperationName, type OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';
import { FaultError, type Answer, type FaultCode } from '#shared/faults.ts';
import { createDatabase } from '#core/book/openDatabase.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import { createDesk } from '#core/desk/desk.ts';
import { founding } from '#tests/journal/anyRows.ts';
import { acts, trialBook } from '#tests/journal/trialBook.ts';

/** A scratch folder that `remove` takes away. */
export function scratchFolder(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'outyard-book-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}

/** Writes a small closed book with four colonies and one look at each. */
export async function writeBook(path: string): Promise<void> {
  const store = await trialBook(sqliteStore(createDatabase(path), path));
  await acts.enter(store, founding);
  await acts.enter(store, founding.map(({ colony }) => ({ date: '2024-05-01', entry: 'inspection', colony: colony ?? '', frames_bees: '8' })));
  await store.close();
}

export function codeOf(act: () => unknown): FaultCode | null {
  try {
    act();
    return null;
  } catch (error) {
    if (error instanceof FaultError) return error.fault.code;
    throw error;
  }
}

/** A desk over a folder, on a day, with what it logs. */
export function trialDesk(folder: string, on = '2026-11-25') {
  const log: string[] = [];
  const desk = createDesk({ folder, program: 'Outyard under test', now: () => ({ day: day(on), stamp: `${on} 21:00` }), log: (line) => log.push(line) });
  const answer = async <Name extends OperationName>(name: Name, input: InputOf<Name>) => (await desk.call(name, input)) as Answer<OutputOf<Name>>;
  const ask = async <Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> => {
    const found = await answer(name, input);
    if (!found.ok) throw new Error(`${name}: ${found.sentence} ${log.join('\n')}`);
    return found.value;
  };
  /** The answer, held against the shape that the contract promises: every figure in it is a number. */
  const askHeld = async <Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> => {
    const value = await ask(name, input);
    expect(contract[name].output.parse(value)).toEqual(value);
    return value;
  };
  return { desk, ask, askHeld, answer, log };
}
