import { words as frame } from '../parts/words.ts';
import type { Command, CommandSetting } from './command.ts';

const withBook = ({ book }: CommandSetting) => book !== null;
const toEnter = ({ book, asOf }: CommandSetting) => book !== null && asOf === null;
const withEntries = ({ book }: CommandSetting) => book !== null && book.entries > 0;
const always = () => true;

export const findCommand: Command = {
  id: 'find', group: 'go', name: 'Find', search: 'search look for command box palette', shortcut: { key: 'k', ctrl: true },
  enabled: always, run: (hands) => hands.find(),
};

/** The screens of the rail, in its order. */
export const screenCommands = [
  { at: '/tonight', name: frame.rail.tonight, search: 'round sheet yard evening inspection', digit: '1' },
  { at: '/needs', name: frame.rail.needs, search: 'attention due list what needs doing colonies yards tonight todo', digit: '0' },
  { at: '/yards', name: frame.rail.yards, search: 'apiary stand order access registration', digit: '2' },
  { at: '/colonies', name: frame.rail.colonies, search: 'list hives table', digit: '3' },
  { at: '/lines', name: frame.rail.lines, search: 'descent family splits lanes picture', digit: '4' },
  { at: '/losses', name: frame.rail.losses, search: 'review winter survival rate ledger', digit: '5' },
  { at: '/honey', name: frame.rail.honey, search: 'lots jars labels moisture water extracted bottling trace recall yield crop', digit: '8' },
  { at: '/stock', name: frame.rail.stock, search: 'shed equipment spring plan packages queens', digit: '6' },
  { at: '/work', name: frame.rail.work, search: 'plan tasks calendar hours trip visits week month schedule', digit: '9' },
  { at: '/book', name: frame.rail.book, search: 'file settings yards', digit: '7' },
].map(({ at, name, search, digit }) => ({
  at,
  screen: name,
  command: {
    id: `go${at}`, group: 'go', name: `Go to ${name}`, search, shortcut: { key: digit, alt: true }, enabled: withBook, run: (hands) => hands.go(at),
  } satisfies Command as Command,
}));

const orderCommand: Command = {
  id: 'go/orders', group: 'go', name: 'Go to the order before spring', search: 'packages nucs queens splits plan forecast offers sellers deadline buy', enabled: withBook, run: (hands) => hands.go('/orders'),
};

/** The shed's forms stand below long lists. */
const stockCommands: readonly Command[] = [
  {
    id: 'stock.movement', group: 'enter', name: 'Enter a movement of equipment', search: 'stock shed boxes frames move carry bought scrap',
    enabled: toEnter, run: (hands) => hands.onScreen('enter a movement', '/stock'),
  },
  {
    id: 'stock.count', group: 'enter', name: 'Enter a count of equipment', search: 'stock shed inventory stocktaking boxes frames counted',
    enabled: toEnter, run: (hands) => hands.onScreen('enter a count', '/stock'),
  },
];

const workCommands: readonly Command[] = [
  { id: 'go/work/tasks', group: 'go', name: 'Go to own tasks', search: 'work todo repeat once write down', enabled: withBook, run: (hands) => hands.go('/work/tasks') },
  { id: 'go/work/hours', group: 'go', name: 'Go to the hours there are', search: 'work week pattern people helper exceptions distances driving', enabled: withBook, run: (hands) => hands.go('/work/hours') },
  { id: 'go/work/worked', group: 'go', name: 'Go to the hours worked', search: 'labour time per colony pound busiest weeks planned next season fit', enabled: withBook, run: (hands) => hands.go('/work/worked') },
  { id: 'calendar.save', group: 'book', name: 'Save the calendar file', search: 'ics ical export visits dues phone', enabled: toEnter, run: (hands) => hands.onScreen('save the calendar', '/work/calendar') },
];

