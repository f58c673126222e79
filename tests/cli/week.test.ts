import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { isDay } from '../../src/measures/days.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';
import { overloadShape } from './overload-shape.ts';

const day = z.string().refine(isDay);
const briefDay = z.strictObject({ day, titles: z.array(z.string()) });
const changeShape = z.strictObject({
  kind: z.enum(['moved', 'dropped', 'added']),
  keys: z.array(z.string()),
  titles: z.array(z.string()),
  from: day.optional(),
  to: day.optional(),
  because: z.array(z.string()),
});

/** The shape docs/commands.md promises, written out anew. */
const weekOutput = z.strictObject({
  garden: z.string(),
  timeZone: z.string(),
  today: day,
  monday: day,
  sunday: day,
  person: z.string().optional(),
  openMinutes: z.number(),
  doneMinutes: z.number(),
  keptMinutes: z.number(),
  householdMinutes: z.number(),
  days: z.array(
    z.strictObject({
      day,
      entries: z.array(
        z.strictObject({
          lotId: z.string(),
          title: z.string(),
          state: z.enum(['open', 'done', 'lapsed']),
          effortMinutes: z.number(),
          whose: z.string().optional(),
          tasks: z.array(z.looseObject({ key: z.string(), title: z.string(), day, window: z.object({ latest: day }) })),
        }),
      ),
    }),
  ),
  supplies: z.array(z.looseObject({ what: z.string() })),
  toGet: z.array(z.looseObject({ what: z.string() })),
  closing: z.array(
    z.strictObject({ keys: z.array(z.string()), day, title: z.string(), latest: day, daysLeft: z.number() }),
  ),
  changes: z.array(changeShape),
  laterChanges: z.array(changeShape),
  lapsed: z.array(z.strictObject({ key: z.string(), title: z.string(), latest: day, missedNote: z.string() })),
  triage: z.strictObject({
    lines: z
      .array(
        z.strictObject({
          keys: z.array(z.string()),
          title: z.string(),
          latest: day,
          ifMissed: z.enum(['still do', 'replace', 'drop']),
          missedNote: z.string(),
        }),
      )
      .max(7),
    more: z.number(),
  }),
  away: z.array(z.strictObject({ from: day, to: day })),
  unknown: z.array(z.string()),
  clashes: z.array(z.strictObject({ key: z.string(), title: z.string(), what: z.string() })),
  overloads: z.array(overloadShape),
  next: z.array(briefDay),
  comes: briefDay.optional(),
});

const MEMBERS = `household:
  people: 2
  members:
    - { name: Ann, practices: [composting] }
    - { name: Bo, practices: [frost-watch] }
`;

describe('week', () => {
  test('is the week of today, unless another is named', async () => {
    const { loamtide } = await withGarden();
    expect((await loamtide('week')).out).toContain('Week of April 12 to 18, 2027');
    expect((await loamtide('week', '--today', '2027-04-19')).out).toContain('Week of April 19 to 25, 2027');
    expect((await loamtide('week', '--week', '2026-12-31')).out).toContain(
      'Week of December 28, 2026 to January 3, 2027',
    );
  });

  test('as text holds the titles of its tasks and the last day of each window', async () => {
    const { loamtide } = await withGarden();
    const { code, out } = await loamtide('week', '--today', '2027-05-03');
    expect(code).toBe(0);
    expect(out).toMatch(/\[ \] Turn the pile in Left bay \(\d+ min\)\n {6}Last day May \d+\./);
    expect(out).not.toMatch(/[⟦⟧]/);
  });

  test('as JSON has the promised shape and the same tasks', async () => {
    const { loamtide } = await withGarden();
    const { out } = await loamtide('week', '--today', '2027-05-03', '--format', 'json');
    const week = weekOutput.parse(JSON.parse(out));
    expect(week).toMatchObject({ garden: 'hollow-lane', today: '2027-05-03', monday: '2027-05-03', keptMinutes: 240 });
    const titles = week.days.flatMap(({ entries }) => entries.map(({ title }) => title));
    expect(titles).toContain('Turn the pile in Left bay');
    expect(out).not.toMatch(/[⟦⟧]/);
  });

  test('names the weeks that want more than their hours, in text and as JSON', async () => {
    const { loamtide } = await withGarden(
      SMALL_GARDEN.replace(/^(\s*)units:.*$/m, '$&\n$1hoursPerWeek: 0.5').replaceAll('widthM: 1.2', 'widthM: 12'),
    );
    const { out } = await loamtide('week', '--today', '2027-05-03', '--format', 'json');
    const { overloads } = weekOutput.parse(JSON.parse(out));
    expect(overloads[0]).toMatchObject({ givenMinutes: 30 });
    const text = (await loamtide('week', '--today', '2027-05-03')).out;
    expect(text).toMatch(/More than the hours\n {2}Week of [A-Z][a-z]+ \d+: .* wanted, 30 min given\./);
    expect(out + text).not.toMatch(/[⟦⟧]/);
  });

  test('as HTML is a whole document of the same week', async () => {
    const { loamtide } = await withGarden();
    const { out } = await loamtide('week', '--today', '2027-05-03', '--format', 'html');
    expect(out).toMatch(/^<!DOCTYPE html>\n<html lang="en">.*Turn the pile in Left bay.*<\/html>\n$/s);
    expect(out).not.toMatch(/href=|[⟦⟧]/);
  });

  test('is one member’s own where a person is named, in any case', async () => {
    const { loamtide } = await withGarden(SMALL_GARDEN + MEMBERS);
    const { out } = await loamtide('week', '--today', '2027-05-03', '--person', 'ann');
    expect(out).toContain('Hollow Lane, for Ann\n');
    expect(out).toContain('Turn the pile in Left bay');
    const json = (await loamtide('week', '--today', '2027-05-03', '--person', 'Bo', '--format', 'json')).out;
    const week = weekOutput.parse(JSON.parse(json));
    expect(week).toMatchObject({ person: 'Bo', openMinutes: 0 });
    expect(week.householdMinutes).toBeGreaterThan(0);
    const all = weekOutput.parse(JSON.parse((await loamtide('week', '--today', '2027-05-03', '--format', 'json')).out));
    expect(all.days.flatMap(({ entries }) => entries.map(({ whose }) => whose))).toContain('For Ann.');
  });

  test('refuses somebody who is no member, with the names that are near or all there are', async () => {
    const { loamtide } = await withGarden(SMALL_GARDEN + MEMBERS);
    const { code, out, err } = await loamtide('week', '--person', 'Annn');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('Nobody called "Annn" is in the household.');
    expect(err).toContain('Ann');
    const alone = await withGarden();
    expect((await alone.loamtide('week', '--person', 'Ann')).err).toContain('Name members in the garden file first.');
  });
});
