import type { Day } from '../../src/measures/days.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { GardenView } from '../../src/steward/doings/steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import { openStore } from '../../src/store/store.ts';

/** The plan of the demo garden laid on a day, made as the program makes it. */
export async function demoPlan(today: Day): Promise<Plan> {
  return (await demoView(today)).plan;
}

/** The demo garden laid on a day, with its plan. */
export async function demoView(today: Day): Promise<GardenView> {
  const clock = { now: () => `${today}T15:00:00.000Z`, today };
  const store = await openStore({ file: ':memory:', now: clock.now() });
  const steward = createSteward({ store, clock });
  const view = await steward.view(await layDemo({ steward, clock }));
  await steward.close();
  return view;
}
