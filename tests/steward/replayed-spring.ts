/**
 * A northern garden standing in a real season: its record is that of the years before, its log that season's own weather.
 */
import type { GardenFile } from '../../src/garden/garden-file.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';
import { addDays, type Day, eachDay, yearOf } from '../../src/measures/days.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { PLACES, type RecordName, recordRows } from '../climate/real-data.ts';
import { northernFile, type Sections } from './gardens.ts';
import { emptyHousehold, told } from './household.ts';

/** A record, and the day of it the garden stands on. */
export interface Replay {
  record: RecordName;
  on: Day;
}

/** Years of record behind the season: thirty seasons, and the two that a span cut by calendar years loses. */
const YEARS_BEFORE = 32;
const EVERY_DAY = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** The record's own rows of some days, as seen. */
export function rowsSeen(record: RecordName, from: Day, to: Day): LoggedDay[] {
  return recordRows(record)
    .filter(({ day }) => day >= from && day <= to)
    .map((row) => ({ ...row, kind: 'observed' }));
}

/** The same weather on each of some days. */
export function spell(from: Day, days: number, kind: LoggedDay['kind'], weather: Partial<LoggedDay>): LoggedDay[] {
  return eachDay(from, addDays(from, days - 1)).map((day) => ({ ...weather, day, kind }));
}

/** A garden on a day of a real spring, its weather logged from the autumn before to the eve; people are there every day. */
export async function standingIn({ record, on }: Replay, sections: Sections) {
  const { steward } = await emptyHousehold(`${on}T17:00:00.000Z`);
  const year = yearOf(on);
  const days = recordRows(record).filter(({ day }) => yearOf(day) >= year - YEARS_BEFORE && yearOf(day) < year);
  const { gardenId } = await steward.importGarden(
    { file: fileOf(record, sections), prefer: 'file', record: { origin: record, leftOut: [], days } },
    'test',
  );
  const seen = rowsSeen(record, `${year - 1}-09-01`, addDays(on, -1));
  await steward.report(gardenId, { kind: 'weather-logged', days: seen }, 'test');
  return { steward, gardenId, report: (report: Report) => steward.report(gardenId, report, 'test') };
}

function fileOf(record: RecordName, sections: Sections): GardenFile {
  const { garden } = northernFile();
  return northernFile({
    garden: { ...garden, ...PLACES[record], workDays: EVERY_DAY, units: 'metric', soilTexture: 'silt_loam' },
    climate: { dailyRecord: 'weather.csv' },
    plantings: [],
    coverStands: [],
    bins: [],
    piles: [],
    ...sections,
  });
}

/** A report shown first, then taken in, then taken back; each plan without its revisions. */
export async function throughout({ steward, gardenId, report }: Awaited<ReturnType<typeof standingIn>>, what: Report) {
  const before = (await steward.view(gardenId)).plan;
  const preview = await steward.previewReport(gardenId, what);
  const after = await report(what);
  const entries = (await steward.view(gardenId)).ledger.length;
  const undone = await steward.undo(gardenId, undefined, 'test');
  const feedOf = (plan: Plan) => plan.entries.map(({ lotId, day, title }) => `${lotId} ${day} ${title}`);
  return {
    before,
    after,
    preview,
    entries,
    shown: told(preview.after),
    kept: told(after),
    was: told(before),
    undone: told(undone),
    feedChanged: JSON.stringify(feedOf(before)) !== JSON.stringify(feedOf(after)),
  };
}
