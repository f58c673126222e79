import { describe, expect, it } from 'vitest';
import { applyFact } from '../../../src/garden/apply-fact.ts';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays } from '../../../src/measures/days.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

function starting(parts: Parameters<typeof garden>[0], key: string, over = climate) {
  return draft(draftsIn(garden(parts), over), key);
}

const sowing = (cropId: string, day: string, over = climate) =>
  starting({ plantings: [sown(cropId, day)] }, 'sow/planting:', over);
const settingOut = (cropId: string, day: string, over = climate) =>
  starting({ plantings: [setOut(cropId, day)] }, 'set-out/planting:', over);

describe('the planned day', () => {
  it('is the preferred one where it lies in the season, and opens a week ahead', () => {
    const { window, title, job, makes, needs } = sowing('carrot', '2027-05-20');
    // 9.7 weeks before 1 October is 25 July (67.9 days).
    expect(window).toEqual({ earliest: '2027-05-13', preferred: '2027-05-20', latest: '2027-07-25' });
    expect([title, job.title]).toEqual(['Sow carrot in Bed A', 'Sow outdoors']);
    expect(makes).toEqual([{ makes: 'planting-started', plantingId: 'carrot-2027-05-20' }]);
    expect(needs).toEqual(['soil-fit']);
  });

  it('is pulled in where it is too early, and the task says so first', () => {
    const { window, steps, reasons } = settingOut('tomato', '2027-05-05');
    expect(window).toMatchObject({ earliest: '2027-05-24', preferred: '2027-05-24' });
    expect(steps[0]).toContain('Your plan has the tomato on ⟦2027-05-05⟧, which this climate does not bear out');
    expect(reasons[0] && reasonSentence(reasons[0])).toBe(
      'Your plan has the tomato on ⟦2027-05-05⟧, outside its season here; the nearest day in it is ⟦2027-05-24⟧.',
    );
  });

  it('is pulled in where it is too late', () => {
    const { window, reasons } = sowing('cucumber', '2027-08-01');
    // 11.6 weeks before 1 October.
    expect(window).toEqual({ earliest: '2027-07-05', preferred: '2027-07-12', latest: '2027-07-12' });
    expect(reasons[0]?.rule).toBe('plant.pulled-in');
  });

  it('is asked after where no season is near it', () => {
    const drafts = draftsIn(garden({ plantings: [setOut('tomato', '2027-11-01')] }), climate);
    expect(drafts.filter(({ key }) => key.startsWith('set-out/'))).toEqual([]);
    const again = draft(drafts, 'mend-date/planting:');
    expect(again.title).toBe('Change the planned day: tomato in Bed A');
    expect(again.window.latest).toBe('2027-11-01');
    expect(again.reasons[0] && reasonSentence(again.reasons[0])).toContain('goes in here from');
  });

  it('counts alone where no freeze date is known', () => {
    const { window, reasons } = sowing('carrot', '2027-05-20', inventedClimate());
    expect(window).toEqual({ earliest: '2027-05-13', preferred: '2027-05-20', latest: '2027-06-03' });
    expect(reasons.map(({ rule }) => rule)).toEqual(['plant.planned', 'plant.no-dates']);
  });

  it('of garlic planned in October lies in its window after New Year as little as before it', () => {
    const { window, job } = sowing('garlic', '2027-10-25');
    expect(window).toEqual({ earliest: '2027-10-22', preferred: '2027-10-25', latest: '2027-10-29' });
    expect(job.title).toBe('Plant garlic');
  });

  it('may be 29 February', () => {
    const mild = frostDates('03-25', '11-20');
    const parts = { startedOn: '2027-11-01', plantings: [sown('pea', '2028-02-29')] };
    expect(starting(parts, 'sow/', mild).window.preferred).toBe('2028-02-29');
  });
});

