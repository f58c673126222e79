/**
 * Two crops in one bed at once: refused in a plan, told with both and their days.
 */
import type { Climate } from '../../climate/climate.ts';
import { fullDay } from '../../digest/words.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { writtenAt } from '../../garden/successions.ts';
import type { Day } from '../../measures/days.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import { areaOf, type CropSpan } from '../../practices/bed-timeline.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { type Crowd, crowdsIn, standsUntil } from '../../practices/side-by-side.ts';

/**
 * Refuses a garden file whose plan has two crops in one bed at once, as {@link crowdedProblems} finds them.
 *
 * @throws {InputRefused} with every such pair
 */
export function refuseCrowded(file: GardenFile, garden: Garden, climate: Climate, before?: Garden): void {
  const problems = crowdedProblems(file, garden, climate, before);
  if (problems.length > 0) throw new InputRefused('The garden file cannot be used.', problems);
}

/**
 * Each two crops that a plan has in one bed at once. What went in already is history, and only doubted; so is a crop that
 * comes too soon after one that stood longer than it was meant to.
 *
 * @param garden the garden as the file, and what was reported, would have it
 * @param before the garden as it is, where what stands in it already is not told once more
 */
export function crowdedProblems(file: GardenFile, garden: Garden, climate: Climate, before?: Garden): Problem[] {
  const known = new Set(
    (before?.beds ?? []).flatMap((bed) => before && crowdsIn(before, bed, climate, isTold).map(nameOf)),
  );
  return garden.beds.flatMap((bed) =>
    crowdsIn(garden, bed, climate, isTold)
      .filter((crowd) => !crowd.next.planting.start.happened && !known.has(nameOf(crowd)))
      .flatMap((crowd) => fileProblems(file, garden, bed, crowd)),
  );
}

/** What tells one crowd from another: who stands where, from which day. */
function nameOf({ next, standing }: Crowd): string {
  return JSON.stringify([next, ...standing].map(({ planting, from }) => [planting.id, planting.bedId, from]));
}

/** Whether the time of a crop is as somebody told it, and not pushed on by work that was done late. */
function isTold({ end, planting }: CropSpan): boolean {
  return end === 'stated' || end === 'permanent' || (end !== 'happened' && !planting.start.happened);
}

function fileProblems(file: GardenFile, garden: Garden, bed: Bed, crowd: Crowd): Problem[] {
  const at = [crowd.next, ...crowd.standing]
    .map(({ planting }) => file.plantings.findIndex(({ id }) => id === planting.id))
    .find((index) => index >= 0);
  if (at === undefined) return [];
  const { where, row } = writtenAt(file, at);
  const key = row?.again !== undefined ? 'again' : row?.sow === undefined ? 'setOut' : 'sow';
  const mend =
    'Give another bed or day. Crops side by side, or one between the rows of the other, each want their share of the bed ' +
    `as areaM2, such as areaM2: ${hundredths(areaOf(bed) / 2)}; together no more than ${hundredths(areaOf(bed))} m².`;
  return [{ where: `${where}.${key}`, what: crowdTold(garden, bed, crowd), mend }];
}

/** What stands in a crop's way, with the days of both and the room there is. */
export function crowdTold({ place: { units } }: Garden, bed: Bed, { next, standing, wantedM2 }: Crowd): string {
  const dated = (day: Day): string => fullDay(day, units);
  const area = (value: number): string => formatQuantity({ value, unit: 'm2' }, units);
  const others = standing.map((span) => {
    const until = standsUntil(span);
    const name = span.crop.name.toLowerCase();
    if (until === undefined) return `${name} stands there from ${dated(span.from)} for good`;
    const told = span.end === 'stated' || span.end === 'happened';
    return `${name} stands there from ${dated(span.from)} until ${told ? '' : 'at least '}${dated(until)}`;
  });
  const shared = [next, ...standing].some(({ planting }) => planting.areaM2 !== undefined);
  const room = shared
    ? `Together they want ${area(wantedM2)}, and the bed has ${area(areaOf(bed))}.`
    : 'Each has the whole bed.';
  const how = startWord(next.planting.cropId, next.planting.start.how);
  return `${next.crop.name} is ${how} in ${bed.name} on ${dated(next.from)}, and ${others.join(', and ')}. ${room}`;
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
