/**
 * A line of the record in words.
 */
import { capital } from '../../measures/capital.ts';
import { daysBetween } from '../../measures/days.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { fullDay } from '../words.ts';
import type { Doing, RecordRow } from './row.ts';

/** What each line says of its crop, cover or material; of the others what was done. */
const SAYS: Readonly<Record<Doing, (what: string) => string>> = {
  sown: (what) => `${what} sown`,
  planted: (what) => `${what} planted`,
  'started-indoors': (what) => `${what} started indoors`,
  'set-out': (what) => `${what} set out`,
  'harvest-ended': (what) => `${what}: last harvest`,
  cleared: (what) => `${what} cleared`,
  'cover-sown': (what) => `${what} sown`,
  'cover-sown-again': (what) => `${what} sown again in thin places`,
  'seed-sown': (what) => `${what} seed sown`,
  'cover-looked-at': (what) => `${what} looked at`,
  'cover-flowering': (what) => what,
  'cover-cut': (what) => `${what} cut`,
  'cover-dead': (what) => `${what} seen dead`,
  'regrowth-looked-for': (what) => `${what} looked at after its cut`,
  'regrowth-seen': (what) => `${what} had grown again`,
  'regrowth-cut': (what) => `${what} cut again`,
  'sheet-laid': (what) => `${what}: sheet laid`,
  'sheet-lifted': (what) => `${what}: sheet lifted`,
  'compost-spread': (what) => `${what} spread`,
  'material-spread': (what) => `${what} laid on`,
  fed: (what) => `${what} strewn`,
  mulched: () => 'Mulched',
  'bed-filled': () => 'Filled with soil',
  'soil-sampled': () => 'Soil sample taken',
  'soil-squeezed': (what) => `${what} squeezed`,
  'disease-found': (what) => `${what} found`,
  'pile-built': () => 'Pile built',
  'pile-read': () => 'Looked at',
  'pile-turned': () => 'Turned',
  'pile-curing': () => 'Moved to cure',
  'pile-not-ready': () => 'Not ready yet',
  'pile-ready': () => 'Ready',
  'compost-ordered': () => 'Compost ordered',
  'compost-delivered': () => 'Compost delivered',
  'compost-tested': () => 'Compost tested with beans',
  ordered: () => 'Ordered',
  'seed-ordered': (what) => `${what} seed ordered`,
  away: () => 'Away',
  'cold-night': () => 'Cold night measured',
  done: () => 'Done',
  skipped: () => 'Skipped',
  'put-off': () => 'Not yet',
};

/** How a task is told by its title: as done, unless it was answered otherwise. */
const SETTLED: Readonly<Partial<Record<Doing, string>>> = { skipped: 'Skipped', 'put-off': 'Not yet' };

/** Lines that say no more than that it was done: the task's own title tells what. */
const BY_TITLE: ReadonlySet<Doing> = new Set(['mulched', 'ordered', 'done', 'skipped', 'put-off']);

/** What a line says, with its amounts: "Compost spread, 38 L, from Left bay". Days are written with their year. */
export function rowInWords(row: RecordRow, units: UnitSystem, pileName: (id: string) => string): string {
  const { doing, what = '', litres, grams, areaM2, tempC, to, piles, title, note } = row;
  const says = SAYS[doing](what === '' ? 'It' : what);
  const byTitle = title !== undefined && (BY_TITLE.has(doing) || (doing === 'fed' && grams === undefined));
  const read = (text: string): string => readableIn(units, text, '');
  return [
    byTitle ? `${SETTLED[doing] ?? 'Done'}: ${read(title)}` : capital(says),
    ...(areaM2 === undefined ? [] : [`on ${formatQuantity({ value: areaM2, unit: 'm2' }, units)}`]),
    ...(litres === undefined ? [] : [formatQuantity({ value: litres, unit: 'L' }, units)]),
    ...(grams === undefined ? [] : [formatQuantity({ value: grams, unit: 'g' }, units)]),
    ...(tempC === undefined ? [] : [formatQuantity({ value: tempC, unit: 'tempC' }, units)]),
    ...(to === undefined ? [] : [`until ${fullDay(to, units)}`]),
    ...(piles === undefined ? [] : [`from ${piles.split(' ').map(pileName).join(' and ')}`]),
    ...(note === undefined ? [] : [read(note)]),
  ].join(', ');
}

/** How a day lay to the plan: "planned for April 17, 2027, 2 days later". Nothing where no planned day is known. */
export function plannedInWords({ on, plannedFor, lastDay, doing }: RecordRow, units: UnitSystem): string | undefined {
  if (plannedFor === undefined) {
    if (lastDay === undefined || on <= lastDay) return undefined;
    return `its last day was ${fullDay(lastDay, units)}`;
  }
  if (doing === 'skipped') return `was planned for ${fullDay(plannedFor, units)}`;
  const days = daysBetween(plannedFor, on);
  if (days === 0) return 'on the day planned';
  const count = Math.abs(days) === 1 ? '1 day' : `${Math.abs(days)} days`;
  return `planned for ${fullDay(plannedFor, units)}, ${count} ${days > 0 ? 'later' : 'earlier'}`;
}

/** Who told it and when, where that says something: a member's name, a later day. Nothing for the garden file's lines. */
export function tellerInWords(
  { by, on, toldOn, origin }: RecordRow,
  units: UnitSystem,
  members: ReadonlySet<string>,
): string | undefined {
  if (origin === 'garden-file') return undefined;
  const who = by !== undefined && members.has(by) ? [`by ${by}`] : [];
  const later = toldOn === undefined || toldOn === on ? [] : [`told ${fullDay(toldOn, units)}`];
  const words = [...who, ...later];
  return words.length === 0 ? undefined : words.join(', ');
}
