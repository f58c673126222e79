import { describe, expect, test } from 'vitest';
import { weekList } from '../../../src/digest/week-list.ts';
import { weekSheet } from '../../../src/digest/week-sheet.ts';
import type { PlannedTask } from '../../../src/schedule/plan.ts';
import { weekSheetPage } from '../../../src/web/week/week-sheet.tsx';
import { plain } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';
import { samplePlan, sampleTask } from '../sample-plan.ts';

const SHEET = `${GARDEN}/week-sheet`;
const HOUSEHOLD = {
  household: { people: 2, members: [{ name: 'Ann & <Bo>', practices: ['composting'] }, { name: 'Cy' }] },
};

/** The sheet of the week of {@link TODAY}, with a plan made by hand. */
async function sheetOf(tasks: readonly PlannedTask[]): Promise<string> {
  const { steward } = await sampleApp();
  const { garden } = await steward.view('mill-row');
  const list = weekList(samplePlan(tasks), garden, TODAY);
  return String(await weekSheetPage({ garden, list, sheet: weekSheet(list, 'us') }));
}

describe('the sheet of a week', () => {
  test('has a box to tick for what is to do, the drawing and the word of its practice, and what can hurt', async () => {
    const done = sampleTask('b', TODAY, { state: 'done' });
    const html = await sheetOf([sampleTask('a', TODAY, { cautions: ['Blades: gloves on.'] }), done]);
    expect(html.match(/class="tick"/g)).toHaveLength(1);
    expect(html).toMatch(/<svg class="pattern".*<\/svg>Cover crops<\/span> <span class="effort">30 min/);
    expect(plain(html)).toContain('Do a Last day April 20. Take care. Blades: gloves on.');
  });

  test('has a line to write on for what was really used, with what was planned', async () => {
    const dressing = (bed: string, litres: number) =>
      sampleTask(`topdress/${bed}`, TODAY, {
        lotId: 'dress',
        subject: { type: 'bed', id: bed, name: `${bed} bed` },
        makes: [{ makes: 'bed-topdressed', bedId: bed, litres }],
      });
    const text = plain(await sheetOf([dressing('wall', 56.6), dressing('north', 28.3)]));
    expect(text).toContain('Really used: Compost, wall bed cu ft (2 planned) Compost, north bed cu ft (1 planned)');
    expect(plain(await sheetOf([sampleTask('a', TODAY)]))).not.toContain('Really used');
  });

  test('of a real plan holds every entry of its week, and the way to it stands on the page of the week', async () => {
    const { get } = await sampleApp();
    const html = await (await get(`${SHEET}?week=2027-04-25`)).text();
    const week = await (await get(GARDEN)).text();
    expect(html.match(/<li class="entry /g)?.length).toBe(week.match(/<li class="entry /g)?.length);
    expect(html).not.toMatch(/[⟦⟧]/);
    expect(week).toContain(`<a href="${SHEET}?week=2027-04-19">Print this week</a>`);
  });
});

describe('one member of the household', () => {
  test('has a week and a sheet of their own, chosen by name', async () => {
    const { get } = await sampleApp(sampleFile(HOUSEHOLD));
    const query = '?week=2027-04-19&amp;person=Ann+%26+%3CBo%3E';
    expect(await (await get(SHEET)).text()).toContain(`<a href="${SHEET}${query}">Ann &amp; &lt;Bo&gt;</a>`);
    const own = await (await get(`${SHEET}${query.replace('&amp;', '&')}`)).text();
    expect(own).toMatch(/<h1>Week of April 19 to 25, 2027, for Ann &amp; &lt;Bo&gt;<\/h1>/);
    const week = await (await get(`${GARDEN}?person=Ann+%26+%3CBo%3E`)).text();
    expect(week).toContain('>This week, for Ann &amp; &lt;Bo&gt; <');
    expect(week).toContain('Turn the pile in Left bay');
    expect(week).not.toMatch(/practice-(topdressing|planting|cover-cropping)/);
  });

  test('with nobody named, nobody is chosen between', async () => {
    const { get } = await sampleApp();
    expect(await (await get(SHEET)).text()).not.toContain('Everybody');
    expect(await (await get(GARDEN)).text()).not.toContain('Everybody');
  });

  test('who is not there is refused with the names that are, on the page and on the sheet', async () => {
    const { get } = await sampleApp(sampleFile(HOUSEHOLD));
    for (const path of [GARDEN, SHEET]) {
      const answer = await get(`${path}?person=Dot`);
      expect(answer.status).toBe(404);
      const text = plain(await answer.text());
      expect(text).toContain('Nobody called "Dot" is in the household. Give one of Ann &amp; &lt;Bo&gt;, Cy.');
    }
  });

  test('a wrong week and a wrong name are told together', async () => {
    const { get } = await sampleApp();
    const answer = await get(`${SHEET}?week=soon&person=Dot`);
    expect(answer.status).toBe(400);
    const text = plain(await answer.text());
    expect(text).toContain('week: "soon" is not a date. Give a day such as 2027-04-20.');
    expect(text).toContain('Leave it out: no members are named yet.');
  });
});
