/**
 * One order a season for all that is sown or planted in it, in time for the first of it.
 */

import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { ORDER_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { CHIT_DAYS, DELIVERY_DAYS, doubtfulOf, type SeedNeed, wantedOf } from './seed-needs.ts';
import { seedTestKey, TEST_DAYS } from './seed-test-draft.ts';

/** Days before the first need that the order is best sent, and from which it can be. House default. */
const ORDER_DAYS = { first: 63, usual: 35 } as const;
/** Crops a title names before it counts the rest. House default. */
const NAMED_IN_TITLE = 3;

/** The days a season's order may be sent in; nothing where the drawer holds all that is wanted. */
export function orderWindow({ garden }: PracticeInput, needs: readonly SeedNeed[]): Window | undefined {
  const [first] = wantedOf(needs);
  if (first === undefined) return undefined;
  const latest = addDays(first.day, -DELIVERY_DAYS);
  const earliest = latestOf(addDays(first.day, -ORDER_DAYS.first), garden.startedOn);
  return { earliest, preferred: latestOf(addDays(first.day, -ORDER_DAYS.usual), earliest), latest };
}

/** The order of a season, after the test of its doubtful packets where there is one. */
export function seedOrderDraft(
  input: PracticeInput,
  season: number,
  needs: readonly SeedNeed[],
  { window, tested }: { window: Window; tested: boolean },
): TaskDraft {
  const { garden, climate } = input;
  const wanted = wantedOf(needs);
  return {
    key: `seed-order/garden/${season}`,
    practice: 'planting',
    kind: 'order-seed',
    job: { id: 'order-seed', title: 'Order seed' },
    subject: gardenSubject(garden),
    weight: 'deadline',
    title: `Order seed: ${inTitle(wanted)}`,
    steps: orderSteps(needs, wanted),
    cautions: ['Seed that is dyed has been treated: ask for untreated, and never eat or feed what is left over.'],
    supplies: [],
    window,
    ifMissed: 'still do',
    missedNote: 'Buy what is left nearby, or plants in place of seed; the first sowings may be late.',
    effortMinutes: ORDER_MINUTES,
    needs: [],
    after: tested ? [{ key: seedTestKey(season), minDays: TEST_DAYS }] : [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      leadReason(wanted, window.latest),
      ...wanted.flatMap(oldReason),
      ...potatoReason(wanted),
      ...unwritten(input),
    ],
    makes: [],
  };
}

function inTitle(wanted: readonly SeedNeed[]): string {
  const names = wanted.slice(0, NAMED_IN_TITLE).map(({ what }) => what);
  const more = wanted.length - names.length;
  return more > 0 ? `${names.join(', ')} and ${more} more` : names.join(', ');
}

function orderSteps(needs: readonly SeedNeed[], wanted: readonly SeedNeed[]): string[] {
  const good = needs.filter(({ packet }) => packet?.state === 'good');
  const doubtful = doubtfulOf(needs);
  return [
    `Wanted, with the day each is first needed: ${wanted.map(line).join('; ')}.`,
    ...potatoStep(wanted),
    ...(doubtful.length === 0
      ? []
      : [`If their test was poor, these too: ${doubtful.map(({ what }) => what).join(', ')}.`]),
    ...(good.length === 0 ? [] : [`In the drawer and still good: ${good.map(packetWords).join(', ')}.`]),
    'Look through the drawer before you send it, and choose kinds that ripen in your season.',
  ];
}

function line({ what, day, use }: SeedNeed): string {
  return `${what} ${dated(day)}${use === 'indoors' ? ' indoors' : ''}`;
}

function packetWords({ what, packet }: SeedNeed): string {
  return `${what} (packed for ${packet?.packedYear})`;
}

function potatoStep(wanted: readonly SeedNeed[]): string[] {
  const potatoes = wanted.find(({ use }) => use === 'chitting');
  if (potatoes === undefined) return [];
  return [
    `Seed potatoes: certified ones, to arrive by ${dated(potatoes.day)} and not in hard frost. They stand in a light cool ` +
      `place, eyes up, for ${CHIT_DAYS} days before they are planted.`,
  ];
}

function leadReason(wanted: readonly SeedNeed[], latest: Day): Reason {
  const [first] = wanted;
  return {
    rule: 'seed.lead',
    saw: { crop: first?.what ?? '', day: first?.day ?? latest, use: first?.use ?? 'outdoors', days: DELIVERY_DAYS },
    limit: latest,
    source: 'house default',
  };
}

function oldReason({ what, packet }: SeedNeed): Reason[] {
  if (packet === undefined) return [];
  const { packedYear, ageYears, life } = packet;
  return [
    { rule: 'seed.old', saw: { crop: what, packedYear, ageYears }, limit: life.years, source: originOf(life, 'years') },
  ];
}

function potatoReason(wanted: readonly SeedNeed[]): Reason[] {
  const potatoes = wanted.find(({ use }) => use === 'chitting');
  if (potatoes === undefined) return [];
  const saw = { day: potatoes.day, days: CHIT_DAYS };
  return [{ rule: 'seed.chitting', saw, source: 'common practice' }];
}

/** Said where the garden file lists no packet of a crop at all: then nothing is taken to be there. */
function unwritten({ garden }: PracticeInput): Reason[] {
  return garden.seeds.some(({ plant }) => plant.kind === 'crop')
    ? []
    : [{ rule: 'seed.unwritten', saw: {}, source: "the garden's own plan" }];
}
