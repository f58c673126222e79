/**
 * Long records put behind gardens: tried out first, then kept with the garden's choice of climate, both or neither.
 */
import { InputRefused } from '../../garden/problem.ts';
import { isSameRecord, type WeatherRecord } from '../../store/weather.ts';
import type { RecordChange, RecordDoings } from '../doings/record-doings.ts';
import { mendWithRecord } from '../facts/mend.ts';
import { unsaid } from '../long-work/say.ts';
import type { VersionedView } from '../planning/planner.ts';
import type { ImportRoom } from './imports.ts';

/** Times a record is offered again when a fact of somebody else's came in between. */
const TRIES = 5;

/** What a steward does with records, over a store. */
export function recordsIn(room: ImportRoom): RecordDoings {
  const { store, planner, clock } = room;
  return {
    weatherRecord: (gardenId) => store.weatherRecord(gardenId),
    formerRecord: (gardenId) => store.formerRecord(gardenId),
    async previewRecord(gardenId, change, say = unsaid) {
      const view = await planner.view(gardenId);
      await say('Working out climate and plan', 0.6);
      const { tried } = await triedRecord(room, view, change);
      return {
        before: view.plan,
        after: tried.plan,
        garden: tried.garden,
        climates: { before: view.climate, after: tried.climate },
      };
    },
    async takeRecord(gardenId, change, by, say = unsaid) {
      const { record } = change;
      for (let tried = 0; tried < TRIES; tried += 1) {
        const view = await planner.view(gardenId);
        await say('Working out the climate', 0.2);
        const { facts } = await triedRecord(room, view, change);
        await say(`Keeping ${record.days.length} days`, 0.5);
        const recorded = { recordedAt: clock.now(), recordedOn: view.plan.today, by };
        const entries = facts.map((fact) => ({ ...recorded, fact }));
        const isKept = await store.transaction(async (shelves) => {
          refuseOvertaken(change, await shelves.weatherRecord(gardenId));
          const added = await shelves.append(gardenId, view.version, entries);
          if (added.outcome === 'stale') return false;
          await shelves.replaceWeatherRecord(gardenId, record);
          return true;
        });
        if (!isKept) continue;
        await say('Making the plan', 0.8);
        return (await planner.view(gardenId)).plan;
      }
      throw new Error(`Garden "${gardenId}" kept changing. Nothing was written. Try again.`);
    },
  };
}

/** A record tried out; with the fact that makes the garden's climate stand on it, where it stands on something else. */
function triedRecord({ planner }: ImportRoom, view: VersionedView, { record, file }: RecordChange) {
  const stands = view.garden.climate.kind === 'daily-record';
  return mendWithRecord(planner, view, stands ? [] : [{ part: 'climate', row: { dailyRecord: file } }], record);
}

/** Days that came in since would be lost. */
function refuseOvertaken({ laidOver }: RecordChange, now: WeatherRecord | undefined): void {
  if (laidOver === undefined) return;
  const { held } = laidOver;
  if (held === undefined ? now === undefined : now !== undefined && isSameRecord(held, now)) return;
  throw new InputRefused('The record was not taken.', [
    {
      where: 'the record there is',
      what: 'It is another one by now than this one was laid over: its new days would be lost.',
      mend: 'Bring the file in again: it is laid over the record as it stands then.',
    },
  ]);
}
