import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { isDay } from '../../src/measures/days.ts';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { openedIn } from './household.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';
import { overloadShape } from './overload-shape.ts';

const day = z.string().refine(isDay);
const named = { id: z.string(), name: z.string() };
const amount = z.strictObject({ value: z.number(), unit: z.enum(['mm', 'cm', 'm', 'm2', 'L', 'g', 'kg', 'gPerM2']) });

/** The shape docs/commands.md promises, written out anew: a key more or less is a broken promise. */
const planOutput = z.strictObject({
  garden: z.string(),
  today: day,
  tasks: z.array(
    z.strictObject({
      key: z.string(),
      title: z.string(),
      day,
      state: z.enum(['open', 'done', 'skipped', 'lapsed']),
      practice: z.string(),
      kind: z.string(),
      job: z.strictObject({ id: z.string(), title: z.string() }),
      subject: z.discriminatedUnion('type', [
        z.strictObject({ type: z.literal('bed'), ...named }),
        z.strictObject({
          type: z.enum(['stand', 'planting']),
          ...named,
          bedId: z.string(),
          grows: z.string(),
          bedName: z.string(),
        }),
        z.strictObject({ type: z.literal('pile'), ...named, binId: z.string() }),
        z.strictObject({ type: z.literal('garden'), ...named }),
      ]),
      weight: z.enum(['work', 'deadline', 'check']),
      steps: z.array(z.string()),
      cautions: z.array(z.string()),
      supplies: z.array(z.strictObject({ what: z.string(), amount: amount.optional(), also: z.string().optional() })),
      window: z.strictObject({ earliest: day, preferred: day, latest: day }),
      ifMissed: z.enum(['still do', 'replace', 'drop']),
      missedNote: z.string(),
      minder: z.string().optional(),
      yieldNote: z.string().optional(),
      effortMinutes: z.number(),
      onceMinutes: z.number().optional(),
      at: z.strictObject({ from: z.string(), minutes: z.number() }).optional(),
      needs: z.array(z.enum(['soil-fit', 'dry-day', 'above-freezing', 'before-sunset', 'calm-day'])),
      after: z.array(
        z.strictObject({
          key: z.string(),
          minDays: z.number(),
          maxDays: z.number().optional(),
          yields: z.literal(true).optional(),
        }),
      ),
      confidence: z.enum(['recorded', 'modelled', 'derived', 'assumed']),
      odds: z.looseObject({ shareOfYears: z.number(), years: z.number() }).optional(),
      oddsOf: z.string().optional(),
      pinned: z.boolean(),
      pinWarning: z.string().optional(),
      lotId: z.string(),
      sequence: z.number(),
      changedAt: z.iso.datetime(),
      reasons: z
        .array(
          z.strictObject({
            rule: z.string(),
            saw: z.record(z.string(), z.union([z.number(), z.string()])),
            limit: z.union([z.number(), day]).optional(),
            source: z.string(),
            text: z.string(),
          }),
        )
        .min(1),
    }),
  ),
  overloads: z.array(overloadShape),
});

describe('plan as JSON', () => {
  test('has the promised shape, nothing more and nothing less', async () => {
    const { loamtide } = await withGarden();
    const { code, out } = await loamtide('plan', '--format', 'json');
    const { garden, today, tasks } = planOutput.parse(JSON.parse(out));
    expect({ code, garden, today }).toEqual({ code: 0, garden: 'hollow-lane', today: '2027-04-18' });
    expect(tasks.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['turn-pile', 'topdress']));
  });

  test('writes texts in the units of the garden and keeps amounts SI', async () => {
    const { loamtide } = await withGarden();
    const { out } = await loamtide('plan', '--format', 'json');
    expect(out).not.toMatch(/[⟦⟧]/);
    const { tasks } = planOutput.parse(JSON.parse(out));
    const topdress = tasks.find(({ key }) => key === 'topdress/bed:south-bed/2027');
    expect(topdress?.steps[0]).toMatch(/cu ft of finished compost over the bed, ½ in deep/);
    expect(topdress?.supplies[0]).toMatchObject({ what: 'finished compost', amount: { unit: 'L' } });
  });

  test('says the same in metres and litres for a metric garden', async () => {
    const { loamtide } = await withGarden(SMALL_GARDEN.replace('units: us', 'units: metric'));
    const { tasks } = planOutput.parse(JSON.parse((await loamtide('plan', '--format', 'json')).out));
    const topdress = tasks.find(({ key }) => key === 'topdress/bed:south-bed/2027');
    expect(topdress?.steps[0]).toMatch(/L of finished compost over the bed, 13 mm deep/);
  });

  test('is the same, byte for byte, when asked again', async () => {
    const { loamtide } = await withGarden();
    const ask = () => loamtide('plan', '--format', 'json', '--today', '2027-06-01');
    expect(await ask()).toEqual(await ask());
  });
});