describe('late sowings', () => {
  it('are late from the preferred last day, and say until when they may be', () => {
    const { reasons } = sowing('radish', '2027-09-03');
    expect(reasons.map(({ rule }) => rule)).toContain('plant.late');
    expect(sowing('radish', '2027-08-10').reasons.map(({ rule }) => rule)).not.toContain('plant.late');
  });

  it('are for early kinds in the last three weeks', () => {
    expect(sowing('sweet-corn', '2027-06-20').steps.join(' ')).toContain('Choose an early kind of sweet corn');
    expect(sowing('sweet-corn', '2027-05-25').steps.join(' ')).not.toContain('early kind');
  });

  it('name what can be sown when they are lost, of another family', () => {
    const { missedNote, ifMissed } = sowing('carrot', '2027-07-10');
    expect(ifMissed).toBe('replace');
    expect(missedNote).toBe(
      'Too late for carrot here: sown or set later it would not be ready in time. What can still be sown then: radish ' +
        '(until ⟦2027-09-08⟧) or turnip (until ⟦2027-08-31⟧); or give the bed a cover.',
    );
  });

  it('name a cover where nothing can be sown any more', () => {
    expect(sowing('garlic', '2027-10-25').missedNote).toContain('Give the bed a cover, or a blanket of leaves');
  });

  it('wait for cooler soil where seed fails in heat: spinach above 24 °C (agro:S44)', () => {
    const warm = [9, 11, 15, 19, 24, 28, 31, 30, 25, 19, 13, 9];
    const hot = inventedClimate({
      ...frostDates('03-20', '11-15'),
      normals: { tmaxC: warm.map((tempC) => tempC + 5), tminC: warm.map((tempC) => tempC - 5) },
    });
    const { window, reasons } = sowing('spinach', '2027-08-25', hot);
    expect(window.preferred > '2027-08-25').toBe(true);
    expect(window.earliest).toBe(window.preferred);
    expect(reasons.map(({ rule }) => rule)).toContain('plant.hot-soil');
  });
});

describe('the bed', () => {
  it('must be free of the crop before, and cleared', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' }),
      setOut('broccoli', '2027-06-22', { harvested: '2027-09-15' }),
    ];
    const task = starting({ plantings }, 'set-out/planting:broccoli');
    expect(task.window.earliest).toBe('2027-06-20');
    expect(task.after.map(({ key }) => key)).toContain('bed-clear/planting:lettuce-leaf-2027-05-01');
  });

  it('is shared with a crop that overlaps: neither waits for the other, and no amounts are guessed', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' }),
      setOut('tomato', '2027-05-28', { harvested: '2027-09-20' }),
    ];
    const task = starting({ plantings }, 'set-out/planting:tomato');
    expect(task.window.earliest).toBe('2027-05-24');
    expect(task.supplies.map(({ what }) => what)).toEqual(['tomato plants', 'trowel']);
  });

  it('leaves the shortest time to ripen before what follows', () => {
    const plantings = [sown('lettuce-leaf', '2027-05-05'), setOut('broccoli', '2027-07-30')];
    const task = starting({ plantings }, 'sow/planting:lettuce');
    // 40 days before 30 July.
    expect(task.window.latest).toBe('2027-06-20');
    expect(rulesOf(task)).toContain('plant.must-ripen');
  });

  it('with a cover in it waits for the planned day and for the cut that was timed for it', () => {
    const parts = { plantings: [setOut('tomato', '2027-06-05')], stands: [cover('cereal_rye', '2026-09-20')] };
    const task = starting(parts, 'set-out/planting:');
    expect(task.window.earliest).toBe('2027-06-05');
    expect(task.after.map(({ key }) => key)).toContain('cover-cut/stand:s');
    const cut = draft(draftsIn(garden(parts), climate), 'cover-cut/');
    expect(addDays(cut.window.latest, 14) <= task.window.earliest).toBe(true);
  });

  it('whose cover was cut late keeps the wait: 14 days after rye for plants, 21 for small seed', () => {
    const stands = [cover('cereal_rye', '2026-09-20', { cutOn: '2027-05-30' })];
    const startedOn = '2027-06-01';
    const plants = starting({ startedOn, stands, plantings: [setOut('tomato', '2027-06-05')] }, 'set-out/');
    expect(plants.window.earliest).toBe('2027-06-13');
    expect(rulesOf(plants)).toContain('plant.after-cut');
    const seed = starting({ startedOn, stands, plantings: [sown('beet', '2027-06-05')] }, 'sow/');
    expect(seed.window.earliest).toBe('2027-06-20');
  });

  it('is dressed with compost first, in spring and before garlic, and in spring its soil is squeezed', () => {
    const spring = starting({ plantings: [sown('carrot', '2027-05-20')] }, 'sow/');
    const waits = spring.after.map(({ key }) => key);
    expect(waits).toContain('topdress/bed:a/2027');
    expect(waits).toContain('squeeze-test/soil:loam/2027/1');
    const garlic = starting({ plantings: [sown('garlic', '2027-10-25')] }, 'sow/');
    expect(garlic.after.map(({ key }) => key)).toContain('topdress/bed:a/2028/before-winter');
    const summer = starting({ plantings: [sown('beet', '2027-07-10')] }, 'sow/');
    expect(summer.after).toEqual([]);
  });
});

