import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { NOON, skipping } from './entries.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

const turning: PlannedTask = {
  key: 'turn:4/pile:p-1',
  practice: 'composting',
  kind: 'turn',
  job: { id: 'turn', title: 'Turn the pile' },
  subject: { type: 'pile', id: 'p-1', name: 'Left bay', binId: 'left' },
  weight: 'work',
  title: 'Turn the pile in the left bay',
  steps: ['Move the outside to the middle.'],
  cautions: [],
  supplies: [{ what: 'water', amount: { value: 20, unit: 'L' } }],
  window: { earliest: '2027-04-17', preferred: '2027-04-18', latest: '2027-04-24' },
  ifMissed: 'still do',
  missedNote: 'It cools and takes longer.',
  effortMinutes: 30,
  needs: ['above-freezing'],
  after: [{ key: 'turn:3/pile:p-1', minDays: 5 }],
  confidence: 'derived',
  reasons: [{ rule: 'weekly-turn', saw: { days: 7 }, source: 'common practice' }],
  makes: [{ makes: 'pile-turned', pileId: 'p-1' }],
  day: '2027-04-18',
  state: 'open',
  pinned: false,
  lotId: 'lot-1',
  sequence: 0,
  changedAt: NOON,
};

function planOf(today: string, factsVersion: number): Plan {
  const { lotId, day, title, practice, kind, state, key, effortMinutes, sequence, changedAt } = turning;
  const published = { lotId, day, title, practice, kind, state, effortMinutes, sequence, changedAt };
  return {
    gardenId: 'plot',
    today,
    factsVersion,
    revisedAt: NOON,
    tasks: [turning],
    entries: [{ ...published, keys: [key], createdAt: NOON, content: 'turn' }],
    changes: [{ key, title, kind: 'moved', from: '2027-04-17', to: day, because: turning.reasons, at: NOON }],
    clashes: [],
  };
}

describe('the stored plan', () => {
  test('comes back byte for byte', async () => {
    const store = await stockedStore();
    const plan = planOf('2027-04-18', 0);
    expect(await store.savePlan('plot', plan, 0)).toBe(true);
    expect(JSON.stringify(await store.plan('plot'))).toBe(JSON.stringify(plan));
  });

  test('is absent until one has been made', async () => {
    const store = await stockedStore();
    expect(await store.plan('plot')).toBeUndefined();
  });

  test('gives way to the next one', async () => {
    const store = await stockedStore();
    await store.savePlan('plot', planOf('2027-04-18', 0), 0);
    await store.savePlan('plot', planOf('2027-04-19', 0), 0);
    expect((await store.plan('plot'))?.today).toBe('2027-04-19');
  });

  test('is refused when a fact came in while it was being made', async () => {
    const store = await stockedStore();
    await store.savePlan('plot', planOf('2027-04-18', 0), 0);
    await store.append('plot', 0, [skipping('a')]);
    expect(await store.savePlan('plot', planOf('2027-04-19', 0), 0)).toBe(false);
    expect((await store.plan('plot'))?.today).toBe('2027-04-18');
  });

  test('is refused when weather came in while it was being made', async () => {
    const store = await stockedStore();
    await store.replaceWeatherRecord('plot', { origin: 'invented', leftOut: [], days: [] });
    expect(await store.savePlan('plot', planOf('2027-04-18', 0), 0)).toBe(false);
    expect(await store.savePlan('plot', planOf('2027-04-18', 1), 1)).toBe(true);
  });

  test('belongs to its garden alone', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
    await store.savePlan('plot', planOf('2027-04-18', 0), 0);
    expect(await store.plan('yard')).toBeUndefined();
  });

  test.each([
    ['is cut short', '{"gardenId":"plot"'],
    ['has lost its entries', '{"gardenId":"plot","today":"2027-04-18","factsVersion":0,"tasks":[]}'],
  ])('is refused by name when it %s', async (_, json) => {
    const file = join(tempFolder(), 'loamtide.db');
    const store = await stockedStore(file);
    await store.savePlan('plot', planOf('2027-04-18', 0), 0);
    const sqlite = new SqliteFile(file);
    sqlite.prepare('update plans set plan = ?').run(json);
    sqlite.close();
    await expect(store.plan('plot')).rejects.toThrow(/plan of plot: This is not a plan/);
  });
});
