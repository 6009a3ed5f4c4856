import type { ReactNode } from 'react';
import type { Findings } from '#shared/contract/find.ts';
import { foldedWords, fold } from '#shared/fold.ts';
import { dayText, number } from '../parts/format.ts';
import { lotAddress } from '../parts/lotAddress.ts';
import type { Command, CommandSetting } from './command.ts';
import { commands, findCommand } from './commands.ts';
import { shortcutText } from './shortcut.ts';
import { words } from './words.ts';

/** One line of the box: what it says, and where it leads. */
export interface Choice {
  readonly key: string;
  readonly line: ReactNode;
  readonly more?: ReactNode;
  readonly hint?: string;
  readonly act: { readonly go: string } | { readonly command: Command };
}

export interface ChoiceGroup {
  readonly name: string;
  readonly choices: readonly Choice[];
  readonly total: number;
}

/** The lines for what was typed: what the desk found, and the commands that can be given now. */
export function choicesFor(typed: string, found: Findings | undefined, setting: CommandSetting): ChoiceGroup[] {
  const fitting = commandsFor(typed, setting);
  const groups: ChoiceGroup[] = found
    ? [coloniesOf(found), yardsOf(found), queensOf(found), lotsOf(found), commandGroup(fitting), entriesOf(found)]
    : [commandGroup(fitting)];
  return groups.filter(({ choices }) => choices.length > 0);
}

/** Commands that can be given now and have every word; by name first, then by their other words. */
export function commandsFor(typed: string, setting: CommandSetting): Command[] {
  const wanted = foldedWords(typed);
  const fits = (text: string) => wanted.every((word) => fold(text).includes(word));
  const able = commands.filter((command) => command !== findCommand && command.enabled(setting));
  const named = able.filter(({ name }) => fits(name));
  return [...named, ...able.filter((command) => !named.includes(command) && fits(`${command.name} ${command.search}`))];
}

function commandGroup(fitting: readonly Command[]): ChoiceGroup {
  const choices = fitting.map((command): Choice => ({
    key: command.id, line: command.name, act: { command }, ...(command.shortcut ? { hint: shortcutText(command.shortcut) } : {}),
  }));
  return { name: words.groups.commands, choices, total: choices.length };
}

function coloniesOf({ colonies }: Findings): ChoiceGroup {
  const choices = colonies.rows.map((colony): Choice => ({ key: `colony-${colony.id}`, line: <bdi>{colony.label}</bdi>, more: words.colony(colony), act: { go: `/colonies/${colony.id}` } }));
  return { name: words.groups.colonies, choices, total: colonies.total };
}

function yardsOf({ yards }: Findings): ChoiceGroup {
  const choices = yards.rows.map(({ id, code, name, living }): Choice => ({
    key: `yard-${id}`, line: <bdi>{name}</bdi>, more: <><bdi>{code}</bdi>, {words.living(number(living))}</>, act: { go: `/yards/${id}` },
  }));
  return { name: words.groups.yards, choices, total: yards.total };
}

function queensOf({ queens }: Findings): ChoiceGroup {
  const choices = queens.rows.map(({ id, colony, year, colour, source, since, until }): Choice => ({
    key: `queen-${colony.id}-${id}`,
    line: <>{words.queen(year, colour)}{source === null ? '' : <>{', '}<bdi>{source}</bdi></>}</>,
    more: <>{words.queenIn} <bdi>{colony.label}</bdi>, {words.queenSince(dayText(since), until === null ? null : dayText(until))}</>,
    act: { go: `/queens/${id}` },
  }));
  return { name: words.groups.queens, choices, total: queens.total };
}

function lotsOf({ lots }: Findings): ChoiceGroup {
  const choices = lots.rows.map((lot): Choice => ({
    key: `lot-${encodeURIComponent(lot.code)}`, line: <bdi>{lot.code}</bdi>, more: words.lot(lot), act: { go: lotAddress(lot.code) },
  }));
  return { name: words.groups.lots, choices, total: lots.total };
}

function entriesOf({ entries }: Findings): ChoiceGroup {
  const choices = entries.rows.map(({ id, day, kind, sentence, note, struck, colonies }): Choice => ({
    key: `entry-${id}`,
    line: <bdi className={struck ? 'struck' : ''}>{kind === 'note' || note === null ? sentence : `${sentence} ${note}`}</bdi>,
    more: <>{dayText(day)}{colonies.map((colony) => <span key={colony.id}>, <bdi>{colony.label}</bdi></span>)}{struck ? `, ${words.struck}` : ''}</>,
    act: { go: `/entries/${id}` },
  }));
  return { name: words.groups.entries, choices, total: entries.total };
}
