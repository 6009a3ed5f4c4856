import { z } from 'zod';
import { write } from './operation.ts';
import { planChoice, planProgress } from './work.ts';

const key = z.string().min(1).max(120);
const said = z.strictObject({ kind: planChoice.shape.kind, day: planChoice.shape.day, yard: planChoice.shape.yard, task: z.string().max(200).nullable() });

export const planChangeOperations = {
  /** Lets go and says several things of the plan at once, all or none, and works it out anew around them. `back` takes it back as long as the book is open. */
  'work.change': write(
    z.strictObject({ lift: z.array(key).max(100), choose: z.array(said).max(100) }),
    z.object({ back: key, progress: planProgress }), 'taken back by work.changeBack, with the plan that was there',
  ),
  /** Takes such a change back. `same`: the very plan is there again that was there before; else other things were changed meanwhile, and it is worked out anew. */
  'work.changeBack': write(z.strictObject({ back: key }), z.object({ same: z.boolean(), progress: planProgress }), 'say it again'),
} as const;
