/**
 * What a garden file says that can be read but is hardly meant: told beside it, and never a refusal.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonIndex, seasonOf } from '../../climate/season.ts';
import type { Garden, Planting } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { writtenAt } from '../../garden/successions.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { type CropSpan, cropSpans, cropYear, firstRipe, isPermanent } from '../../practices/bed-timeline.ts';
import { bedFilling } from '../../practices/fill-window.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import type { GardenView } from '../doings/steward.ts';
import { planningInput } from '../planning/planner.ts';
import { bedDoubts } from './bed-doubts.ts';
import { manureDoubts } from './manure-doubts.ts';
import { frozenDoubts, seasonDoubts } from './season-doubts.ts';
import { widthDoubts, wishDoubts } from './size-doubts.ts';
import { successionDoubts } from './succession-doubts.ts';
import { unseenDoubts } from './unseen-work.ts';

/** Days to either side of midwinter in which a tender crop outdoors is hardly meant. House default: six weeks. */
const MIDWINTER_DAYS = 42;
/** Days of a season as it is counted: 29 February has the index of the 28th. */
const SEASON_DAYS = 365;

type Looked = Pick<GardenView, 'garden' | 'climate'>;

/** Everything in a file that is hardly meant, in the order of the file. Texts may hold marked amounts and days. */
export function doubtsOf(file: GardenFile, view: GardenView): Problem[] {
  const { garden, climate, plan } = view;
  const looked = { garden, climate };
  return [
    ...widthDoubts(file),
    ...file.plantings.flatMap((row, i) => plantingDoubts(looked, row, writtenAt(file, i))),
    ...file.piles.flatMap((pile, i) => fullDoubts(garden, pile, `piles[${i}]`)),
    ...file.beds.flatMap((row, i) => tooSoonDoubts(planningInput(view), row.id, `beds[${i}].plannedFor`)),
    ...successionDoubts(file, planningInput(view)),
    ...wishDoubts(file),
    ...futureDoubts(file, plan.today),
    ...bedDoubts(file, planningInput(view)),
    ...manureDoubts(file, planningInput(view)),
    ...unseenDoubts(garden),
  ];
}

function plantingDoubts(
  looked: Looked,
  row: GardenFile['plantings'][number],
  { where, row: written }: ReturnType<typeof writtenAt>,
): Problem[] {
  const planting = looked.garden.plantings.find(({ id }) => id === row.id);
  if (planting === undefined) return [];
  const winter = winterDoubts(looked, planting, where);
  return [
    ...(winter.length > 0 ? winter : seasonDoubts(looked, planting, where, written?.again !== undefined)),
    ...(row.lastHarvest === undefined ? [] : earlyHarvestDoubts(planting, where)),
    ...frozenDoubts(looked, planting, where),
    ...returnDoubts(looked, planting, where),
  ];
}

/** A frost-tender crop out of doors in the middle of a winter that freezes. */
function winterDoubts({ climate }: Looked, { cropId, start }: Planting, where: string): Problem[] {
  const { name, frostClass } = vegetableById(cropId);
  const index = seasonIndex(climate.seasonTurn, start.day);
  const isWinter = index <= MIDWINTER_DAYS || index > SEASON_DAYS - MIDWINTER_DAYS;
  if (!isWinter || (frostClass !== 'tender' && frostClass !== 'very-tender')) return [];
  const season = seasonOf(climate.seasonTurn, addDays(start.day, MIDWINTER_DAYS));
  const freeze = freezeDay(climate, { event: 'last-spring', limitF: 32, season, chancePercent: 50 });
  if (freeze === undefined) return [];
  const key = start.how === 'sow' ? 'sow' : 'setOut';
  const did = `is ${startWord(cropId, start.how)}${start.how === 'sow' ? ' outdoors' : ''}`;
  return [
    {
      where: `${where}.${key}`,
      what: `${name} bears no frost and ${did} in the middle of winter, on ${dated(start.day)}.`,
      mend: `Perhaps another month was meant: the last freeze is over about ${dated(freeze)}.`,
    },
  ];
}

/** A last harvest before the quickest kinds are half grown. */
function earlyHarvestDoubts(planting: Planting, where: string): Problem[] {
  const { cropId, start, lastHarvest } = planting;
  const crop = vegetableById(cropId);
  if (lastHarvest === undefined || isPermanent(crop)) return [];
  const days = daysBetween(start.day, lastHarvest.day);
  const ripeDays = daysBetween(start.day, firstRipe({ planting, crop, from: start.day }));
  if (2 * days >= ripeDays) return [];
  return [
    {
      where: `${where}.lastHarvest`,
      what: `${crop.name} is over ${counted(days)} after it went in; the first is ripe after about ${ripeDays}.`,
      mend: 'Perhaps another year or month was meant, or the crop failed: then leave it as it is.',
    },
  ];
}

