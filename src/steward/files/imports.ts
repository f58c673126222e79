/**
 * Bringing gardens and weather in: whole, or not at all.
 */
import type { LedgerEntry } from '../../garden/ledger.ts';
import { withMemberIds } from '../../garden/member-ids.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { Plan } from '../../schedule/plan.ts';
import { readStationTable } from '../../store/station-file.ts';
import type { Shelves, Store } from '../../store/store.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { climateOf } from '../crew/garden-climate.ts';
import type { GardenImport } from '../doings/steward.ts';
import { refuseCrowded } from '../facts/crowded.ts';
import { followHousehold } from '../feeds/feeds-of-members.ts';
import { type Clock, dayIn, gardenOf, type Planner, type TriedOut } from '../planning/planner.ts';

/** What importing works with. */
export interface ImportRoom {
  store: Store;
  clock: Clock;
  planner: Planner;
}

/** A garden that was tried and found good, with the ledger that says so. */
export interface TriedImport extends TriedOut {
  gardenId: string;
  ledger: readonly LedgerEntry[];
  /** Whether there is no such garden yet: its first plan is the one that was tried. */
  isNew: boolean;
  /** Keeps it, inside a transaction. */
  keep(shelves: Shelves): Promise<void>;
}

/**
 * Brings a garden file in. A trial plan is made first, so that a file no climate can be worked out for leaves no trace.
 *
 * @throws {InputRefused} when the climate cannot be worked out, or two crops are planned for one bed at once
 */
export async function importGarden(room: ImportRoom, garden: GardenImport, by: string): Promise<Plan> {
  const tried = await tryImport(room, garden, by);
  const { gardenId, keep } = tried;
  await room.store.transaction(keep);
  if (tried.isNew) await room.planner.adopt(gardenId, tried, await room.store.factsVersion(gardenId));
  return (await room.planner.view(gardenId)).plan;
}

/**
 * Tries a garden file: nothing is kept yet.
 *
 * @throws {InputRefused} as {@link importGarden} does
 */
export async function tryImport(room: ImportRoom, garden: GardenImport, by: string): Promise<TriedImport> {
  const { store, clock, planner } = room;
  const { file, prefer, record, weather = [] } = garden;
  const gardenId = file.garden.id ?? '';
  const today = clock.today ?? dayIn(file.garden.timeZone, clock.now());
  const fact = { kind: 'garden-imported' as const, file, prefer };
  const recorded = { recordedAt: clock.now(), recordedOn: today, by };
  const log = { ...recorded, fact: { kind: 'weather-logged' as const, days: [...weather] } };
  const entries = [{ ...recorded, fact }, ...(weather.length === 0 ? [] : [log])];
  const known = (await store.gardenIds()).includes(gardenId);
  if (!known) await refusePutAway(store, gardenId);
  const before = known ? await store.ledger(gardenId) : [];
  const last = before.at(-1)?.entry ?? 0;
  const numbered = entries.map((entry, index) => ({ ...entry, entry: last + 1 + index }));
  const ledger = withMemberIds([...before, ...numbered]);
  const tried = await planner.tryOut(gardenId, ledger, { record, published: undefined, version: 0 });
  refuseCrowded(file, tried.garden, tried.climate);
  const keep = async (shelves: Shelves) => {
    if (!known) await refuseTaken(shelves, gardenId);
    if (!known) await shelves.createGarden({ id: gardenId, name: file.garden.name, createdAt: clock.now() });
    if (record !== undefined) await shelves.replaceWeatherRecord(gardenId, record);
    if (known) await followHousehold({ store: shelves, clock }, [gardenOf(gardenId, before), tried.garden]);
    await appendNow(shelves, gardenId, entries);
  };
  return { ...tried, gardenId, ledger, isNew: !known, keep };
}

/** A file of a garden that was put away says nothing of whether it is to come back. */
async function refusePutAway(store: Shelves, gardenId: string): Promise<void> {
  const away = (await store.gardensPutAway()).find(({ id }) => id === gardenId);
  if (away === undefined) return;
  throw new InputRefused('The garden file was not brought in.', [
    {
      where: 'garden.id',
      what: `The garden "${gardenId}" was put away on ${away.at.slice(0, 10)}.`,
      mend: 'Give it back on the page of gardens first, or give the file another id.',
    },
  ]);
}

/** A garden that somebody else brought in meanwhile is not laid over unseen. */
async function refuseTaken(shelves: Shelves, gardenId: string): Promise<void> {
  if (!(await shelves.gardenIds()).includes(gardenId)) return refusePutAway(shelves, gardenId);
  throw new InputRefused('The garden file was not brought in.', [
    {
      where: 'garden.id',
      what: `A garden "${gardenId}" was brought in at the same time.`,
      mend: 'Bring the file in again to change that garden, or give the file another id.',
    },
  ]);
}

async function appendNow(shelves: Shelves, gardenId: string, entries: Parameters<Shelves['append']>[2]): Promise<void> {
  const added = await shelves.append(gardenId, await shelves.factsVersion(gardenId), entries);
  if (added.outcome === 'stale') throw new Error(`Garden "${gardenId}" changed inside its own transaction.`);
}

/**
 * Puts a weather record behind a garden.
 *
 * @throws {InputRefused} when the garden is not there, or the record is too short to plan by
 */
export async function importWeather(room: ImportRoom, gardenId: string, record: WeatherRecord): Promise<Plan> {
  const { store, planner } = room;
  if (!(await store.gardenIds()).includes(gardenId)) {
    throw new InputRefused('The weather cannot be brought in.', [
      {
        where: gardenId,
        what: 'is not a garden here.',
        mend: 'Bring the garden in first: loamtide garden import FILE',
      },
    ]);
  }
  const { garden, plan } = await planner.view(gardenId);
  await climateOf(garden, plan.today, { record, stations: readStationTable });
  await store.replaceWeatherRecord(gardenId, record);
  return (await planner.view(gardenId)).plan;
}
