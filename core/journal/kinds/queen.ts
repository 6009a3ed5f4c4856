import { z } from 'zod';
import { queenEvents } from '#shared/entryForms.ts';
import { beginReign, currentReign, endReign } from '../colonyState.ts';
import { colonyInYard } from '../bodyParts.ts';
import { defineKind, touchesItself } from '../kindRules.ts';

const body = z.strictObject({ ...colonyInYard, what: z.enum(queenEvents) });

const words: Record<(typeof queenEvents)[number], string> = {
  seen: 'Queen seen.',
  marked: 'Queen marked.',
  superseded: 'Queen superseded by a daughter.',
  swarmed: 'Swarmed; the old queen left.',
  missing: 'Queen missing.',
};

/** Something about the queen that is there. A successor's year is left open: it was not written down. */
export const queen = defineKind({
  body,
  touches: touchesItself,
  effect: (state, entry) => {
    switch (entry.body.what) {
      case 'seen':
        return;
      case 'marked': {
        const reign = currentReign(state);
        if (reign === null) beginReign(state, entry.id, entry.day, null, null, true);
        else reign.marked = true;
        return;
      }
      case 'superseded':
      case 'swarmed':
        endReign(state, entry.day, entry.id, entry.body.what);
        beginReign(state, entry.id, entry.day, null, null);
        return;
      case 'missing':
        endReign(state, entry.day, entry.id, 'missing');
    }
  },
  sentence: (made) => words[made.what],
});