/** A planned crop whose family was in the bed too few years before. */
function returnDoubts({ garden, climate }: Looked, planting: Planting, where: string): Problem[] {
  if (planting.start.happened) return [];
  const yearOf = (span: CropSpan): number => cropYear(span, climate);
  const spans = cropSpans(garden, planting.bedId, climate).filter(({ crop }) => !isPermanent(crop));
  const next = spans.find((span) => span.planting.id === planting.id);
  const before = next && spans.findLast((span) => isKinBefore(span, next, yearOf));
  if (next === undefined || before === undefined) return [];
  const years = yearOf(next) - yearOf(before);
  if (years >= next.crop.rotationYears) return [];
  const bed = garden.beds.find(({ id }) => id === planting.bedId)?.name ?? planting.bedId;
  const kin = before.crop.id === next.crop.id ? 'itself' : before.crop.name.toLowerCase();
  return [
    {
      where,
      what:
        `${next.crop.name} comes back to ${bed} ${years} ${years === 1 ? 'year' : 'years'} after ${kin}, and ` +
        `${next.crop.rotationYears} are asked for.`,
      mend: 'Perhaps another bed was meant; if not, the plan goes on and warns of it.',
    },
  ];
}

/** Sowings of one season one after another count as one. */
function isKinBefore(span: CropSpan, next: CropSpan, yearOf: (span: CropSpan) => number): boolean {
  return span.crop.rotationGroup === next.crop.rotationGroup && yearOf(span) < yearOf(next);
}

/** A pile of more than its bin holds. */
function fullDoubts({ piles, bins }: Garden, row: GardenFile['piles'][number], where: string): Problem[] {
  const bin = bins.find((each) => each.id === piles.find((pile) => pile.id === row.id)?.binId);
  const litres = row.ingredients.reduce((sum, ingredient) => sum + ingredient.litres, 0);
  if (bin === undefined || litres <= bin.volumeL) return [];
  return [
    {
      where: `${where}.ingredients`,
      what: `They make ${quantity(litres, 'L')} together, and ${bin.name} holds ${quantity(bin.volumeL, 'L')}.`,
      mend: 'Perhaps a figure has a nought too many, or the volumeL of the bin is too small.',
    },
  ];
}

/** A bed that is to be there before its soil can be moved. */
function tooSoonDoubts(input: PracticeInput, id: string | undefined, where: string): Problem[] {
  const bed = input.garden.beds.find((each) => each.id === id);
  const filling = bed && bedFilling(input, bed);
  if (filling?.fit === undefined || filling.fit.day <= filling.bed.plannedFor) return [];
  return [
    {
      where,
      what: `${filling.bed.name} is to be there by ${dated(filling.bed.plannedFor)}, and in the middle year the soil is not fit to be moved before ${dated(filling.fit.day)}.`,
      mend: 'Perhaps a later day was meant; as it stands, the plan fills it once a handful crumbles.',
    },
  ];
}

/** What can only have happened, on a day that is still to come. */
function futureDoubts(file: GardenFile, today: Day): Problem[] {
  const told = [
    ...file.beds.flatMap(({ filledOn }, i) =>
      filledOn === undefined ? [] : [{ where: `beds[${i}].filledOn`, day: filledOn, word: 'A filling' }],
    ),
    ...file.topdressed.map(({ on }, i) => ({ where: `topdressed[${i}].on`, day: on, word: 'A topdressing' })),
    ...file.fed.map(({ on }, i) => ({ where: `fed[${i}].on`, day: on, word: 'A fertiliser' })),
    ...file.compostBought.map(({ on }, i) => ({ where: `compostBought[${i}].on`, day: on, word: 'A purchase' })),
    ...file.soilTests.map(({ on }, i) => ({ where: `soilTests[${i}].on`, day: on, word: 'A soil test' })),
    ...file.soilSqueezes.map(({ on }, i) => ({ where: `soilSqueezes[${i}].on`, day: on, word: 'A squeeze test' })),
    ...file.diseases.map(({ found }, i) => ({ where: `diseases[${i}].found`, day: found, word: 'A disease' })),
  ];
  return told
    .filter(({ day }) => day > today)
    .map(({ where, day, word }) => ({
      where,
      what: `${word} is dated ${dated(day)}, which is still to come.`,
      mend: 'Perhaps another year was meant; what is only planned is left out until it is done.',
    }));
}

function counted(days: number): string {
  return `${days} ${days === 1 ? 'day' : 'days'}`;
}
