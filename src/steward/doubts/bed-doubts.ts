/**
 * What a garden file says of one bed that does not go together: crops, covers and mulches in each other's time. Sowing under
 * a crop and planting between rows are practices, so that these are doubts and no refusals.
 */

import type { Climate } from '../../climate/climate.ts';
import type { Garden, Stand } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { writtenAt } from '../../garden/successions.ts';
import { capital } from '../../measures/capital.ts';
import { addDays, daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type CropSpan, cropSpans } from '../../practices/bed-timeline.ts';
import { inTheWay } from '../../practices/cover-cropping/fit/in-the-way.ts';
import { type StandSpan, standSpans } from '../../practices/cover-cropping/fit/stand-spans.ts';
import { coverName, coverParts } from '../../practices/covers.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { crowdsIn } from '../../practices/side-by-side.ts';

/** Days within which two crops of a bed go in together, side by side. House default: two weeks. */
const TOGETHER_DAYS = 14;

/** Every such doubt, in the order of the file. Texts may hold marked days. */
export function bedDoubts(file: GardenFile, input: PracticeInput): Problem[] {
  return [
    ...file.plantings.flatMap((row, i) => plantingDoubts(input, row.id, writtenAt(file, i).where)),
    ...file.coverStands.flatMap((row, i) => standDoubts(input, row.id, `coverStands[${i}].sow`)),
    ...file.mulches.flatMap((row, i) => mulchDoubts(input, row, `mulches[${i}]`)),
  ];
}

/** A crop that goes in before the stated last harvest of one that went in well before it. */
function plantingDoubts({ garden, climate }: PracticeInput, id: string | undefined, where: string): Problem[] {
  const bedId = garden.plantings.find((planting) => planting.id === id)?.bedId;
  if (bedId === undefined) return [];
  const spans = cropSpans(garden, bedId, climate);
  const next = spans.find(({ planting }) => planting.id === id);
  const before = next && spans.find((span) => isInItsTime(span, next));
  if (next === undefined || before?.to === undefined || !isCrowded(garden, climate, next)) return [];
  const { crop, from, planting } = next;
  const how = startWord(planting.cropId, planting.start.how);
  return [
    {
      where: `${where}.${planting.start.how === 'sow' ? 'sow' : 'setOut'}`,
      what:
        `${crop.name} is ${how} in ${bedName(garden, bedId)} on ${dated(from)}, before the last harvest of the ` +
        `${before.crop.name.toLowerCase()} there on ${dated(before.to)}.`,
      mend: 'Perhaps another bed or day was meant; if it goes in between the rows, leave it as it is.',
    },
  ];
}

/** Whether the crops of its bed leave it no room: shares that fit together are meant so. */
function isCrowded(garden: Garden, climate: Climate, { planting }: CropSpan): boolean {
  const bed = garden.beds.find(({ id }) => id === planting.bedId);
  return bed !== undefined && crowdsIn(garden, bed, climate).some(({ next }) => next.planting.id === planting.id);
}

function isInItsTime({ planting, from, to, end }: CropSpan, next: CropSpan): boolean {
  const isTold = end === 'stated' || end === 'happened';
  const isOther = planting.id !== next.planting.id;
  return isTold && isOther && to !== undefined && addDays(from, TOGETHER_DAYS) < next.from && next.from < to;
}

function standDoubts(input: PracticeInput, id: string | undefined, where: string): Problem[] {
  const stand = input.garden.stands.find((each) => each.id === id);
  return stand === undefined ? [] : [...inCropDoubts(input, stand, where), ...overlapDoubts(input, stand, where)];
}

