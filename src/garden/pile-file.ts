/**
 * Bins, piles and bought compost as the garden file tells them.
 */
import { z } from 'zod';
import {
  across,
  anyhow,
  choice,
  clock,
  day,
  everyNotBefore,
  id,
  known,
  list,
  litres,
  notBefore,
  number,
  planned,
  text,
} from './file-values.ts';

/** What a look whether compost is ready may find amiss. */
export const MATURITY_FAILURES = ['heats', 'smells', 'coarse'] as const;

/** A compost pile with its log. */
export const pile = known('a pile', {
  id: id.optional(),
  bin: text('Give the id or name of a bin above.'),
  built: day,
  method: choice(['hot', 'cold']),
  ingredients: list(
    known('an ingredient', { material: text('Give a material id, such as leaves_dry_loose.'), litres: litres(200) }),
    'ingredients',
  ),
  readings: list(
    known('a reading', {
      on: day,
      at: clock.optional(),
      tempC: number('degrees C', 55, -30, 95).optional(),
      moisture: choice(['dry', 'damp', 'wet']).optional(),
      smell: choice(['earthy', 'ammonia', 'sour']).optional(),
      pests: z.literal(true, { error: 'Write pests: true, or leave it out.' }).optional(),
      slumped: z.literal(true, { error: 'Write slumped: true, or leave it out.' }).optional(),
    }),
    'readings',
  ),
  turns: list(day, 'dates'),
  notReady: list(
    known('a look that found it unready', {
      on: day,
      failed: z.array(choice(MATURITY_FAILURES)).min(1, 'Give at least one, such as [smells].'),
    }),
    'looks that found it unready',
  ),
  curingSince: day.optional(),
  finished: day.optional(),
  finishedLitres: litres(300).optional(),
  planned: planned(['built']),
})
  .superRefine(everyNotBefore('turns', 'built', 'Give turns from the day it was built on.'), anyhow)
  .superRefine(everyNotBefore('readings', 'built', 'Give readings from the day it was built on.'), anyhow)
  .refine(
    (given) => notBefore(given.curingSince, given.built),
    across('Give a day that is not before it was built.', 'curingSince'),
  )
  .refine(
    (given) => notBefore(given.finished, given.curingSince ?? given.built),
    across('Give a day that is not before it was built or began to cure.', 'finished'),
  );

/** A compost bin. */
export const bin = known('a bin', {
  id: id.optional(),
  name: text('Give the bin a name, such as "Left bay".'),
  volumeL: litres(760),
  closed: z.literal(true, { error: 'Write closed: true, or leave it out.' }).optional(),
});

/** Compost got from elsewhere. */
export const compostBought = known('compost bought', {
  on: day,
  litres: litres(500),
  ordered: z.literal(true, { error: 'Write ordered: true, or leave it out once it has come.' }).optional(),
  tested: day.optional(),
}).refine(
  (given) => notBefore(given.tested, given.on),
  across('Give a day that is not before it was bought.', 'tested'),
);
