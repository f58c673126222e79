/**
 * The demo garden: an invented household in an invented place, laid around the day it is created so that it is alive in
 * any month of any year. It borrows a real weather record; see demo-weather.ts.
 */
import { slug } from '../src/garden/ids.ts';
import { addDays, type Day, inYear, type MonthDay, yearOf } from '../src/measures/days.ts';

import { demoBins, demoPiles } from './demo-piles.ts';
import {
  asparagusBed,
  type Moment,
  type PlannedCover,
  type PlannedCrop,
  type Programme,
  plannedBed,
  rotatingBeds,
} from './demo-rotation.ts';
import { demoWeather } from './demo-weather.ts';

/** Seasons the bed plans cover, by the calendar year of the anchor: two past, its own, the next. */
const SEASONS = [-2, -1, 0, 1];

/** Millimetres of compost the household gives each bed in autumn: half an inch. */
const TOPDRESSING_MM = 13;

/** When the household last had its soil tested: the autumn three years before the anchor's. */
const SAMPLED = '10-14';
const SAMPLED_YEARS_AGO = 3;

/** Days after its cut that a rye is looked at for regrowth. */
const LOOK_AFTER_DAYS = 12;

/** One bed in one year. */
interface BedYear {
  bed: { name: string; lengthM: number; widthM: number };
  year: number;
  programme: Programme;
}

/**
 * The demo garden's file as plain data, laid around a day: what lies up to that day is written as it happened, what lies
 * after it as it is meant.
 */
export function demoGardenFile(anchor: Day): unknown {
  const bedYears = SEASONS.flatMap((season) => bedYearsOf(yearOf(anchor) + season, season));
  return {
    garden: {
      name: 'Quillet Lane',
      latitude: 43.2,
      longitude: -88.1,
      elevationM: 240,
      timeZone: 'America/Chicago',
      units: 'us',
      workDays: ['wed', 'sat', 'sun'],
      hoursPerWeek: 6,
      soilTexture: 'silt_loam',
      frostRisk: 30,
    },
    climate: { dailyRecord: demoWeather.file },
    beds: [...[...rotatingBeds, asparagusBed].map(bedInFile), bedToBeMade(anchor)],
    plantings: [
      asparagus(anchor),
      firstInPlannedBed(anchor),
      ...bedYears.flatMap((bedYear) => plantingsOf(bedYear, anchor)),
    ],
    coverStands: bedYears.flatMap((bedYear) => standsOf(bedYear, anchor)),
    bins: demoBins,
    piles: demoPiles(anchor),
    topdressing: { depthMm: TOPDRESSING_MM, season: 'autumn' },
    topdressed: [...bedYears.map(topdressingOf), ...asparagusTopdressings(anchor)].filter(({ on }) => on <= anchor),
    away: [{ from: addDays(anchor, 24), to: addDays(anchor, 30) }],
    household: {
      people: 4,
      members: [
        { name: 'Ottilie', practices: ['planting', 'cover-cropping', 'rotation', 'season-end', 'frost-watch'] },
        {
          name: 'Bram',
          practices: ['soil-readiness', 'composting', 'topdressing', 'new-beds', 'mulching', 'fertility'],
        },
      ],
    },
    gear: [
      { what: 'light-fabric', areaM2: 9 },
      { what: 'fabric-and-film', areaM2: 6 },
    ],
    seeds: [
      { crop: 'onion-seed', packed: yearOf(anchor) - 2 },
      { crop: 'carrot', packed: yearOf(anchor) - 1 },
      { crop: 'tomato', packed: yearOf(anchor) - 3 },
      { cover: 'cereal_rye', packed: yearOf(anchor) - 1 },
    ],
    wishes: demoWishes(yearOf(anchor)),
    soilTests: [{ on: inYear(SAMPLED, yearOf(anchor) - SAMPLED_YEARS_AGO), organicMatterPercent: 5.2, ph: 6.7 }],
  };
}

/** Seasons ahead of the anchor's that the household has wishes for and no plan yet. */
const UNPLANNED = 2;

