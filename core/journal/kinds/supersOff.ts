import { dayInWords } from '#shared/days.ts';
import { defineKind, touchesItself } from '../kindRules.ts';
import { superBody, superWords } from './supersOn.ts';

/** Boxes taken off; never more than were put on. */
export const supersOff = defineKind({
  body: superBody,
  touches: touchesItself,
  check: (state, entry) => {
    const on = state.supers[entry.body.box];
    return entry.body.count > on
      ? {
          column: 'count',
          sentence: `${superWords(entry.body.box, entry.body.count)} cannot come off ${state.label} on ${dayInWords(entry.day)}: ${on === 0 ? 'none is' : `only ${on} ${on === 1 ? 'is' : 'are'}`} recorded on it. Enter the supers put on first, or correct the count.`,
        }
      : null;
  },
  effect: (state, entry) => {
    state.supers[entry.body.box] -= entry.body.count;
  },
  sentence: (made) => `${superWords(made.box, made.count)} taken off.`,
});
