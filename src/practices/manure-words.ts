/**
 * Raw manure and the harvest, in words.
 */

import type { Garden } from '../garden/garden.ts';
import { clearOfSoilById } from '../handbook/soil-contact.ts';
import { capital } from '../measures/capital.ts';
import { addDays, type Day, daysBetween } from '../measures/days.ts';
import { dated, quantity } from '../measures/quantity.ts';
import { HOT_RECORD } from './composting/hot-record.ts';
import { MANURE_DAYS, type RawManure } from './manure.ts';
import type { ManureClash, ManureSpread } from './manure-spreads.ts';

/** What the wait is not, in short. */
export const LOCAL_RULES = 'It is a published wait and no promise that food is safe; local rules come first.';

/** Said of a layer whose days are past: between the rows, where others may still go, is no place for it. */
export const NOT_LATE =
  'Do not spread it late: it counts as raw manure, and each day puts the harvests off by a day. Keep it covered until the bed is clear in autumn, or give the bed compost without manure.';

/** What to mind where raw manure is spread, the same for every bed. */
export const SPREADING_CAUTIONS: readonly string[] = [
  'What holds manure and has no logged hot record counts as raw manure: wear gloves, wash your hands, and keep it off everything that is eaten.',
  `Raw manure waits ${MANURE_DAYS.touching} days before a harvest that touches soil or that rain splashes, ${MANURE_DAYS.clear} where it is held well clear (sweet corn, tomatoes on stakes). US rules publish that for manure worked into the soil. It is no promise that food is safe, and a hot record is a label and no licence. Local rules come first.`,
];

/** What lies or is to lie on a bed: "compost made with horse manure and no logged hot record". */
function rawWords({ raw: { manure, record } }: ManureSpread): string {
  if (record === undefined) return `raw manure (${manure})`;
  return `compost made with ${manure} and no logged hot record${soFar(record)}`;
}

/** Said while heat can still make a record of it. */
function soFar(record: RawManure['record']): string {
  return record?.isOpen && record.unfit === undefined ? ' so far' : '';
}

function unfitWords(record: RawManure['record']): string {
  return record?.unfit === undefined ? '' : `No heat makes a record of it: ${record.unfit}. `;
}

/** What a pile's compost counts as, and what that asks. */
export function pileWords({ manure, record }: RawManure): string {
  return (
    `It holds ${manure} and has no logged hot record${soFar(record)}: its compost counts as raw manure, ` +
    `${MANURE_DAYS.touching} days before a harvest that touches soil, ${MANURE_DAYS.clear} before any other. ${unfitWords(record)}${LOCAL_RULES}`
  );
}

/** A spreading in a sentence of its own. */
export function spreadWords(garden: Pick<Garden, 'beds'>, spread: ManureSpread): string {
  const bed = garden.beds.find(({ id }) => id === spread.bedId)?.name ?? spread.bedId;
  const how = spread.planned === undefined ? 'was spread' : 'is to be spread';
  return `${capital(rawWords(spread))} ${how} on ${bed} ${spread.planned ? 'by' : 'on'} ${dated(spread.on)}.`;
}

/** How a crop must be held for the shorter wait, where it does not hold itself. */
function heldWords(cropId: string): string {
  const kept = clearOfSoilById(cropId)?.kept;
  return kept === undefined ? '' : ` (${kept}; on the ground ${MANURE_DAYS.touching})`;
}

/** The days a bed is closed to harvests after a spreading. */
export function closedWords(bedName: string, on: Day): string {
  const [touching, clear] = [addDays(on, MANURE_DAYS.touching), addDays(on, MANURE_DAYS.clear)];
  return (
    `${bedName}: spread on ${dated(on)}, its last day, nothing that touches soil is harvested there before ${dated(touching)}, ` +
    `and nothing else before ${dated(clear)}; each day sooner brings both a day forward.`
  );
}

/** The crop of a clash with its two dates. */
export function clashWords({ span, spread, ripe, permitted, days }: ManureClash): string {
  const { planting, crop, from } = span;
  const name = crop.name.toLowerCase();
  const sown = planting.start.happened ? `there since ${dated(from)}` : `planned for ${dated(from)}`;
  return `the ${name} ${sown} may be ripe from ${dated(ripe)}; the ${days} days${heldWords(crop.id)} from ${dated(spread.on)} end on ${dated(permitted)}.`;
}

/** The last day for a layer that a harvest's wait can be kept after. */
export function keptWords({ span: { crop }, ripe, days, spreadBy }: ManureClash): string {
  const name = crop.name.toLowerCase();
  return `on the bed by ${dated(spreadBy)}. The ${name} may be ripe from ${dated(ripe)}, ${days} days later${heldWords(crop.id)}.`;
}

/** What can be done about a layer that comes too close before a harvest. */
export function waysOutOfLayer({ spread, permitted }: ManureClash, otherBeds: readonly string[]): string {
  const { days, turns, fromC } = HOT_RECORD;
  return oneOf([
    otherBeds.length === 0 ? 'give the bed compost without manure' : `spread it on ${otherBeds.join(' or ')} instead`,
    ...(spread.raw.record?.isOpen && spread.raw.record.unfit === undefined
      ? [`heat the pile first (${days} logged days at ${quantity(fromC, 'tempC')}, ${turns} turns)`]
      : []),
    `grow there what is ripe after ${dated(permitted)}`,
  ]);
}

/**
 * What can be done about a crop that would be harvested too soon.
 *
 * @param goesIn the days it may go in, where it has not yet
 */
export function waysOutOfCrop(clash: ManureClash, goesIn?: { latest: Day }): string {
  const later = addDays(clash.span.from, daysBetween(clash.ripe, clash.permitted));
  return oneOf([
    'leave it unharvested until then',
    ...(goesIn !== undefined && later <= goesIn.latest ? [`put it in from ${dated(later)} on`] : []),
    ...(goesIn === undefined ? [] : ['grow it in another bed']),
    ...(clash.spread.planned === undefined ? [] : ['give the bed compost without manure']),
  ]);
}

/** The first day a crop may be harvested, and what that rests on. */
export function permittedWords({ span: { crop }, spread, ripe, permitted, days }: ManureClash): string {
  const name = crop.name.toLowerCase();
  return (
    `Harvest no ${name} there before ${dated(permitted)}, ${days} days${heldWords(crop.id)} after ${dated(spread.on)}: the first may be ripe from ` +
    `${dated(ripe)}.`
  );
}

function oneOf(ways: readonly string[]): string {
  const last = ways.at(-1) ?? '';
  const all = ways.length < 2 ? last : `${ways.slice(0, -1).join(', ')} or ${last}`;
  return `${capital(all)}.`;
}