const mitesCommand: Command = {
  id: 'go/mites', group: 'go', name: 'Go to mites', search: 'varroa count wash threshold treatment acid efficacy', enabled: withBook, run: (hands) => hands.go('/needs/mites'),
};

const storesCommands: readonly Command[] = [
  { id: 'go/stores', group: 'go', name: 'Go to stores and winter', search: 'feed syrup sugar weight heft unite weak winter list wrap supers take', enabled: withBook, run: (hands) => hands.go('/needs/stores') },
  { id: 'go/space', group: 'go', name: 'Go to space and swarms', search: 'room box super deep add swarm risk cells split latest day', enabled: withBook, run: (hands) => hands.go('/needs/space') },
];

const queensCommand: Command = {
  id: 'go/queens', group: 'go', name: 'Go to queens', search: 'requeen breeder ranking mother calendar graft cell caged old fierce', enabled: withBook, run: (hands) => hands.go('/needs/queens'),
};

export const helpCommand: Command = {
  id: 'help', group: 'go', name: 'Help: all commands and keys', search: 'shortcuts keyboard manual', shortcut: { key: 'F1' },
  enabled: withBook, run: (hands) => hands.go('/help'),
};

export const anotherDay: Command = {
  id: 'day.choose', group: 'go', name: 'Look at another day', search: 'as of back then past earlier history', shortcut: { key: 'l', alt: true },
  // A book looked at on its first evening may hold nothing, and other days still do.
  enabled: (setting) => withEntries(setting) || setting.asOf !== null, run: (hands) => hands.chooseDay(),
};

export const backToToday: Command = {
  id: 'day.today', group: 'go', name: 'Back to today', search: 'as of now present leave the day', shortcut: { key: 'l', alt: true, shift: true },
  enabled: ({ asOf }) => asOf !== null, run: (hands) => hands.backToToday(),
};

export const enterRound: Command = {
  id: 'round.enter', group: 'enter', name: 'Enter the round', search: 'save sheet', shortcut: { key: 'Enter', ctrl: true },
  enabled: ({ offered, asOf }) => asOf === null && offered.has('enter the round'), run: (hands) => hands.onScreen('enter the round'),
};

