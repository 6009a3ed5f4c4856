import { accountParts } from './accountParts.ts';
import { causeParts } from './causeParts.ts';
import { factorParts } from './factorParts.ts';
import { noteParts, sayParts } from './noteParts.ts';
import { rateParts } from './rateParts.ts';
import type { SectionMaker } from './sectionFacts.ts';
import { survivalParts } from './survivalParts.ts';

/** The review's sections in the order and with the numbers of the screen; each is printed, put into the page to send, and its tables saved as CSV. */
export const reviewSections: readonly { readonly key: string; readonly title: string; readonly make: SectionMaker }[] = [
  { key: 'account', title: 'The season’s account', make: accountParts },
  { key: 'losses', title: 'What was lost', make: rateParts },
  { key: 'survival', title: 'When they died', make: survivalParts },
  { key: 'factors', title: 'What went with it', make: factorParts },
  { key: 'causes', title: 'Causes as recorded', make: causeParts },
  { key: 'say', title: 'What the numbers can and cannot say', make: sayParts },
  { key: 'notes', title: 'Notes to yourself', make: noteParts },
];