describe('a span of days', () => {
  test('keeps to its first and last day, both included', async () => {
    const { loamtide } = await withGarden();
    const all = planOutput.parse(JSON.parse((await loamtide('plan', '--format', 'json')).out)).tasks;
    const [from, to] = [all[1]?.day ?? '', all.at(-2)?.day ?? ''];
    const { out } = await loamtide('plan', '--from', from, '--to', to, '--format', 'json');
    const days = planOutput.parse(JSON.parse(out)).tasks.map((task) => task.day);
    expect(days).toEqual(all.map((task) => task.day).filter((each) => each >= from && each <= to));
    expect(new Set(days)).toContain(from);
    expect(new Set(days)).toContain(to);
  });

  test('that ends before it begins is refused', async () => {
    const { loamtide } = await withGarden();
    const { code, err } = await loamtide('plan', '--from', '2027-06-01', '--to', '2027-05-31');
    expect(code).toBe(2);
    expect(err).toContain('--to: "2027-05-31" lies before 2027-06-01.');
  });

  test('with nothing on it says so', async () => {
    const { loamtide } = await withGarden();
    const { out } = await loamtide('plan', '--from', '2027-12-24', '--to', '2027-12-24');
    expect(out).toBe('Hollow Lane\nDecember 24, 2027 to December 24, 2027\n\nNothing is planned on these days.\n');
  });
});

test('plan as text tells the same entries by month, each title whole', async () => {
  const { folder, loamtide } = await withGarden();
  const { out } = await loamtide('plan');
  const text = out.replace(/\s+/g, ' ');
  const entries = await openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).plan.entries);
  const shown = entries.filter((entry) => entry.day >= '2027-04-18' && entry.day <= '2028-04-18');
  expect(shown.length).toBeGreaterThan(4);
  for (const { title } of shown) expect(text).toContain(title);
  expect(out).toMatch(/^May 2027$/m);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('plan as ics is the feed, event for entry', async () => {
  const { folder, loamtide } = await withGarden();
  const { code, out } = await loamtide('plan', '--format', 'ics');
  expect(code).toBe(0);
  const { plan, body } = await openedIn(folder, async ({ steward }) => {
    const feed = await steward.addFeed('hollow-lane', 'Everything');
    return { plan: (await steward.view('hollow-lane')).plan, body: (await steward.feedBody(feed.token))?.body };
  });
  expect(out).toBe(body);
  expect(seenByIcalJs(out).map(({ day, title }) => [day, title])).toEqual(
    expect.arrayContaining(plan.entries.filter((row) => row.day <= '2028-04-18').map((row) => [row.day, row.title])),
  );
});

describe('standing on another day', () => {
  test('shows its plan and publishes nothing', async () => {
    const { folder, loamtide } = await withGarden();
    const published = () => openedIn(folder, ({ store }) => store.plan('hollow-lane'));
    const before = await published();
    const { out } = await loamtide('plan', '--today', '2027-09-01', '--format', 'json');
    expect(planOutput.parse(JSON.parse(out)).today).toBe('2027-09-01');
    expect(await published()).toEqual(before);
  });

  test('the day after the last, too: a leap day', async () => {
    const { loamtide } = await withGarden();
    const { code, out } = await loamtide('plan', '--today', '2028-02-29');
    expect(code).toBe(0);
    expect(out).toContain('February 29, 2028 to March 1, 2029');
  });
});
