import { counted, dayText, number } from '../../parts/format.ts';
import { dayFromIso } from '#shared/days.ts';

const rows = (count: number) => counted(count, 'row', 'rows');

/** What the page of rows to sort out says. */
export const words = {
  title: 'To sort out',
  line: 'Rows of files brought in that could not be entered. Each stays here until it is entered, or set aside with a reason.',
  show: 'Show',
  waiting: (count: number) => `waiting (${number(count)})`,
  aside: (count: number) => `set aside (${number(count)})`,
  entered: (count: number) => `${rows(count)} entered since.`,
  none: 'Nothing waits to be sorted out. Rows of a file that cannot be entered will wait here.',
  noneAside: 'No row is set aside.',
  toBook: 'Bring records in',
  enterReady: (count: number) => `Enter ${counted(count, 'row that can stand now', 'rows that can stand now')}`,
  readyLine: 'What stood in their way is in the book now; they are entered as they were typed.',
  file: (file: string, count: number) => `${file}: ${rows(count)}`,
  lineNumber: 'Line',
  column: 'Column',
  value: 'As typed',
  sentence: 'What is wrong, and what would mend it',
  reason: 'Why it is set aside',
  ready: (says: string) => `Can be entered now. ${says}`,
  open: 'Mend',
  openName: (line: number, file: string) => `Mend line ${line} of ${file}`,
  bringBack: 'Bring back',
  bringBackName: (line: number, file: string) => `Bring back line ${line} of ${file}`,
  asideSince: (at: string, reason: string) => `${reason} (${dayText(dayFromIso(at.slice(0, 10)))})`,
  more: (count: number) => `Show ${number(count)} more`,
  form: (line: number, file: string) => `Line ${line} of ${file}`,
  typed: 'In the file',
  wouldSay: 'It would stand:',
  notYet: 'It cannot stand yet:',
  notYetAt: 'It cannot stand yet; the sentence is at its field.',
  enter: 'Enter this row',
  setAside: 'Set aside',
  why: 'Why it is set aside',
  whyLacking: 'Say why in a word or two, so that it can be understood later.',
  setAsideDo: 'Set this row aside',
  leave: 'Leave it',
  asideDone: (line: number, file: string) => `Line ${line} of ${file} is set aside. It is kept, and can be brought back.`,
  backDone: (line: number, file: string) => `Line ${line} of ${file} waits again.`,
  chooseKind: 'choose what happened',
  margin: 'Nothing is dropped',
  marginText:
    'A row waits until it is entered. When something else that you enter lets a row stand, it says so. Undo of the entry brings the row back; taking the whole import back takes its rows along. The same file brought in again does not double them.',
} as const;
