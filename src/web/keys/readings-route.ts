/**
 * POST /api/piles/<id>/readings: what a thermometer or another script tells of a pile.
 *
 * The key in the Authorization header says which garden it is and that it may; a page of another site cannot send that
 * header unasked, so that neither Origin nor Sec-Fetch-Site is looked for here.
 */
import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { clock } from '../../garden/file-values.ts';
import type { Pile } from '../../garden/garden.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { type Day, isDay } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { lookDayProblems } from '../../steward/facts/reports.ts';
import { readingLimit } from '../requests/guard.ts';
import { clientOf } from '../requests/request.ts';
import { ToldReadings, WrongTokens } from '../requests/wrong-tokens.ts';

/** Who made the change, as the ledger keeps it. */
const BY = 'a script';

/** What a core of a pile can have, °C: what a garden file takes. */
const PILE_C = { least: -30, most: 95 } as const;

/** What can be told of a pile. */
const SIGNS = ['tempC', 'tempF', 'moisture', 'smell', 'pests', 'slumped'] as const;

const WRONG_DAY = 'Give a real date as YYYY-MM-DD, or leave it out for today.';
const degrees = (least: number, most: number) => {
  const mend = `Give degrees from ${Math.round(least)} to ${Math.round(most)}, as a number.`;
  return z.number({ error: mend }).min(least, mend).max(most, mend).optional();
};
const sign = z.boolean({ error: 'Give true or false.' }).optional();

const reading = z.strictObject(
  {
    on: z.string({ error: WRONG_DAY }).refine(isDay, WRONG_DAY).optional(),
    at: clock.optional(),
    tempC: degrees(PILE_C.least, PILE_C.most),
    tempF: degrees((PILE_C.least * 9) / 5 + 32, (PILE_C.most * 9) / 5 + 32),
    moisture: z.enum(['dry', 'damp', 'wet'], { error: 'Give dry, damp or wet.' }).optional(),
    smell: z.enum(['earthy', 'ammonia', 'sour'], { error: 'Give earthy, ammonia or sour.' }).optional(),
    pests: sign,
    slumped: sign,
  },
  { error: 'Send a JSON object with on, at, tempC or tempF, moisture, smell, pests, slumped.' },
);

/** Takes readings in. */
export function readingRoutes(steward: Steward, wrong = new WrongTokens(), told = new ToldReadings()): Hono {
  return new Hono().post('/api/piles/:pileId/readings', readingLimit, async (c) => {
    const gardenId = await gardenIn(c, steward);
    if (gardenId === undefined) return refusedKey(c, wrong);
    if (!(await steward.gardenIds()).includes(gardenId)) return putAway(c, gardenId);
    const waitSeconds = told.count(gardenId);
    if (waitSeconds !== undefined) return tooMany(c, waitSeconds, 'Too many readings were sent.', 'send the next.');
    const { garden, plan } = await steward.view(gardenId);
    const pile = garden.piles.find(({ id }) => id === c.req.param('pileId'));
    if (pile === undefined) {
      const mend = `Piles: ${garden.piles.map(({ id }) => id).join(', ') || 'none yet'}.`;
      return c.json({ problems: [{ where: 'the address', what: 'This garden has no such pile.', mend }] }, 404);
    }
    const sent = await c.req.json<unknown>().catch(() => undefined);
    const parsed = reading.safeParse(sent);
    const problems = [
      ...(parsed.success ? [] : problemsOf(parsed.error)),
      ...problemsAcross(sent),
      ...dayProblems(sent, pile, plan.today),
    ];
    if (!parsed.success || problems.length > 0) return c.json({ problems }, 422);
    const seen = readingOf(parsed.data, plan.today);
    try {
      const kept = await steward.readPileOnce(gardenId, { pileId: pile.id, ...seen }, BY);
      return c.json({ kept, pile: pile.id, ...seen }, kept ? 201 : 200);
    } catch (error) {
      if (error instanceof InputRefused) return c.json({ problems: error.problems }, 422);
      throw error;
    }
  });
}

async function gardenIn(c: Context, steward: Steward): Promise<string | undefined> {
  const key = /^Bearer ([A-Za-z0-9_-]{1,128})$/i.exec(c.req.header('authorization') ?? '')?.[1];
  return key === undefined ? undefined : steward.gardenOfKey(key);
}

function putAway(c: Context, gardenId: string) {
  const mend = 'Give it back on the page of gardens, then send the reading again.';
  return c.json({ problems: [{ where: gardenId, what: 'This garden was put away.', mend }] }, 409);
}

function refusedKey(c: Context, wrong: WrongTokens) {
  const waitSeconds = wrong.count(clientOf(c));
  if (waitSeconds !== undefined) {
    return tooMany(c, waitSeconds, 'Too many wrong keys were tried.', 'send the right key.');
  }
  c.header('WWW-Authenticate', 'Bearer realm="loamtide readings"');
  const mend = 'Send "Authorization: Bearer KEY"; a key is made with: loamtide key new';
  return c.json({ problems: [{ where: 'the key', what: 'It is missing or not known.', mend }] }, 401);
}

function tooMany(c: Context, waitSeconds: number, what: string, then: string) {
  c.header('Retry-After', String(waitSeconds));
  return c.json({ problems: [{ where: 'the key', what, mend: `Wait ${waitSeconds} seconds, then ${then}` }] }, 429);
}

/** What is amiss between the fields of a body, whatever else is. */
function problemsAcross(sent: unknown): Problem[] {
  if (!isBody(sent)) return [];
  const where = 'the body';
  if (sent.tempC !== undefined && sent.tempF !== undefined)
    return [{ where: 'tempF', what: 'cannot be used.', mend: 'Give tempC or tempF, not both.' }];
  if (SIGNS.some((sign) => sent[sign] !== undefined && sent[sign] !== false)) return [];
  const mend = `Say something of the pile: ${SIGNS.slice(0, -1).join(', ')} or ${SIGNS.at(-1)}.`;
  return [{ where, what: 'cannot be used.', mend }];
}

function dayProblems(sent: unknown, { built }: Pile, today: Day): Problem[] {
  if (!isBody(sent) || typeof sent.on !== 'string' || !isDay(sent.on)) return [];
  return lookDayProblems(sent.on, built, today);
}

function isBody(sent: unknown): sent is Record<string, unknown> {
  return typeof sent === 'object' && sent !== null && !Array.isArray(sent);
}

function problemsOf({ issues }: z.ZodError): Problem[] {
  return issues.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys') {
      const mend = 'Leave it out.';
      return issue.keys.map((key) => ({ where: key.slice(0, 60), what: 'is not known here.', mend }));
    }
    return [{ where: issue.path.join('.') || 'the body', what: 'cannot be used.', mend: issue.message }];
  });
}

function readingOf({ tempC, tempF, on, at, moisture, smell, pests, slumped }: z.infer<typeof reading>, today: string) {
  const core = tempC ?? (tempF === undefined ? undefined : Math.round(celsius(tempF) * 10) / 10);
  return {
    on: on ?? today,
    ...(at === undefined ? {} : { at }),
    ...(core === undefined ? {} : { tempC: core }),
    ...(moisture === undefined ? {} : { moisture }),
    ...(smell === undefined ? {} : { smell }),
    ...(pests ? { pests: true as const } : {}),
    ...(slumped ? { slumped: true as const } : {}),
  };
}
