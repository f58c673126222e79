import { describe, expect, test } from 'vitest';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import type { Change, Clash, PlannedTask } from '../../../src/schedule/plan.ts';
import { stylesheetPath } from '../../../src/web/styles/stylesheet.ts';
import { weekPage } from '../../../src/web/week/week.tsx';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';
import { sampleChange, samplePlan, sampleTask } from '../sample-plan.ts';

describe('the first page', () => {
  test('leads to the garden', async () => {
    const { get } = await sampleApp();
    const answer = await get('/');
    expect([answer.status, answer.headers.get('location')]).toEqual([302, GARDEN]);
  });

  test('asks which garden where there are several', async () => {
    const { get, steward } = await sampleApp();
    const { garden, ...rest } = sampleFile();
    const file = checkGardenFile({ ...rest, garden: { ...garden, id: 'hill', name: 'Hill <plot>' } });
    await steward.importGarden({ file, prefer: 'reported' }, 'test');
    const text = await (await get('/')).text();
    expect(text).toContain('<a href="/gardens/mill-row">Mill Row</a>');
    expect(text).toContain('<a href="/gardens/hill">Hill &lt;plot&gt;</a>');
  });

  test('says how to bring a garden in when there is none', async () => {
    const { get } = await sampleApp(null);
    const answer = await get('/');
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('href="/bring-in"');
  });
});

describe('this week', () => {
  const dressing = sampleTask('topdress/bed:wall', '2027-04-25', {
    practice: 'topdressing',
    title: 'Topdress Wall bed',
    effortMinutes: 80,
    supplies: [
      { what: 'finished compost', amount: { value: 200, unit: 'L' }, also: '3 barrow loads' },
      { what: 'rake' },
    ],
    window: { earliest: '2027-04-20', preferred: '2027-04-25', latest: '2027-05-01' },
  });

  test('shows its days with practice, hours, title, what to have to hand, and the page of each task', async () => {
    const text = await weekOf([dressing]);
    expect(text).toContain('April 19 to 25, 2027');
    expect(text).toMatch(/<span class="weekday">Sunday<\/span><span class="number">25<\/span>/);
    expect(text).toMatch(
      /<svg class="pattern".*<\/svg><a href="\/handbook\/topdressing">Topdressing<\/a><\/span> <span class="effort">1 h 20 min<\/span>/,
    );
    expect(text).toContain(`href="${GARDEN}/tasks/topdress/bed:wall">Topdress Wall bed</a>`);
    expect(text).toContain('To hand: finished compost 7.1 cu ft (3 barrow loads); rake');
    expect(text).toContain('1 h 20 min to do, of the 5 h a week kept for the garden.');
  });

  test('marks today', async () => {
    const text = await weekOf([sampleTask('a', TODAY)]);
    expect(text).toMatch(/<section class="day today".*<span class="weekday">Today<\/span>/s);
    expect(await weekOf([dressing])).not.toContain('>Today<');
  });

  test('puts a check on a line of the work it rides with', async () => {
    const check = sampleTask('look', dressing.day, { weight: 'check', lotId: dressing.lotId, title: 'Look for buds' });
    const text = await weekOf([dressing, check]);
    expect(text).toContain(`Along the way: <a href="${GARDEN}/tasks/look">Look for buds</a>`);
    expect(text.match(/class="entry open"/g)).toHaveLength(1);
  });

  test('says when there is more to do than the household has hours', async () => {
    expect(await weekOf([{ ...dressing, effortMinutes: 310 }])).toContain('That is 10 min over');
    expect(await weekOf([{ ...dressing, effortMinutes: 300 }])).not.toContain('over:');
  });

  test('names what closes soon, and what next week holds', async () => {
    const text = withoutWhys(await weekOf([dressing, sampleTask('turn', '2027-05-01', { title: 'Turn the pile' })]));
    expect(text).toMatch(/Closing soon.*Turn the pile<\/a><span class="under">last day May 1, in 11 days/s);
    expect(text.split('Closing soon')[1]).not.toContain('Topdress Wall bed');
    expect(text).toMatch(/Next week.*Sat May 1<\/span> Turn the pile/s);
  });

  test('says under an entry until when, in what weather and why', async () => {
    const reason = { rule: 'schedule.pinned', saw: { day: '2028-01-02' }, source: "the garden's own plan" } as const;
    const text = await weekOf([{ ...dressing, needs: ['dry-day'], reasons: [reason] }]);
    expect(text).toContain('<p class="leeway">Any day to May 1; needs a dry day.</p>');
    expect(text).toContain('<p class="first-reason">You pinned it to January 2, 2028.</p>');
  });

  test('says no more of what is done, and only why and what closed of what is late', async () => {
    const reasons = [{ rule: 'schedule.unpinned', saw: {}, source: "the garden's own plan" } as const];
    const done = await weekOf([{ ...dressing, state: 'done', reasons }]);
    expect(done).not.toMatch(/leeway|first-reason/);
    const late = await weekOf([{ ...dressing, state: 'lapsed', reasons }]);
    expect(late.match(/leeway/g)).toHaveLength(1);
    expect(late).toContain('<p class="leeway">Its window closed May 1.');
    expect(late).toContain('It is no longer pinned.');
  });

  test('has a box to tick on paper for what is to do, and none for what is done or lost', async () => {
    const boxes = async (change: Parameters<typeof sampleTask>[2]) =>
      (await weekOf([sampleTask('a', TODAY, change)])).match(/class="tick"/g)?.length ?? 0;
    expect(await boxes({})).toBe(1);
    expect(await boxes({ state: 'lapsed', ifMissed: 'still do' })).toBe(1);
    expect(await boxes({ state: 'lapsed', ifMissed: 'drop' })).toBe(0);
    expect(await boxes({ state: 'done' })).toBe(0);
  });

  test('strikes through what is done and counts it apart', async () => {
    const text = await weekOf([dressing, sampleTask('a', TODAY, { state: 'done' })]);
    expect(text).toContain('<li class="entry done">');
    expect(text).toContain('1 h 20 min to do, 30 min done,');
  });

  test('says what lapsed and what happens now', async () => {
    const window = { earliest: '2027-03-01', preferred: '2027-04-01', latest: '2027-04-17' };
    const text = await weekOf([sampleTask('a', TODAY, { state: 'lapsed', window })]);
    expect(text).toContain('<p class="leeway">Its window closed April 17. What to do about a.</p>');
    expect(text).not.toContain('<section class="missed">');
    expect(text).toContain('<span class="standing">late</span>');
  });

  test('tells what moved and why, and what is new', async () => {
    const moved = sampleChange('a', 'moved', '2027-04-21', '2027-04-24');
    const because = [{ rule: 'schedule.pinned', saw: { day: '2027-04-24' }, source: "the garden's own plan" as const }];
    const text = await weekOf(
      [sampleTask('a', '2027-04-24'), sampleTask('b', '2027-04-24')],
      [{ ...moved, because }, sampleChange('b', 'added', undefined, '2027-04-24'), sampleChange('c', 'dropped', TODAY)],
    );
    expect(withoutWhys(text)).toMatch(
      /What moved and why.*Do a: from April 21 to April 24\..*You pinned it to April 24\./s,
    );
    expect(text).toContain('Do c: off the plan; it stood on April 20.');
    expect(withoutWhys(text)).toMatch(/<summary>New in the plan: 1<\/summary>.*Do b: on April 24\./s);
  });

  test('names work that does not fit', async () => {
    const clash = { key: 'a', title: 'Do a', what: 'Its window closes on ⟦2027-04-22⟧.' };
    expect(await weekOf([], [], [clash])).toMatch(/Does not fit.*Do a.*Its window closes on April 22\./s);
  });

  test('that is empty says what comes next', async () => {
    const text = await weekOf([sampleTask('a', '2027-06-02')]);
    expect(text).toContain('Nothing asks for you in this week.');
    expect(text).toContain(`Next comes <a href="${GARDEN}?week=2027-06-02">Wednesday, June 2</a>: Do a.`);
    expect(text).not.toContain('The plan is empty.');
  });

  test('of an empty plan says where tasks come from', async () => {
    expect(await weekOf([])).toContain('The plan is empty. Tasks come from beds with crops and covers, and from piles');
  });
});

