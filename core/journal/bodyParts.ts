import { z } from 'zod';
import type { ColonyId, Grams, Millilitres, Minor, YardId } from '#shared/brands.ts';
import { dayFromIso, type Day } from '#shared/days.ts';

const isId = (value: unknown) => Number.isSafeInteger(value) && (value as number) > 0;
const isAmount = (value: unknown) => typeof value === 'number' && Number.isFinite(value) && value >= 0;

export const colonyRef = z.custom<ColonyId>(isId, 'not a colony id');
export const yardRef = z.custom<YardId>(isId, 'not a yard id');
export const plainDay = z.custom<Day>((value) => typeof value === 'string' && dayFromIso(value) !== null, 'not a day');
export const grams = z.custom<Grams>(isAmount, 'not a mass');
export const millilitres = z.custom<Millilitres>(isAmount, 'not a volume');
export const minor = z.custom<Minor>((value) => Number.isSafeInteger(value) && (value as number) >= 0, 'not an amount of money');
export const amount = z.number().min(0);
export const count = z.number().int().min(0);
export const text = z.string().min(1);
/** A place of the shed account: a fixed one, or a yard. */
export const place = z.union([z.enum(['shed', 'supplier', 'scrap']), z.strictObject({ yard: yardRef })]);
export type Place = z.infer<typeof place>;

export const note = { note: text.optional() };
export const colonyInYard = { colony: colonyRef, yard: yardRef.optional(), ...note };