/** A cover sown while a crop grows. Where both are past, an end that is only reckoned says nothing. */
function inCropDoubts({ garden, climate }: PracticeInput, { bedId, coverId, sow }: Stand, where: string): Problem[] {
  const growing = cropSpans(garden, bedId, climate).find(
    ({ from, to, end }) =>
      from < sow.day &&
      (to === undefined || sow.day < to) &&
      !(sow.happened && (end === 'days to maturity' || end === 'first freeze')),
  );
  if (growing === undefined) return [];
  return [
    {
      where,
      what:
        `${capital(coverName(coverId))} ${sow.happened ? 'was' : 'is to be'} sown in ${bedName(garden, bedId)} on ` +
        `${dated(sow.day)}, and ${growsFrom(growing)}.`,
      mend: sow.happened
        ? 'Perhaps another bed or day was meant; if it was sown under the crop, leave it as it is.'
        : 'Perhaps another bed or day was meant; as it stands, the plan sows it once the crop is over.',
    },
  ];
}

/** A cover that is sown while another stands. Clover strewn on frozen ground goes in among what stands. */
function overlapDoubts(input: PracticeInput, stand: Stand, where: string): Problem[] {
  if (coverParts(stand.coverId).every(({ cover }) => cover.springSow?.onFrozenSoil === true)) return [];
  const { garden } = input;
  const others = garden.stands.filter(
    (other) => isSooner(other, stand) && inTheWay(input, other, stand) && other.bedId === stand.bedId,
  );
  return others.map((other): Problem => {
    const ends = aloneSpan(input, other)?.ends;
    const until = ends === undefined ? '' : ` until about ${dated(ends)}`;
    return {
      where,
      what:
        `${capital(coverName(stand.coverId))} is dated ${dated(stand.sow.day)} in ${bedName(garden, stand.bedId)}, where ` +
        `the ${coverName(other.coverId)} of ${dated(other.sow.day)} stands${until}.`,
      mend: 'Perhaps another bed or day was meant, or the first was cut sooner: then give the day of its cut.',
    };
  });
}

function isSooner(other: Stand, stand: Stand): boolean {
  if (other.sow.day === stand.sow.day) return other.id < stand.id;
  return other.sow.day < stand.sow.day;
}

function aloneSpan({ garden, ...input }: PracticeInput, stand: Stand): StandSpan | undefined {
  return standSpans({ ...input, garden: { ...garden, stands: [stand] } }, stand.bedId)[0];
}

/** A mulch over a crop or a cover. */
function mulchDoubts(input: PracticeInput, row: GardenFile['mulches'][number], where: string): Problem[] {
  const { garden, climate } = input;
  const { bed: bedId, from, to, mulch } = row;
  const last = to ?? addDays(from, 1);
  const what = `A mulch of ${mulch} is to lie on ${bedName(garden, bedId)} from ${dated(from)}${to ? ` to ${dated(to)}` : ''}`;
  const mend = 'Perhaps other days were meant: a mulch in this list lies in place of a cover, between two crops.';
  const crops = cropSpans(garden, bedId, climate)
    .filter((span) => span.from < last && (span.to === undefined || from < span.to))
    .map((span): Problem => ({ where, what: `${what}, and ${growsFrom(span)}.`, mend }));
  const stands = garden.stands
    .filter((stand) => stand.bedId === bedId)
    .flatMap((stand) => aloneSpan(input, stand) ?? [])
    .filter(({ stand, ends }) => stand.sow.day < last && (ends === undefined || daysBetween(from, ends) > 0))
    .map(({ stand, ends }): Problem => {
      const until = ends === undefined ? '' : ` until about ${dated(ends)}`;
      const stands = `${coverName(stand.coverId)} stands there from ${dated(stand.sow.day)}${until}`;
      return { where, what: `${what}, and ${stands}.`, mend };
    });
  return [...crops, ...stands];
}

function growsFrom({ crop, from, to }: CropSpan): string {
  const until = to === undefined ? 'and never leaves the bed' : `until about ${dated(to)}`;
  return `${crop.name.toLowerCase()} grows there from ${dated(from)} ${until}`;
}

function bedName({ beds }: Garden, bedId: string): string {
  return beds.find(({ id }) => id === bedId)?.name ?? bedId;
}