/** What is to grow in the first season that is not planned yet: all that the household grows, and two it has not grown. */
function demoWishes(year: number) {
  const beds = { tomato: 1, cabbage: 1, 'sweet-corn': 1, garlic: 1, pea: 1 };
  const areas = { carrot: 2.5, 'summer-squash': 2, 'snap-bean': 2, leek: 2, potato: 4 };
  return [
    ...Object.entries(beds).map(([crop, count]) => ({ crop, beds: count, year: year + UNPLANNED })),
    ...Object.entries(areas).map(([crop, areaM2]) => ({ crop, areaM2, year: year + UNPLANNED })),
  ];
}

function bedYearsOf(year: number, season: number): BedYear[] {
  return rotatingBeds.flatMap((bed) => {
    const place = (bed.turn + season + bed.rotation.length) % bed.rotation.length;
    const programme = bed.rotation[place];
    return programme ? [{ bed, year, programme }] : [];
  });
}

function bedInFile(bed: Omit<(typeof rotatingBeds)[number], 'rotation' | 'turn'>) {
  const { name, lengthM, widthM, depthM, watered = false, soilTexture } = bed;
  return { name, lengthM, widthM, depthM, raised: true, watered, ...(soilTexture ? { soilTexture } : {}) };
}

function bedToBeMade(anchor: Day) {
  const { plannedFor, pathsM2 } = plannedBed;
  return { ...bedInFile(plannedBed), plannedFor: inYear(plannedFor, yearOf(anchor) + 1), pathsM2 };
}

function firstInPlannedBed(anchor: Day) {
  const { name, crop } = plannedBed;
  const on = (day: MonthDay): Day => inYear(day, yearOf(anchor) + 1);
  return { bed: name, crop: crop.crop, sow: on(crop.sow), lastHarvest: on(crop.last) };
}

function dayOf(moment: Moment, year: number): Day {
  return typeof moment === 'string' ? inYear(moment, year) : inYear(moment[1], year + moment[0]);
}

function plantingsOf({ bed, year, programme }: BedYear, anchor: Day) {
  return programme.crops.map(({ crop, sow, setOut, last, endOpen = false, again }: PlannedCrop) => {
    const lastHarvest = dayOf(last, year);
    return {
      ...(again ? { id: `${slug(bed.name)}-${year}-${crop}`, again } : {}),
      bed: bed.name,
      crop,
      ...(sow ? { sow: dayOf(sow, year) } : {}),
      ...(setOut ? { setOut: dayOf(setOut, year) } : {}),
      ...(endOpen && lastHarvest > anchor ? {} : { lastHarvest }),
    };
  });
}

function asparagus(anchor: Day) {
  const { name, planted, yearsAgo } = asparagusBed;
  return { bed: name, crop: 'asparagus', setOut: inYear(planted, yearOf(anchor) - yearsAgo) };
}

function standsOf({ bed, year, programme }: BedYear, anchor: Day) {
  return programme.covers.map((cover) => standOf(bed.name, cover, year, anchor));
}

/** A stand with as much of its life as lies up to the anchor. */
function standOf(bed: string, { cover, mix, sow, cut, dead }: PlannedCover, year: number, anchor: Day) {
  const ended = (moment: Moment | undefined): Day | undefined => {
    const day = moment && dayOf(moment, year);
    return day !== undefined && day <= anchor ? day : undefined;
  };
  const [cutOn, deadOn] = [ended(cut), ended(dead)];
  const looked = cutOn && addDays(cutOn, LOOK_AFTER_DAYS);
  return {
    bed,
    ...(cover ? { cover } : { mix }),
    sow: dayOf(sow, year),
    ...(cutOn ? { cut: cutOn } : {}),
    ...(looked && looked <= anchor ? { regrowthChecked: [looked] } : {}),
    ...(deadOn ? { dead: deadOn } : {}),
  };
}

function litresFor({ lengthM, widthM }: { lengthM: number; widthM: number }): number {
  return Math.round(lengthM * widthM * TOPDRESSING_MM);
}

function topdressingOf({ bed, year, programme }: BedYear) {
  return { bed: bed.name, on: dayOf(programme.topdress, year), litres: litresFor(bed) };
}

function asparagusTopdressings(anchor: Day) {
  return SEASONS.map((season) => ({
    bed: asparagusBed.name,
    on: inYear(asparagusBed.topdress, yearOf(anchor) + season),
    litres: litresFor(asparagusBed),
  }));
}
