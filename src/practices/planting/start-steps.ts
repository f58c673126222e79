/**
 * How a crop is sown, planted or set out, in steps.
 */
import { addDays, type Day } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer } from '../seasons.ts';
import { hasBedAlone, type Layout, layoutOf, partOf } from './amounts.ts';
import { hasResidue } from './bed-limits.ts';
import { expectedUp } from './emergence.ts';
import type { PlannedStart } from './planned-day.ts';
import { isSeed, type PlantingInBed } from './planting-in-bed.ts';
import { soilForPlants, soilForSowing } from './soil-steps.ts';
import { againSteps } from './sown-again.ts';

/** Soil minimum from which a spade's thermometer is worth the look: colder kinds need only soil that is fit. House default. */
const WARM_SOIL_C = 8;
/** Days after the middle year's warm day in which a cold spring's soil may lag behind it. House default. */
const LATELY_DAYS = 14;
/** Depth at which soil warmth is measured (veg:V4 measures at planting depth; the climate's soil is that at 10 cm). */
const MEASURED_AT_CM = 10;
/** Depth and distance of garlic cloves, cm: 2 to 3 inches deep, 4 to 6 apart (veg:V41, veg:V42). */
const GARLIC = { deepLowCm: 5, deepHighCm: 7.5, apartLowCm: 10, apartHighCm: 15 } as const;

/** The layout of a crop, where it has the bed or a share of it to itself. */
export function ownLayout(at: PlantingInBed): Layout | undefined {
  return hasBedAlone(at) ? layoutOf(at) : undefined;
}

/** The steps that put a planting into its bed. */
export function startSteps(input: PracticeInput, at: PlantingInBed, start: PlannedStart): string[] {
  return [
    ...planWarning(at, start),
    ...readiness(input, at, start),
    ...(at.planting.start.how === 'set-out' ? setOutSteps(at) : sowSteps(at)),
    ...(isSeed(at) ? keptMoist(input, at, start.window.preferred, start.hot) : []),
    ...(isSeed(at) ? againSteps(at, start) : []),
    ...(start.earlyKindsOnly ? [`Choose an early kind of ${at.name}: the slow ones no longer ripen.`] : []),
  ];
}

function planWarning(
  { name, planting }: PlantingInBed,
  { pulledFrom, broughtForwardFrom, window }: PlannedStart,
): string[] {
  if (broughtForwardFrom !== undefined) {
    const verb = planting.start.how === 'sow' ? 'sow' : 'set';
    return [
      `Your plan has the ${name} on ${dated(broughtForwardFrom)}, too late to be ripe before its bed is wanted: ${verb} it ` +
        `by ${dated(window.latest)}, or let it stand longer.`,
    ];
  }
  if (pulledFrom === undefined) return [];
  return [
    `Your plan has the ${name} on ${dated(pulledFrom)}, which this climate does not bear out: it is held between ` +
      `${dated(window.earliest)} and ${dated(window.latest)}.`,
  ];
}

function readiness(input: PracticeInput, at: PlantingInBed, start: PlannedStart): string[] {
  const { soilMinC } = at.crop;
  return [
    ...(hasResidue(input, at)
      ? ['Pull what is left of the cover aside along the rows; leave it lying between them.']
      : []),
    ...(soilMinC !== undefined && soilMinC >= WARM_SOIL_C && mayBeCold(input, start)
      ? [
          `Wait until the soil ${quantity(MEASURED_AT_CM, 'cm')} down holds ${quantity(soilMinC, 'tempC')} in the ` +
            'morning, whatever the calendar says.',
        ]
      : []),
  ];
}

/** Whether the soil may still be too cold on the day: warmed only lately, or not known to have warmed at all. */
function mayBeCold({ climate }: PracticeInput, { reasons, window: { preferred } }: PlannedStart): boolean {
  const known = climate.basis !== 'frost-dates';
  const warm = reasons.find(({ rule }) => rule === 'plant.soil' || rule === 'plant.soil-slow')?.saw.day;
  if (warm === undefined) return !known && !isAfterMidsummer(climate, preferred);
  return preferred <= addDays(String(warm), LATELY_DAYS);
}

function sowSteps(at: PlantingInBed): string[] {
  if (at.crop.maturityFrom === 'fall-set') return garlicSteps();
  return [...rowSteps(at), ...soilForSowing(at)];
}

function garlicSteps(): string[] {
  const { deepLowCm, deepHighCm, apartLowCm, apartHighCm } = GARLIC;
  return [
    'Break the bulbs on the day, and keep the largest sound cloves.',
    `Make a hole for each with a dibber or a finger, without digging the bed over: point up, ${quantity(deepLowCm, 'cm')} to ${quantity(deepHighCm, 'cm')} deep and ` +
      `${quantity(apartLowCm, 'cm')} to ${quantity(apartHighCm, 'cm')} apart.`,
  ];
}

function setOutSteps(at: PlantingInBed): string[] {
  return [...rowSteps(at), ...soilForPlants(at)];
}

function rowSteps(at: PlantingInBed): string[] {
  const layout = ownLayout(at);
  if (layout === undefined) return [];
  const { rows, betweenRowsCm, inRowCm } = layout;
  const apart = rows === 1 ? '' : `, ${quantity(Math.round(betweenRowsCm), 'cm')} apart`;
  const thinned = isSeed(at) ? ' after thinning' : '';
  const shared = areaOf(partOf(at)) < areaOf(at.bed);
  const place = shared ? `Its share of the bed, ${quantity(areaOf(partOf(at)), 'm2')},` : 'The bed';
  return [
    `${place} takes ${rows} ${rows === 1 ? 'row' : 'rows'}${apart}, one plant every ` +
      `${quantity(Math.round(inRowCm), 'cm')}${thinned}.`,
  ];
}

function keptMoist({ climate }: PracticeInput, { crop }: PlantingInBed, sown: Day, hot: boolean): string[] {
  const up = expectedUp(climate, crop.id, sown);
  return [
    ...(hot
      ? [
          'The soil is too warm for this seed: sow in the evening, water with cold water and shade the rows until it is up.',
        ]
      : []),
    up === undefined
      ? 'Keep the rows moist until the seed is up.'
      : `Keep the rows moist until the seed is up, about ${dated(up)}.`,
  ];
}
