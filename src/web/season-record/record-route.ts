/**
 * The season's record: the page, and the files.
 */
import { type Context, Hono } from 'hono';
import { seasonOf } from '../../climate/season.ts';
import { recordCsv } from '../../digest/record/csv.ts';
import { recordJson } from '../../digest/record/json.ts';
import { type RecordFrom, seasonNamed, seasonRecord, seasonsOnRecord } from '../../digest/record/season-record.ts';
import { seasonName } from '../../practices/seasons.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { SHOWN_CHARACTERS } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { Trouble } from '../requests/trouble.ts';
import { recordPage } from './record.tsx';

export function recordRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/gardens/:gardenId/record', async (c) => {
      const view = await gardenView(steward, c);
      const from = recordFrom(view);
      const seasons = seasonsOnRecord(from);
      const asked = c.req.query('season');
      const season =
        asked === undefined ? seasonOf(view.climate.seasonTurn, view.plan.today) : seasonAsked(from, asked, seasons);
      return c.html(recordPage({ view, record: seasonRecord(from, { season }), seasons, season }));
    })
    .get('/gardens/:gardenId/record.csv', async (c) => {
      const { record, name } = await fileAsked(steward, c, c.req.query('season'));
      return c.body(recordCsv(record.rows), 200, {
        'Content-Type': 'text/csv; charset=utf-8; header=present',
        'Content-Disposition': `attachment; filename="${name}.csv"`,
      });
    })
    .get('/gardens/:gardenId/record.json', async (c) => {
      const { record, name } = await fileAsked(steward, c, c.req.query('season'));
      return c.body(recordJson(record), 200, {
        'Content-Type': 'application/json; charset=utf-8',
        'Content-Disposition': `attachment; filename="${name}.json"`,
      });
    });
}

function recordFrom({ garden, climate, ledger, plan: { today } }: GardenView): RecordFrom {
  return { garden, climate, ledger, today };
}

async function fileAsked(steward: Steward, c: Context, asked: string | undefined) {
  const view = await gardenView(steward, c);
  const from = recordFrom(view);
  const season = asked === undefined ? undefined : seasonAsked(from, asked, seasonsOnRecord(from));
  const which = season === undefined ? 'all-seasons' : seasonName(view.climate, season).replace('/', '-');
  return {
    record: seasonRecord(from, season === undefined ? {} : { season }),
    name: `${view.garden.id}-record-${which}`,
  };
}

/** @throws {Trouble} 404 where the garden has no record of such a season */
function seasonAsked(from: RecordFrom, asked: string, known: readonly number[]): number {
  const season = seasonNamed(from, asked, known);
  if (season !== undefined) return season;
  throw new Trouble(404, 'There is no such record', [
    {
      where: 'season',
      what: `Nothing is on record of a season "${asked.slice(0, SHOWN_CHARACTERS)}".`,
      mend: `Seasons on record: ${known.map((each) => seasonName(from.climate, each)).join(', ')}.`,
    },
  ]);
}
