/**
 * What a season of the record adds up to.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { cropSpans } from '../../practices/bed-timeline.ts';
import { coverName } from '../../practices/covers.ts';
import { isSeed } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { seasonName } from '../../practices/seasons.ts';
import { cropName } from './names.ts';
import { pileSeason } from './pile-season.ts';
import type { RecordRow } from './row.ts';
import { type SeasonDays, seasonDays } from './season-days.ts';
import type { BedSeason, SeasonSummary } from './shape.ts';
import { freezesSeen, weatherSeen } from './weather-seen.ts';
import { withoutNoise } from './without-noise.ts';
import { workDone } from './work-done.ts';

/** What a record is summed up from: the garden today, and its lines. */
interface SummaryInput extends Pick<PracticeInput, 'garden' | 'climate' | 'today'> {
  rows: readonly RecordRow[];
}

/** Every season with a line, and the running one; the newest first. */
export function recordedSeasons({ climate, today, rows }: SummaryInput): number[] {
  const running = seasonOf(climate.seasonTurn, today);
  return [...new Set([running, ...rows.map(({ season }) => season)])].sort((a, b) => b - a);
}

/** A season, summed up. */
export function summaryOf(input: SummaryInput, season: number): SeasonSummary {
  const { garden, climate, today } = input;
  const days = seasonDays(climate.seasonTurn, season);
  const rows = input.rows.filter((row) => row.season === season);
  const weather = weatherSeen(garden, days, today);
  const freezes = freezesSeen(garden, climate.seasonTurn, days, today);
  return {
    ...{ season, name: seasonName(climate, season), ...days },
    ...(days.to >= today && days.from <= today ? { running: true } : {}),
    beds: bedsOf(input, days, rows),
    piles: pilesOf(garden, days, rows, today),
    ...(weather === undefined ? {} : { weather }),
    ...(freezes === undefined ? {} : { freezes }),
    work: workDone(garden, rows),
  };
}

/** Beds where something grew or was done, in the order of the garden file; those gone from it after them. */
function bedsOf(input: SummaryInput, days: SeasonDays, rows: readonly RecordRow[]): BedSeason[] {
  const own = rows.filter(({ about }) => about === 'bed');
  const beds = input.garden.beds.map((bed) => bedSeason(bed, input, days, own));
  const gone = namedIn(own).filter(({ id }) => !input.garden.beds.some((bed) => bed.id === id));
  const lost = gone.map(
    ({ id, name }): BedSeason => ({ id, name, gone: true, crops: [], covers: [], ...given(own, id) }),
  );
  return [...beds.filter((bed) => !isEmpty(bed) || own.some(({ aboutId }) => aboutId === bed.id)), ...lost];
}

function isEmpty({ crops, covers }: BedSeason): boolean {
  return crops.length + covers.length === 0;
}

/** What lines are about, each once, with its name. */
function namedIn(rows: readonly RecordRow[]): { id: string; name: string }[] {
  return [...new Map(rows.map(({ aboutId: id, aboutName: name }) => [id, { id, name }])).values()];
}

function bedSeason(bed: Bed, input: SummaryInput, days: SeasonDays, rows: readonly RecordRow[]): BedSeason {
  const { id, name } = bed;
  return { id, name, crops: cropsGrown(id, input, days), covers: coversGrown(id, input, days), ...given(rows, id) };
}

/** Compost and meals given to a bed. */
function given(rows: readonly RecordRow[], bedId: string): Pick<BedSeason, 'compostL' | 'fedG'> {
  const own = rows.filter(({ aboutId }) => aboutId === bedId);
  const spread = own.filter(({ doing }) => doing === 'compost-spread');
  const sum = (values: readonly number[]): number => withoutNoise(values.reduce((total, value) => total + value, 0));
  return {
    compostL: sum(spread.map(({ litres = 0 }) => litres)),
    fedG: sum(own.filter(({ doing }) => doing === 'fed').map(({ grams = 0 }) => grams)),
  };
}

/** Crops that stood in a bed on a day of the season up to today; one nobody cleared ends where the plan ends it. */
function cropsGrown(bedId: string, { garden, climate, today }: SummaryInput, days: SeasonDays): BedSeason['crops'] {
  return cropSpans(garden, bedId, climate)
    .filter(
      ({ planting: { start }, from, to }) =>
        start.happened && from <= today && from <= days.to && (to ?? today) >= days.from,
    )
    .map(({ planting, from }) => {
      const { id: itemId, start, lastHarvest, areaM2 } = planting;
      return {
        ...{ itemId, what: cropName(planting.cropId), from },
        how: start.how === 'set-out' ? 'set-out' : isSeed({ planting }) ? 'sown' : 'planted',
        ...(areaM2 === undefined ? {} : { areaM2 }),
        ...(lastHarvest?.happened ? { lastHarvest: lastHarvest.day } : {}),
      };
    });
}

/** Longest a cover is taken to have stood that nobody cut or saw dead. House default: a year. */
const COVER_STANDS_DAYS = 365;

function coversGrown(bedId: string, { garden, today }: SummaryInput, days: SeasonDays): BedSeason['covers'] {
  return garden.stands
    .filter((stand) => stand.bedId === bedId && stand.sow.happened && stand.sow.day <= today)
    .filter(({ sow, cutOn, deadOn }) => {
      const ended = cutOn ?? deadOn ?? addDays(sow.day, COVER_STANDS_DAYS);
      return sow.day <= days.to && ended >= days.from;
    })
    .map(({ id: itemId, coverId, sow, cutOn, deadOn }) => ({
      ...{ itemId, what: coverName(coverId), sown: sow.day },
      ...(cutOn === undefined ? {} : { cut: cutOn }),
      ...(deadOn === undefined ? {} : { dead: deadOn }),
    }))
    .sort((a, b) => (a.sown < b.sown ? -1 : 1));
}

/** Piles at work on a day of the season, and piles gone from the garden file that something was done to. */
function pilesOf(garden: Garden, days: SeasonDays, rows: readonly RecordRow[], today: Day): SeasonSummary['piles'] {
  const own = rows.filter(({ about }) => about === 'pile');
  const working = garden.piles.filter(
    ({ id, built, finishedOn }) =>
      own.some(({ aboutId }) => aboutId === id) ||
      (built.happened && built.day <= days.to && built.day <= today && (finishedOn ?? today) >= days.from),
  );
  const gone = namedIn(own).filter(({ id }) => !garden.piles.some((pile) => pile.id === id));
  return [
    ...working.map((pile) => pileSeason(pile, garden)),
    ...gone.map(({ id, name }) => ({ id, name, gone: true as const, ingredients: [], turns: 0, went: [] })),
  ];
}
