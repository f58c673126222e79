/**
 * The last plan made of each garden. It is what feeds and pages show, and what the next plan is compared with.
 */
import { z } from 'zod';
import type { Day } from '../measures/days.ts';
import type { Plan } from '../schedule/plan.ts';
import { factsVersion } from './gardens.ts';
import { parseJson } from './json.ts';
import { type Database, writing } from './tables.ts';

const published = {
  lotId: z.string(),
  day: z.string(),
  state: z.string(),
  sequence: z.number(),
  changedAt: z.string(),
};

/** What a stored plan must at least have to be compared with: the rest is as the schedule wrote it. */
const planShape = z.looseObject({
  gardenId: z.string(),
  today: z.string(),
  factsVersion: z.number(),
  tasks: z.array(z.looseObject({ key: z.string(), ...published })),
  entries: z.array(z.looseObject({ keys: z.array(z.string()), content: z.string(), ...published })),
  changes: z.array(z.looseObject({ key: z.string(), at: z.string() })),
  clashes: z.array(z.looseObject({ key: z.string() })),
});

const planSchema = z.custom<Plan>((value) => planShape.safeParse(value).success, 'This is not a plan');

/** The last plan stored of a garden, if any. */
export async function plan(db: Database, gardenId: string): Promise<Plan | undefined> {
  const row = await db.selectFrom('plans').select('plan').where('garden_id', '=', gardenId).executeTakeFirst();
  return row && parseJson(planSchema, row.plan, `plan of ${gardenId}`);
}

/** The day of the plan last kept up to date, over all gardens that are not put away; nothing where there is no plan. */
export async function newestPlanDay(db: Database): Promise<Day | undefined> {
  const row = await db
    .selectFrom('plans')
    .innerJoin('gardens', 'gardens.id', 'plans.garden_id')
    .where('gardens.put_away_at', 'is', null)
    .select(({ fn }) => fn.max('plans.today').as('newest'))
    .executeTakeFirst();
  return row?.newest ?? undefined;
}

/** What the last plan stored of a garden was made from, if any. */
export async function planMade(
  db: Database,
  gardenId: string,
): Promise<Pick<Plan, 'today' | 'factsVersion'> | undefined> {
  const row = await db
    .selectFrom('plans')
    .select(['today', 'facts_version as factsVersion'])
    .where('garden_id', '=', gardenId)
    .executeTakeFirst();
  return row;
}

/**
 * Stores a plan in place of the last one, if the facts still stand at the version it was made from.
 *
 * @returns whether it was stored; if not, it has to be made again
 */
export function savePlan(db: Database, gardenId: string, made: Plan, version: number): Promise<boolean> {
  return writing(db, async (transaction) => {
    if ((await factsVersion(transaction, gardenId)) !== version) return false;
    const row = { facts_version: version, today: made.today, plan: JSON.stringify(made) };
    await transaction
      .insertInto('plans')
      .values({ garden_id: gardenId, ...row })
      .onConflict((conflict) => conflict.column('garden_id').doUpdateSet(row))
      .execute();
    return true;
  });
}
