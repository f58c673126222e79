/**
 * Plants raised under a roof: started so many weeks ahead, and got used to the open before they are set out.
 */
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { POTTED } from '../cautions.ts';
import type { TaskDraft, Window } from '../draft.ts';
import { START_UP_MINUTES, TRAY_MINUTES } from '../effort.ts';
import { setOutKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { draftOfPlanting, type PlantingInBed } from './planting-in-bed.ts';
import { ownLayout } from './start-steps.ts';

/** Days of hardening off before setting out (veg:V26). */
export const HARDEN_DAYS = { low: 7, high: 14 } as const;
/** Days before setting out that hardening is best begun: between the two. House default. */
const HARDEN_PREFERRED_DAYS = 10;
/** Coldest air plants are hardened in, by how tender they are (veg:V26: 45 °F for tender kinds, 50 for a cucurbit's night). */
const HARDEN_ABOVE_C = { tender: 7, cucurbit: 10, hardy: 0 } as const;
/** Plants raised for every one that is wanted: some fail, the best are chosen. House default. */
const RAISED_FOR_EACH = 1.2;

/** The key of the task that begins hardening off. */
function hardenKey({ planting }: PlantingInBed): string {
  return `harden-off/planting:${planting.id}`;
}

/** What setting out waits for. */
export function hardenedFirst(at: PlantingInBed): TaskDraft['after'] {
  return [{ key: hardenKey(at), minDays: HARDEN_DAYS.low }];
}

/** Start the plants and harden them off, for plants set out in a window. */
export function raiseDrafts(input: PracticeInput, at: PlantingInBed, out: Window): TaskDraft[] {
  const day = input.garden.pins[setOutKey(at.planting.id)] ?? out.preferred;
  const harden = hardenDraft(input, at, out, day);
  return at.planting.indoorsOn === undefined ? [indoorsDraft(input, at, out, day), harden] : [harden];
}

function indoorsDraft(input: PracticeInput, at: PlantingInBed, out: Window, day: Day): TaskDraft {
  const { planting, crop, name, bed } = at;
  const { low, high } = crop.indoorWeeks ?? { low: 0, high: 0 };
  const preferred = addDays(day, -Math.round((7 * (low + high)) / 2));
  const layout = ownLayout(at);
  const wanted = layout && Math.ceil(layout.plants * RAISED_FOR_EACH);
  const limit = addDays(day, -7 * low);
  return {
    ...draftOfPlanting(input, at),
    key: `start-indoors/planting:${planting.id}`,
    kind: 'start-indoors',
    job: { id: 'start-indoors', title: 'Start indoors' },
    weight: 'work',
    title: `Start ${name} indoors for ${bed.name}`,
    steps: [
      'Fill clean pots or trays with moist seed compost, sow, label, and keep them warm and light.',
      ...(wanted === undefined ? [] : [`Sow enough for ${wanted} plants: the best of them go into ${bed.name}.`]),
      `They are set out about ${dated(day)}.`,
    ],
    cautions: [POTTED],
    supplies: [{ what: `${name} seed` }, { what: 'seed compost and pots' }],
    window: { earliest: addDays(day, -7 * high), preferred, latest: limit },
    ifMissed: 'replace',
    missedNote: `Too late to raise your own: buy ${name} plants to set out by ${dated(out.latest)}.`,
    effortMinutes: TRAY_MINUTES,
    onceMinutes: START_UP_MINUTES,
    makes: [{ makes: 'planting-raised', plantingId: planting.id }],
    reasons: [
      {
        rule: 'raise.indoors',
        saw: { crop: name, weeksLow: low, weeksHigh: high, day },
        limit,
        source: originOf(crop, 'indoorWeeks'),
      },
    ],
  };
}

/** The days of hardening open for a planting set out on a day: from two weeks ahead to the last that leaves one. */
function hardenDraft(input: PracticeInput, at: PlantingInBed, out: Window, day: Day): TaskDraft {
  const { name, bed, crop } = at;
  const limit = addDays(day, -HARDEN_DAYS.low);
  return {
    ...draftOfPlanting(input, at),
    key: hardenKey(at),
    kind: 'harden-off',
    job: { id: 'harden-off', title: 'Begin hardening off' },
    weight: 'work',
    title: `Begin hardening off the ${name} for ${bed.name}`,
    steps: [
      'Days one to three: a few hours outside in shade, out of the wind; in again at night.',
      'Then a little sun, more each day, and less water, but never let them wilt.',
      `The last nights outside, as long as it stays above ${quantity(hardenAbove(at), 'tempC')}; in with them when it does not.`,
      ...(crop.id === 'cauliflower'
        ? ['Do not starve or chill them to harden them: checked cauliflower makes button heads.']
        : []),
      `They go into ${bed.name} about ${dated(day)}.`,
    ],
    window: {
      earliest: addDays(day, -HARDEN_DAYS.high),
      preferred: addDays(day, -HARDEN_PREFERRED_DAYS),
      latest: limit,
    },
    ifMissed: 'drop',
    missedNote:
      'Plants set out straight from indoors are checked by sun and wind, and weeks of growth are lost. Give them a week of it first if their window ' +
      `(until ${dated(out.latest)}) allows, else shade them with fabric for their first days.`,
    effortMinutes: TRAY_MINUTES,
    onceMinutes: START_UP_MINUTES,
    needs: ['above-freezing'],
    after: [{ key: `start-indoors/planting:${at.planting.id}`, minDays: 0 }],
    reasons: [
      {
        rule: 'raise.harden',
        saw: { crop: name, daysLow: HARDEN_DAYS.low, daysHigh: HARDEN_DAYS.high, day },
        limit,
        source: 'veg:V26',
      },
    ],
  };
}

function hardenAbove({ crop }: PlantingInBed): number {
  if (crop.rotationGroup === 'cucurbit') return HARDEN_ABOVE_C.cucurbit;
  return crop.frostClass === 'hardy' || crop.frostClass === 'half-hardy' ? HARDEN_ABOVE_C.hardy : HARDEN_ABOVE_C.tender;
}