describe('a disease found in the bed', () => {
  const diseases = [{ bedId: 'a', cropId: 'cabbage', disease: 'clubroot', on: '2026-08-01' }];
  const kinds = (parts: Parameters<typeof garden>[0]) =>
    draftsIn(garden({ diseases, ...parts }), climate).map(({ kind }) => kind);

  it('keeps a host out: nothing is raised or sown until the plan is settled again', () => {
    const found = kinds({ plantings: [setOut('broccoli', '2027-05-01')] });
    expect(found).not.toContain('set-out');
    expect(found).not.toContain('start-indoors');
    expect(found).toContain('plan-again');
  });

  it('lets others in, and names no host in their stead', () => {
    const task = starting({ diseases, plantings: [sown('carrot', '2027-07-10')] }, 'sow/');
    expect(task.missedNote).not.toMatch(/radish|turnip|kale|arugula/);
  });
});

describe('amounts', () => {
  it('are rows and plants by the printed spacing', () => {
    // 2.5 × 1.2 m: broccoli 24–30 × 24–36 inches is a plant every 68.6 cm in rows 61 cm apart: 1 row of 3.
    const broccoli = settingOut('broccoli', '2027-05-01');
    expect(broccoli.supplies[0]?.what).toBe('3 broccoli plants');
    // 5 minutes to begin and one a plant.
    expect(broccoli.effortMinutes).toBe(8);
    // Carrots 2–3 × 12–18 inches: 3 rows of 2.5 m, five minutes for each 3 m.
    const carrot = sowing('carrot', '2027-05-20');
    expect(carrot.supplies[0]).toEqual({ what: 'carrot seed, for rows of', amount: { value: 7.5, unit: 'm' } });
    expect(carrot.effortMinutes).toBe(18);
    expect(carrot.steps.join(' ')).toContain('The bed takes 3 rows, ⟦30 cm⟧ apart, one plant every ⟦6 cm⟧');
  });

  it('are 3 minutes a square metre for garlic, with its own depth and distance (veg:V41, veg:V42)', () => {
    const garlic = sowing('garlic', '2027-10-25');
    expect(garlic.effortMinutes).toBe(14);
    expect(garlic.steps.join(' ')).toContain('⟦5 cm⟧ to ⟦7.5 cm⟧ deep and ⟦10 cm⟧ to ⟦15 cm⟧ apart');
  });
});

describe('what was done', () => {
  const before = garden({ plantings: [setOut('tomato', '2027-05-28')] });
  const task = draft(draftsIn(before, climate), 'set-out/');
  const done: Garden = applyFact(before, {
    entry: 1,
    recordedAt: '2027-05-30T10:00:00.000Z',
    recordedOn: '2027-05-30',
    by: 'test',
    fact: {
      kind: 'tasks-done',
      on: '2027-05-30',
      tasks: [{ ...task, taskKind: task.kind, makes: [...task.makes] }],
    },
  });

  it('starts the crop on its day, and asks for nothing that lies before it', () => {
    expect(done.plantings[0]?.start).toEqual({
      how: 'set-out',
      day: '2027-05-30',
      happened: true,
      meant: '2027-05-28',
    });
    const kinds = draftsIn(done, climate)
      .filter(({ practice }) => practice === 'planting')
      .map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind !== 'sow-ideas')).toEqual([]);
  });
});

