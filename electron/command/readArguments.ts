import { parseArgs, type ParseArgsOptionsConfig } from 'node:util';
import { CommandError } from './verb.ts';

/** Node's own parser, strict, with its complaints as sentences. Options are `--name value` or `--name=value`. */
export function readArguments<Names extends string>(
  args: readonly string[],
  names: readonly Names[],
  positionals: number,
): { options: Partial<Record<Names, string>>; files: string[] } {
  const options: ParseArgsOptionsConfig = Object.fromEntries(names.map((name) => [name, { type: 'string' as const }]));
  try {
    const parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
    if (parsed.positionals.length > positionals) {
      throw new CommandError(`“${parsed.positionals[positionals]}” is one word too many.`, 'Put names with spaces in quotes.');
    }
    return { options: parsed.values as Partial<Record<Names, string>>, files: parsed.positionals };
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(error instanceof Error ? error.message : String(error), 'See: npm run -s outyard -- help');
  }
}

/** One of a few words, the first being the one meant when none is given. */
export function oneOf<Word extends string>(name: string, given: string | undefined, words: readonly [Word, ...Word[]]): Word {
  if (given === undefined) return words[0];
  const found = words.find((word) => word === given);
  if (found === undefined) throw new CommandError(`--${name} cannot be “${given}”.`, `It is one of: ${words.join(', ')}.`);
  return found;
}

/** A number within bounds, or undefined when none is given. */
export function numberOf(
  name: string,
  given: string | undefined,
  bounds: { readonly min: number; readonly max: number; readonly whole?: boolean },
): number | undefined {
  if (given === undefined) return undefined;
  const value = given.trim() === '' ? Number.NaN : Number(given);
  if (!(value >= bounds.min && value <= bounds.max) || (bounds.whole && !Number.isInteger(value))) {
    throw new CommandError(`--${name} cannot be “${given}”.`, `It is a ${bounds.whole ? 'whole ' : ''}number from ${bounds.min} to ${bounds.max}.`);
  }
  return value;
}
