/**
 * Ordering the mix that a new bed is filled with.
 */
import { addDays, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { LITRES_PER_CUBIC_YARD } from '../../measures/units.ts';
import { barrowLoads } from '../barrow.ts';
import type { BedFill } from '../bed-fill.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { BedFilling } from '../fill-window.ts';
import { bedMixKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';

/** Days from an order to the filling: 14 for delivery (house default) and 21 in which beans grow in it (from memory). */
export const MIX_LEAD_DAYS = 35;
/** Days ahead of that from which it is asked for, and those in hand. House default. */
const ORDER_DAYS = { first: 21, usual: 7 } as const;

/** The order; nothing where topsoil and the household's own compost fill the bed. */
export function mixOrderDraft(
  { garden, climate }: PracticeInput,
  { bed, window }: BedFilling,
  fill: BedFill,
): TaskDraft | undefined {
  const { mixL, mixKg } = fill;
  if (mixL <= 0) return undefined;
  const last = latestOf(garden.startedOn, addDays(window.preferred, -MIX_LEAD_DAYS));
  const from = (days: number): string => latestOf(garden.startedOn, addDays(last, -days));
  return {
    key: bedMixKey(bed.id),
    practice: 'new-beds',
    kind: 'order-bed-mix',
    job: { id: 'order-bed-mix', title: 'Order bed mix' },
    subject: bedSubject(bed),
    weight: 'deadline',
    title: `Order the mix for ${bed.name}`,
    steps: [
      `Order ${quantity(mixL, 'L')} of bed mix or screened topsoil, to come by ${dated(addDays(window.preferred, -MIX_LEAD_DAYS + DELIVERY_DAYS))}: ${barrowLoads(mixL)}, about ${quantity(mixKg, 'kg')}. Many sellers bring no less than ${quantity(LITRES_PER_CUBIC_YARD, 'L')}.`,
      ...mixQuestions(fill),
      'When it comes, cover it against rain, and sow a few beans in pots of it that same day: it fills no bed until they have grown well for three weeks.',
    ],
    cautions: [
      'Mix with compost, manure or hay in it can carry lasting weedkiller, which ruins beans, peas and tomatoes for years.',
    ],
    supplies: [{ what: 'bed mix to order', amount: { value: mixL, unit: 'L' }, also: barrowLoads(mixL) }],
    window: { earliest: from(ORDER_DAYS.first), preferred: from(ORDER_DAYS.usual), latest: last },
    ifMissed: 'still do',
    missedNote: 'Bags can be had near the day, at a price; grow beans in them all the same, if only beside the bed.',
    effortMinutes: ORDER_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      {
        rule: 'bed-mix.lead',
        saw: { fill: window.preferred, days: MIX_LEAD_DAYS },
        limit: last,
        source: 'compost:S33',
      },
    ],
    makes: [],
  };
}

/** Days from an order until the mix is there. House default. */
const DELIVERY_DAYS = 14;

/** What to ask whoever sells the mix. */
export function mixQuestions({ compostMostL }: Pick<BedFill, 'compostMostL'>): string[] {
  return [
    compostMostL === 0
      ? 'Ask what it is made of, and for one with little compost or manure in it: the soil is very rich in phosphorus already.'
      : `Ask what it is made of. No bed is filled with compost alone: of this one no more than ${quantity(compostMostL, 'L')} may be compost, what the mix brings counted in. If the mix is a third compost already, leave yours to the other beds.`,
    'Ask after manure and whose, hay or straw in it, weedkiller, a test for salts, and jumping worms. Go and look before you pay.',
  ];
}
