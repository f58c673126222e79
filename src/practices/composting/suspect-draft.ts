/**
 * Growing beans in hay, straw or dung of unknown history before it goes into a pile.
 */
import type { Bin, Garden, Pile } from '../../garden/garden.ts';
import { feedstockById, mayHoldWeedkiller } from '../../handbook/feedstocks.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { BLADES, MOULDY } from '../cautions.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { draftOfPile } from './pile-draft.ts';

/** Days that the beans grow (compost:S33; the days from memory). */
const BEAN_DAYS = { low: 14, high: 21 } as const;
/** Days before the building by which the pots are sown: three weeks of beans, and two in hand. House default. */
const SOWN_DAYS = { first: 42, usual: 35 } as const;

/** The key of a planned pile's test. */
export function suspectKey(pileId: string): string {
  return `pile-bean-test/pile:${pileId}`;
}

/** The test of what a planned pile is to hold; nothing where it holds nothing suspect, or the time for it was past. */
export function suspectDraft(pile: Pile, bin: Bin, startedOn: Day): TaskDraft | undefined {
  const suspect = suspectsIn(pile);
  const latest = addDays(pile.built.day, -BEAN_DAYS.high);
  if (pile.built.happened || suspect.length === 0 || latest < startedOn) return undefined;
  const what = suspect.join(' and ');
  return {
    ...draftOfPile(pile, bin),
    key: suspectKey(pile.id),
    kind: 'test-material',
    job: { id: 'test-material', title: 'Test with beans what goes into a pile' },
    weight: 'check',
    title: `Test the ${what} for ${bin.name} with beans`,
    steps: [
      `Do you know that the field it comes from saw no weedkiller? Then skip this. Buying ${what}? Ask the seller, and get it by now.`,
      'Chop some, or let dung stand in water. Fill a few pots with one part of it to one of clean potting mix, and as many with the mix alone. Let no water run from one to another.',
      `Sow three or four beans or peas in each and let them grow to three leaves, ${BEAN_DAYS.low} to ${BEAN_DAYS.high} days.`,
      'Leaves cupped or twisted only where it is in: do not compost it, and give it back.',
      'Straight in all pots? Mark this done; the pile waits for it.',
    ],
    cautions: ['With dung wear gloves, wash your hands, and keep it by your local rules.', MOULDY, BLADES],
    supplies: [{ what: 'pots, clean potting mix, bean or pea seed' }],
    window: {
      earliest: addDays(pile.built.day, -SOWN_DAYS.first),
      preferred: addDays(pile.built.day, -SOWN_DAYS.usual),
      latest,
    },
    ifMissed: 'still do',
    missedNote: 'Untested it can spoil beans, peas and tomatoes for years: build the pile without it, or later.',
    effortMinutes: START_UP_MINUTES + LOOK_MINUTES,
    confidence: 'recorded',
    reasons: [
      {
        rule: 'pile-bean-test.suspect',
        saw: { what, built: pile.built.day, daysLow: BEAN_DAYS.low, daysHigh: BEAN_DAYS.high },
        limit: latest,
        source: 'compost:S33',
      },
    ],
    makes: [],
  };
}

/** Said at the look whether a pile is ready, where it holds suspect stuff that nobody tested or vouched for. */
export function untestedCaution({ done, skipped }: Pick<Garden, 'done' | 'skipped'>, pile: Pile): string[] {
  const suspect = suspectsIn(pile);
  const key = suspectKey(pile.id);
  if (suspect.length === 0 || skipped[key] !== undefined || done.some((mark) => mark.key === key)) return [];
  return [
    `It holds ${suspect.join(' and ')}. Unless you know that it saw no weedkiller, grow beans in a pot of this compost before it goes on a bed.`,
  ];
}

/** What in a pile may carry weedkiller, by name. */
function suspectsIn({ ingredients }: Pile): string[] {
  const suspects = ingredients.map(({ materialId }) => feedstockById(materialId)).filter(mayHoldWeedkiller);
  return [...new Set(suspects.map(({ name }) => name.toLowerCase()))];
}