/** Every command of the program, in the order of the help page. */
export const commands: readonly Command[] = [
  findCommand,
  ...screenCommands.map(({ command }) => command),
  orderCommand,
  ...stockCommands, ...workCommands,
  mitesCommand,
  ...storesCommands,
  queensCommand,
  helpCommand,
  anotherDay,
  backToToday,
  enterRound,
  {
    id: 'entry.new', group: 'enter', name: 'Enter a record', search: 'new install hive colony split feed treatment harvest loss form', shortcut: { key: 'n', alt: true },
    enabled: toEnter, run: (hands) => hands.onScreen('open the entry form', '/colonies'),
  },
  {
    id: 'deadOut.look', group: 'enter', name: 'Look at a dead-out', search: 'autopsy dead hive died cause loss lost why signs foulbrood starved mites',
    enabled: withEntries, run: (hands) => hands.go('/dead-out'),
  },
  {
    id: 'act.undo', group: 'enter', name: 'Undo what was entered last', search: 'take back reverse mistake', shortcut: { key: 'z', alt: true },
    // Whether there is anything to take back the desk knows best: what the window last read may be a key press old.
    enabled: withBook, run: (hands) => hands.undo(),
  },
  {
    id: 'act.redo', group: 'enter', name: 'Redo what was undone last', search: 'bring back again', shortcut: { key: 'z', alt: true, shift: true },
    enabled: withBook, run: (hands) => hands.redo(),
  },
  {
    id: 'act.list', group: 'enter', name: 'See what was entered', search: 'acts last undo take back import history journal',
    enabled: withBook, run: (hands) => hands.go('/acts'),
  },
  {
    id: 'book.import', group: 'book', name: 'Bring records in', search: 'import csv file spreadsheet',
    enabled: toEnter, run: (hands) => hands.onScreen('choose a file', '/book'),
  },
  {
    id: 'book.sortOut', group: 'book', name: 'Sort out rows of imported files', search: 'to sort out waiting mend repair refused',
    enabled: withBook, run: (hands) => hands.go('/book/sort-out'),
  },
  {
    id: 'book.export', group: 'book', name: 'Export the journal', search: 'take records out csv save spreadsheet',
    enabled: withBook, run: (hands) => hands.onScreen('export', '/book'),
  },
  {
    id: 'book.check', group: 'book', name: 'Check the book', search: 'sound integrity verify',
    enabled: withBook, run: (hands) => hands.onScreen('check', '/book'),
  },
  {
    id: 'book.rules', group: 'book', name: 'House rules', search: 'numbers defaults thresholds limits settings source change',
    enabled: withBook, run: (hands) => hands.go('/book/rules'),
  },
  {
    id: 'book.returns', group: 'book', name: 'Costs and returns', search: 'money budget profit expenses income accountant price margin',
    enabled: withBook, run: (hands) => hands.go('/book/returns'),
  },
  {
    id: 'book.close', group: 'book', name: 'Close this book', search: 'start page another new',
    enabled: withBook, run: (hands) => hands.closeBook(),
  },
  {
    id: 'demo.ossar', group: 'book', name: 'Open the demo: Ossar Valley', search: 'invented example sample records',
    enabled: always, run: (hands) => hands.openDemo('ossar'),
  },
  {
    id: 'demo.tiny', group: 'book', name: 'Open the demo: a tiny yard', search: 'invented example sample records small',
    enabled: always, run: (hands) => hands.openDemo('tiny'),
  },
  {
    id: 'answers.open', group: 'go', name: 'Answers for loss surveys', search: 'survey questionnaire census quarter report state counts colonies wintered',
    enabled: withEntries, run: (hands) => hands.go('/losses/answers'),
  },
  {
    id: 'print.review', group: 'paper', name: 'Print the loss review', search: 'pdf paper losses season',
    enabled: withEntries, run: (hands) => hands.onScreen('print the review', '/print/losses'),
  },
  {
    id: 'print.order', group: 'paper', name: 'Print the order', search: 'pdf paper spring packages equipment',
    enabled: withEntries, run: (hands) => hands.onScreen('print the order', '/print/orders'),
  },
  {
    id: 'print.treatments', group: 'paper', name: 'Print the treatments of a season', search: 'pdf paper inspector log varroa mites',
    enabled: withEntries, run: (hands) => hands.go('/print/treatments'),
  },
  {
    id: 'print.round', group: 'paper', name: 'Print the field sheet', search: 'pdf paper round yard inspection',
    enabled: withEntries, run: (hands) => hands.onScreen('print the field sheet', '/tonight'),
    },
    {
    id: 'print.tags', group: 'paper', name: 'Print tags for the hives', search: 'label code scan qr sheet',
    enabled: withEntries, run: (hands) => hands.go('/print/tags'),
  },
  {
    id: 'margin.fold', group: 'window', name: 'Fold or open the margin', search: 'side notes hide show', shortcut: { key: 'm', alt: true },
    enabled: ({ offered }) => offered.has('fold the margin'), run: (hands) => hands.onScreen('fold the margin'),
  },
  { id: 'paper.light', group: 'window', name: 'Light paper', search: 'theme colour bright', enabled: always, run: (hands) => hands.paper('light') },
  { id: 'paper.dark', group: 'window', name: 'Dark paper', search: 'theme colour night', enabled: always, run: (hands) => hands.paper('dark') },
  { id: 'paper.system', group: 'window', name: 'Paper as the computer has it', search: 'theme colour system automatic', enabled: always, run: (hands) => hands.paper('system') },
];

export const groupNames: Readonly<Record<Command['group'], string>> = {
  go: 'Going about', enter: 'Entering', book: 'The book', paper: 'On paper', window: 'The window',
};