/** The page of the week of {@link TODAY}, with a plan made by hand. */
async function weekOf(tasks: readonly PlannedTask[], changes: readonly Change[] = [], clashes: readonly Clash[] = []) {
  const { steward } = await sampleApp();
  const view = { ...(await steward.view('mill-row')), plan: { ...samplePlan(tasks, changes), clashes } };
  return String(await weekPage(view, TODAY));
}

test('the week of a real plan holds every entry the plan has in it', async () => {
  const { get, steward } = await sampleApp();
  const { entries } = (await steward.view('mill-row')).plan;
  const inWeek = entries.filter(({ day }) => day >= '2027-04-19' && day <= '2027-04-25');
  expect(inWeek.length).toBeGreaterThan(2);
  const text = await (await get(GARDEN)).text();
  expect(text.match(/<li class="entry /g)).toHaveLength(inWeek.length);
  expect(text).not.toMatch(/[⟦⟧]/);
});

describe('another week', () => {
  test('is shown by any of its days, with the way back', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${GARDEN}?week=2027-05-01`)).text();
    expect(text).toContain('April 26 to May 2, 2027');
    expect(text).toContain(`<a href="${GARDEN}?week=2027-04-19">The week before</a>`);
    expect(text).toContain(`<a href="${GARDEN}?week=2027-05-03">The week after</a>`);
    expect(withoutWhys(text)).toMatch(/Closing soon.*last day [A-Z][a-z]+ \d+, in \d+ days/s);
    expect(text).not.toContain('What moved');
  });

  test('of the past tells of no window that closes', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}?week=2027-04-05`)).text()).not.toContain('Closing soon');
  });

  test.each(['soon', '2027-02-29', '2040-01-01', '0000-01-01', ''])('%s is refused with the mend', async (week) => {
    const { get } = await sampleApp();
    const answer = await get(`${GARDEN}?week=${week}`);
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain('Give a day such as 2027-04-20.');
  });

  test('leads no further than the plan reaches', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${GARDEN}?week=2028-05-24`)).text();
    expect(text).not.toContain('The week after</a>');
    expect(text).toContain('The week before</a>');
  });
});

test('a page that is not there says so, and so does one of a garden that is not there', async () => {
  const { get } = await sampleApp();
  for (const path of ['/nowhere', '/gardens/elsewhere', '/gardens/elsewhere/feeds', '/gardens/mill-row/nowhere']) {
    const answer = await get(path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('There is no such page');
  }
});

test('the stylesheet is served under an address that changes with it', async () => {
  const { get } = await sampleApp();
  expect(await (await get(GARDEN)).text()).toContain(`href="${stylesheetPath}"`);
  const answer = await get(stylesheetPath);
  expect(answer.headers.get('content-type')).toBe('text/css; charset=utf-8');
  expect(await answer.text()).toContain('@media print');
});
