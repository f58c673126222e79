/**
 * Covers and mulches as the garden file tells them.
 */
import { z } from 'zod';
import {
  across,
  anyhow,
  choice,
  day,
  everyNotBefore,
  id,
  justOne,
  known,
  list,
  notBefore,
  number,
  planned,
  text,
} from './file-values.ts';

/** What may be seen of a cover's flowering. */
export const STAGES = ['first-buds', 'in-bloom'] as const;

/** How much of the ground a young cover may be seen to cover, least first. */
export const COVERED = ['hardly-any', 'a-third', 'two-thirds', 'nearly-all'] as const;

/** What the gardener may do about a cover that has grown again. */
export const REGROWTH_ANSWERS = ['cut', 'sheet'] as const;

/** What may be done about it, as it is kept. */
export const REGROWTH_WORK = ['cut-again', 'sheet-laid', 'sheet-lifted'] as const;

/** What a bed may be mulched with where no cover is to grow. */
export const MULCHES = ['leaves', 'straw'] as const;

/** Grams of seed, of a packet or sown. */
export const seedGrams = number('grams of seed', 320, 0, 100_000);

/** A cover crop in a bed. */
export const stand = known('a cover stand', {
  id: id.optional(),
  bed: text('Give the id or name of a bed above.'),
  cover: text('Give a cover crop id, such as oats.').optional(),
  mix: text('Give a mix id, such as rye-vetch.').optional(),
  sow: day,
  cut: day.optional(),
  regrowthChecked: list(day, 'dates'),
  regrowth: list(
    known('a regrowth', {
      on: day,
      what: choice(['grew-again', ...REGROWTH_WORK]),
      answer: choice(REGROWTH_ANSWERS).optional(),
    }).refine(
      ({ what, answer }) => answer === undefined || what === 'grew-again',
      across('Give an answer only beside what: grew-again.', 'answer'),
    ),
    'regrowths',
  ),
  dead: day.optional(),
  seen: list(
    known('a stage seen', {
      cover: text('Give a cover crop id, such as oats.'),
      on: day,
      stage: choice(STAGES),
      modelled: day.optional(),
    }),
    'stages seen',
  ),
  looked: list(
    known('a look at a young cover', {
      on: day,
      covered: choice(COVERED),
      weedy: z.boolean({ error: 'Give true or false.' }).default(false),
    }),
    'looks',
  ),
  resown: list(
    known('a sowing of thin places', {
      cover: text('Give a cover crop id, such as oats.').optional(),
      mix: text('Give a mix id, such as rye-vetch.').optional(),
      on: day,
    }).refine((given) => justOne(given, ['cover', 'mix']), across('Give either cover or mix, such as cover: oats.')),
    'sowings of thin places',
  ),
  seed: list(
    known('seed sown', {
      cover: text('Give a cover crop id, such as oats.'),
      on: day,
      grams: seedGrams,
    }),
    'seed sown',
  ),
  planned: planned(['sow']),
})
  .refine((given) => justOne(given, ['cover', 'mix']), across('Give either cover or mix, such as cover: oats.'))
  .refine((given) => notBefore(given.cut, given.sow), across('Give a cut that is not before the sowing.', 'cut'))
  .refine((given) => notBefore(given.dead, given.sow), across('Give a day that is not before the sowing.', 'dead'))
  .superRefine(everyNotBefore('looked', 'sow', 'Give looks that are not before the sowing.'), anyhow)
  .superRefine(everyNotBefore('resown', 'sow', 'Give sowings of thin places that are not before its own.'), anyhow)
  .superRefine(everyNotBefore('seed', 'sow', 'Give seed sown from the day of its sowing on.'), anyhow);

/** A mulch meant for days of a bed. */
export const mulch = known('a mulch planned', {
  bed: text('Give the id or name of a bed above.'),
  from: day,
  to: day.optional(),
  mulch: choice(MULCHES),
}).refine((given) => notBefore(given.to, given.from), across('Give a "to" that is not before "from".', 'to'));