it('one day’s sowings on several beds share their job, and are named by crop and bed', () => {
  const of = garden({
    beds: [bed('a'), bed('b')],
    plantings: [sown('carrot', '2027-04-24'), sown('pea', '2027-04-20', { bedId: 'b' })],
  });
  const sowings = draftsIn(of, milwaukee).filter(({ kind }) => kind === 'sow-crop');
  expect(new Set(sowings.map(({ job }) => job.id))).toEqual(new Set(['sow-outdoors']));
  expect(sowings.map(({ subject }) => subject)).toContainEqual({
    type: 'planting',
    id: 'carrot-2027-04-24',
    name: 'carrot in Bed A',
    bedId: 'a',
    grows: 'carrot',
    bedName: 'Bed A',
  });
});

describe('the time a crop has before its bed is wanted', () => {
  const beans = (day: string, harvested: string) =>
    starting({ plantings: [sown('snap-bean', day, { harvested })] }, 'sow/planting:', milwaukee);

  it('closes the window, and brings a day forward that leaves too little of it', () => {
    // 50 to 60 days by the packet; the row of the handbook asks for 55 at the least: 2 September less 55 is 9 July.
    const { window, steps, reasons } = beans('2027-07-12', '2027-09-02');
    expect(window).toMatchObject({ preferred: '2027-07-09', latest: '2027-07-09' });
    expect(steps[0]).toContain('too late to be ripe before its bed is wanted: sow it by ⟦2027-07-09⟧');
    expect(reasons.map(({ rule }) => rule)).toContain('plant.must-ripen');
  });

  it('is counted in days from setting out for a crop whose days are counted from seed', () => {
    // Cucumber set out is 14 days ahead of seed (house default).
    const set = setOut('cucumber', '2027-06-05', { harvested: '2027-08-15' });
    const { reasons } = starting({ plantings: [set] }, 'set-out/planting:', milwaukee);
    const seed = starting(
      { plantings: [sown('cucumber', '2027-06-05', { harvested: '2027-08-15' })] },
      'sow/planting:',
      milwaukee,
    );
    const days = (of: typeof reasons) => Number(of.find(({ rule }) => rule === 'plant.must-ripen')?.saw.days);
    expect(days(seed.reasons) - days(reasons)).toBe(14);
  });

  it('is told to be short where the bed is free only after the last day that leaves enough', () => {
    const plantings = [
      setOut('cabbage', '2027-04-12', { harvested: '2027-07-20' }),
      sown('snap-bean', '2027-07-22', { harvested: '2027-09-02' }),
    ];
    const { window, reasons } = starting({ plantings }, 'sow/planting:snap-bean', milwaukee);
    expect(window.preferred).toBe('2027-07-20');
    const short = reasons.find(({ rule }) => rule === 'plant.short-of-days');
    expect(short && reasonSentence(short)).toBe(
      'Planted on ⟦2027-07-20⟧, the snap bean has 44 days until ⟦2027-09-02⟧, when its bed is wanted or its harvest planned ' +
        'to be over; it takes 55 at the least: leave it to stand past ⟦2027-09-13⟧, or choose a quicker crop.',
    );
  });

  it('holds what is named in place of a lost sowing', () => {
    // The bed is wanted on 1 July: no pea until August.
    const plantings = [sown('pea', '2027-04-10', { harvested: '2027-07-01' })];
    const { missedNote } = starting({ plantings }, 'sow/planting:pea', milwaukee);
    for (const [, day = ''] of missedNote.matchAll(/until ⟦(.*?)⟧/g)) expect(day < '2027-06-15').toBe(true);
  });
});
