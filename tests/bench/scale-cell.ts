/**
 * Plans one garden on a day and on the next in a process of its own, which can be stopped in the middle.
 */
import { performance } from 'node:perf_hooks';
import type { Garden } from '../../src/garden/garden.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { noClimates, workOut } from '../../src/steward/crew/work.ts';
import type { WeatherRecord } from '../../src/store/weather.ts';

/** A garden to plan. */
export interface Cell {
  garden: Garden;
  record: WeatherRecord;
  today: string;
}

/** What it took, or why it cannot be planned. */
export type CellTold = { firstMs: number; againMs: number; planKiB: number } | { refused: string };

process.once('message', async (cell: Cell) => {
  const told = await measured(cell).catch((error): CellTold => {
    if (!(error instanceof InputRefused)) throw error;
    return { refused: error.problems.map(({ what }) => what).join(' ') };
  });
  process.send?.(told);
  process.disconnect();
});

async function measured({ garden, record, today }: Cell): Promise<CellTold> {
  const climates = noClimates();
  const planned = async (day: Day, published?: Plan) => {
    const from = performance.now();
    const plan = { now: `${day}T12:00:00.000Z`, factsVersion: 1, published };
    const asked = { garden: { ...garden }, today: day, climateName: 'record', plan };
    const done = await workOut(asked, { climates, ground: async () => ({ record }) });
    return { plan: done.plan, ms: performance.now() - from };
  };
  const first = await planned(today);
  const again = await planned(addDays(today, 1), first.plan);
  return { firstMs: first.ms, againMs: again.ms, planKiB: JSON.stringify(again.plan).length / 1024 };
}
