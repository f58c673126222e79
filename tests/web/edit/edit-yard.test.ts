/**
 * What is told of a garden besides its beds, put right by somebody who told it wrong.
 */
import { describe, expect, test } from 'vitest';
import { freezeOdds } from '../../../src/climate/freeze.ts';
import type { Steward } from '../../../src/steward/doings/steward.ts';
import { read } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';
import { formIn } from '../sent-form.ts';
import { fillIn } from './opened-form.ts';

const EDIT = `${GARDEN}/edit`;
const PILE = `${EDIT}/piles/spring-pile`;

const [springPile] = sampleFile().piles;

/** The yard with a bed beside it that nothing grows in. */
function yardAlone(...piles: object[]) {
  return { ...sampleFile({ plantings: [], coverStands: [], piles }), beds: sampleFile().beds.slice(0, 1) };
}

/** The days of the tasks of a kind that are still to do, late ones among them. */
async function daysOf(steward: Steward, kind: string): Promise<string[]> {
  const { plan } = await steward.view('mill-row');
  return plan.tasks
    .filter((task) => task.kind === kind && (task.state === 'open' || task.state === 'lapsed'))
    .map(({ day }) => day)
    .sort();
}

async function lastFreeze(steward: Steward): Promise<string | undefined> {
  const { climate } = await steward.view('mill-row');
  return freezeOdds(climate, { event: 'last-spring', limitF: 32, season: 2027 }).median;
}

describe('a slip of the pen in a pile’s log', () => {
  /** 155 °F is 68.3 °C: a pile is turned on the day it is read at 65 °C or more (compost:S7). */
  const hot = { turns: ['2027-04-17'], readings: [{ on: '2027-04-19', tempC: 68.3 }] };

  test('of 155 for 115 degrees is mended, and the turn it called for waits again', async () => {
    const { get, send, steward } = await sampleApp(yardAlone({ ...springPile, ...hot }));
    const [before = ''] = await daysOf(steward, 'turn-pile');
    const { fields } = formIn(await (await get(PILE)).text());
    expect(fields['readings[0].tempC']).toBe('154.94');
    const looked = await read(fillIn({ get, send }, PILE, { 'readings[0].tempC': '115' }, 'look'));
    expect(looked).toContain('Turn the pile in Left bay');
    expect(await daysOf(steward, 'turn-pile')).toContain(before);
    const kept = await fillIn({ get, send }, PILE, { 'readings[0].tempC': '115' });
    expect(kept.status).toBe(303);
    const [after = ''] = await daysOf(steward, 'turn-pile');
    expect(before <= '2027-04-20' && after > before).toBe(true);
    expect(await read(get(kept.headers.get('location') ?? ''))).toContain('Kept.');
  });

  test('is mended in the other unit as well', async () => {
    const { get, send, steward } = await sampleApp(yardAlone({ ...springPile, ...hot }));
    await fillIn({ get, send }, PILE, { 'readings[0].tempC': '46 C' });
    expect((await steward.view('mill-row')).garden.piles[0]?.readings).toEqual([{ on: '2027-04-19', tempC: 46 }]);
  });

  test('that no pile can have is refused at its field, with the ends it may have', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    const refused = await fillIn({ get, send }, PILE, { 'readings[0].tempC': '580' });
    expect(refused.status).toBe(422);
    expect(await read(refused)).toMatch(/In the middle ?: "580" cannot be\. Give a temperature from -22 to 203 °F/);
    expect((await steward.view('mill-row')).garden.piles[0]?.readings[0]?.tempC).toBe(58);
  });

  test('that told a turn nobody made is taken out, and the next is due from the building', async () => {
    const warm = { turns: ['2027-04-18'], readings: [{ on: '2027-04-19', tempC: 50 }] };
    const { get, send, steward } = await sampleApp(yardAlone({ ...springPile, ...warm }));
    const [before = ''] = await daysOf(steward, 'turn-pile');
    await fillIn({ get, send }, PILE, { 'turns[0].gone': 'yes' });
    expect((await steward.view('mill-row')).garden.piles).toMatchObject([{ turns: [], readings: warm.readings }]);
    const [after = ''] = await daysOf(steward, 'turn-pile');
    expect(after < before).toBe(true);
  });
});

describe('a pile', () => {
  test('that was said to hold leaves alone gets its grass, and its mix is told anew', async () => {
    const readings = ['2027-04-09', '2027-04-10'].map((on) => ({ on, tempC: 58 }));
    const leaves = { ...springPile, readings, ingredients: [{ material: 'leaves_dry_loose', litres: 400 }] };
    const { get, send } = await sampleApp(yardAlone(leaves));
    const ratio = async (): Promise<number> => {
      const text = await read(get(`${GARDEN}/compost`));
      return Number(/begun at about (\d+) of carbon to 1/.exec(text)?.[1]);
    };
    // Dry leaves alone are 54 of carbon to 1 of nitrogen (compost:S1).
    expect(await ratio()).toBe(54);
    await fillIn({ get, send }, PILE, {
      'ingredients[1].material': 'grass_clippings_fresh_loose',
      'ingredients[1].litres': '7',
    });
    expect(await ratio()).toBeLessThan(54);
    expect(await read(get(`${GARDEN}/compost`))).toContain('7 cu ft of fresh grass clippings, loose');
  });

  test('that only was planned is ticked as built, and is to be turned then', async () => {
    const planned = { ...springPile, readings: [], turns: [], built: '2027-04-18', planned: ['built'] };
    const { get, send, steward } = await sampleApp(yardAlone(planned));
    expect((await steward.view('mill-row')).garden.piles[0]?.built.happened).toBe(false);
    expect((await fillIn({ get, send }, PILE, { isBuilt: 'yes' })).status).toBe(303);
    expect((await steward.view('mill-row')).garden.piles[0]?.built).toEqual({ day: '2027-04-18', happened: true });
    expect(await daysOf(steward, 'turn-pile')).not.toEqual([]);
  });

  test('cannot be built on a day to come', async () => {
    const { get, send } = await sampleApp(yardAlone());
    const sent = { isBuilt: 'yes', built: '2027-05-20', bin: 'right', method: 'cold' };
    const refused = await fillIn({ get, send }, `${EDIT}/piles/new`, sent);
    expect(refused.status).toBe(422);
    expect(await read(refused)).toContain('That day is still to come.');
  });

  test('that is there already is added from the yard, with what went into it', async () => {
    const { get, send, steward } = await sampleApp(yardAlone());
    expect(await (await get(`${GARDEN}/compost`)).text()).toContain(`${EDIT}/piles/new`);
    await fillIn({ get, send }, `${EDIT}/piles/new`, {
      bin: 'right',
      isBuilt: 'yes',
      built: '2027-03-20',
      method: 'cold',
      'ingredients[0].material': 'straw_general',
      'ingredients[0].litres': '100 L',
    });
    const { garden } = await steward.view('mill-row');
    expect(garden.piles).toMatchObject([
      { binId: 'right', method: 'cold', built: { happened: true }, ingredients: [{ litres: 100 }] },
    ]);
  });
});

describe('a pile that is taken out', () => {
  test('leaves what was spread from it on its bed', async () => {
    const finished = { ...springPile, id: 'old', built: '2026-05-01', readings: [], turns: [], finished: '2026-09-20' };
    const topdressed = [{ bed: 'north', on: '2026-10-02', litres: 40, piles: ['old'] }];
    const { get, send, steward } = await sampleApp({ ...yardAlone(finished), topdressed });
    const asks = await (await get(`${EDIT}/piles/old/delete`)).text();
    expect((await send(`${EDIT}/piles/old/delete`, formIn(asks).fields)).status).toBe(303);
    const { garden } = await steward.view('mill-row');
    expect(garden.piles).toEqual([]);
    expect(garden.topdressed).toMatchObject([{ bedId: 'north', on: '2026-10-02', litres: 40 }]);
  });
});

describe('a bin', () => {
  test('with another name is called so on its tasks', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    const before = await daysOf(steward, 'turn-pile');
    await fillIn({ get, send }, `${EDIT}/bins/left`, { name: 'By the hedge' });
    const { plan } = await steward.view('mill-row');
    expect(plan.tasks.filter(({ title }) => title.includes('By the hedge')).length).toBeGreaterThan(0);
    expect(await daysOf(steward, 'turn-pile')).toEqual(before);
  });

  test('cannot have the name of another', async () => {
    const { get, send } = await sampleApp(yardAlone(springPile ?? {}));
    const refused = await fillIn({ get, send }, `${EDIT}/bins/left`, { name: 'Right bay' });
    expect(refused.status).toBe(422);
    expect(await read(refused)).toContain('What you call it');
  });

  test('that is taken out takes its piles along, says so first, and gives all of it back', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    const before = await steward.view('mill-row');
    const html = await (await get(`${EDIT}/bins/left/delete`)).text();
    expect(await read(new Response(html))).toMatch(
      /Take out: Left bay .*Nothing is taken out yet\..* What goes with it .*[Pp]ile.* What goes off the plan .*Left bay/,
    );
    expect((await steward.view('mill-row')).garden.bins).toEqual(before.garden.bins);
    const gone = await send(`${EDIT}/bins/left/delete`, formIn(html).fields);
    expect(gone.status).toBe(303);
    expect(await read(get(gone.headers.get('location') ?? ''))).toMatch(/Kept\. .* off the plan.*Take it back/);
    const without = (await steward.view('mill-row')).garden;
    expect([without.bins.map(({ id }) => id), without.piles]).toEqual([['right'], []]);
    const back = formIn(await (await get(`${GARDEN}/undo?entry=2`)).text());
    expect((await send(back.action, back.fields)).status).toBe(303);
    const after = await steward.view('mill-row');
    expect([after.garden.bins, after.garden.piles]).toEqual([before.garden.bins, before.garden.piles]);
    expect(after.plan.tasks.map(({ key, day }) => [key, day])).toEqual(
      before.plan.tasks.map(({ key, day }) => [key, day]),
    );
  });
});

describe('how the household works', () => {
  test('with a quarter of the hours overloads the week, which says so', async () => {
    const { get, send, steward } = await sampleApp();
    expect((await steward.view('mill-row')).plan.overloads ?? []).toEqual([]);
    const looked = await read(fillIn({ get, send }, `${EDIT}/work/it`, { hoursPerWeek: '0.5' }, 'look'));
    expect(looked).toContain('Hours a week, of all of you together: from 5 to 0.5');
    await fillIn({ get, send }, `${EDIT}/work/it`, { hoursPerWeek: '0.5' });
    expect((await steward.view('mill-row')).plan.overloads?.length).toBeGreaterThan(0);
    expect(await read(get(GARDEN))).toContain('More than the hours');
  });

  test('on other days moves work to them', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/work/it`, { workDays: ['thu'] });
    expect((await steward.view('mill-row')).garden.place.workDays).toEqual([4]);
  });

  test('is refused without a day to work on, and with a week of two hundred hours, both at once', async () => {
    const { get, send } = await sampleApp(yardAlone(springPile ?? {}));
    const refused = await fillIn({ get, send }, `${EDIT}/work/it`, { workDays: [], hoursPerWeek: '200' });
    expect(refused.status).toBe(422);
    const text = await read(refused);
    expect(text).toMatch(/Days you work in the garden ?: Nothing is chosen\./);
    expect(text).toMatch(/Hours a week, of all of you together ?: "200" cannot be\./);
  });
});

describe('how careful the plan is', () => {
  test('a garden that bears a freeze in one year of ten only sows its beans later', async () => {
    const beds = sampleFile().beds.slice(0, 1);
    const plantings = [{ bed: 'north', crop: 'snap-bean', sow: '2027-05-10' }];
    const { get, send, steward } = await sampleApp({ ...yardAlone(), beds, plantings });
    const [before = ''] = await daysOf(steward, 'sow-crop');
    await fillIn({ get, send }, `${EDIT}/care/it`, { frostRisk: '10' });
    const [after = ''] = await daysOf(steward, 'sow-crop');
    expect(before).not.toBe('');
    expect(after > before).toBe(true);
  });

  test('covers that may not flower at all are refused: one of a hundred is the least', async () => {
    const { get, send } = await sampleApp(yardAlone());
    const refused = await fillIn({ get, send }, `${EDIT}/care/it`, { bloomRiskPercent: '0' });
    expect(refused.status).toBe(422);
    expect(await read(refused)).toMatch(/when they are cut ?: "0" cannot be\. Give a number from 1 to 50/);
  });
});

describe('a pile read three hundred times', () => {
  const readings = Array.from({ length: 300 }, (_, at) => ({
    on: `2027-04-${String(7 + (at % 13)).padStart(2, '0')}`,
    at: `${String(Math.floor(at / 13) % 24).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`,
    tempC: 58,
  }));

  test('is not too long for its form, nor for the one that takes it out', async () => {
    const app = await sampleApp(sampleFile({ piles: [{ ...springPile, readings }] }));
    expect(await read(fillIn(app, PILE, {}))).toContain('Nothing is changed');
    const { fields } = formIn(await (await app.get(`${PILE}/delete`)).text());
    expect(JSON.stringify(fields).length).toBeLessThan(1000);
  }, 40_000);
});

describe('several things ticked', () => {
  test('sent back as they were change nothing, in whatever order the file has them', async () => {
    const looked = { ...springPile, notReady: [{ on: '2027-04-19', failed: ['coarse', 'heats'] }] };
    const app = await sampleApp(sampleFile({ piles: [looked] }));
    expect(await read(fillIn(app, PILE, {}))).toContain('Nothing is changed');
  });
});

describe('where the garden lies', () => {
  test('by another clock keeps every day of the plan', async () => {
    const { get, send, steward } = await sampleApp();
    const days = async () => (await steward.view('mill-row')).plan.tasks.map(({ key, day }) => `${key} ${day}`).sort();
    const before = await days();
    await fillIn({ get, send }, `${EDIT}/place/it`, { timeZone: 'America/New_York' });
    expect((await steward.view('mill-row')).garden.place.timeZone).toBe('America/New_York');
    expect(await days()).toEqual(before);
  });

  test('in a hollow five days colder at each end has its last freeze five days later', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    expect(await lastFreeze(steward)).toBe('2027-05-06');
    await fillIn({ get, send }, `${EDIT}/place/it`, { frostOffsetDays: '5' });
    expect(await lastFreeze(steward)).toBe('2027-05-11');
  });

  test('below the sea is taken as it is', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/place/it`, { elevationM: '-23 ft' });
    expect((await steward.view('mill-row')).garden.place.elevationM).toBeCloseTo(-7.01, 2);
  });

  test('keeps what its form does not ask', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/place/it`, { name: 'Mill Row Gardens' });
    const { garden } = await steward.view('mill-row');
    expect(garden).toMatchObject({ id: 'mill-row', name: 'Mill Row Gardens', place: { units: 'us', hoursPerWeek: 5 } });
  });

  test('in a zone its gardener knows is taken at their word, until they leave it open again', async () => {
    const { get, send } = await sampleApp(yardAlone());
    const zone = async (told: string) => {
      await fillIn({ get, send }, `${EDIT}/place/it`, { hardinessZone: told });
      return read(get(`${GARDEN}/garden`));
    };
    expect(await zone('4b')).toContain('Its hardiness zone is 4b, as you told it.');
    expect(await zone('')).toContain(
      'Its hardiness zone is not told, and this climate gives no winter lows to work it out from.',
    );
  });

  test('colder by so many degrees of the reader’s own', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/place/it`, { tempOffsetC: '-1.8' });
    expect((await steward.view('mill-row')).garden.place.tempOffsetC).toBeCloseTo(-1, 6);
  });
});

describe('the climate', () => {
  test('from the stations around to own dates moves the last freeze to the day that was told', async () => {
    const { get, send, steward } = await sampleApp(sampleFile({ climate: { nearest: true } }));
    expect(await lastFreeze(steward)).not.toBe('2027-06-03');
    const dates = {
      'frostDates.lastSpring:month': '06',
      'frostDates.lastSpring:day': '03',
      'frostDates.firstAutumn:month': '09',
      'frostDates.firstAutumn:day': '20',
    };
    const looked = await read(fillIn({ get, send }, `${EDIT}/frost-dates/it`, dates, 'look'));
    expect(looked).toMatch(/Moves|moves|later/);
    await fillIn({ get, send }, `${EDIT}/frost-dates/it`, dates);
    expect(await lastFreeze(steward)).toBe('2027-06-03');
  });

  test('offers the nearest three stations with how far they are and their dates, and takes one', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    const text = await read(get(`${EDIT}/climate/it`));
    expect(text.match(/\d mi away; [\d,]+ ft above the sea; \w+ \d+ to \w+ \d+ by even odds/g)).toHaveLength(3);
    expect(text).toContain('The mean of the six nearest, nearer ones weighing more');
    await fillIn({ get, send }, `${EDIT}/climate/it`, { from: 'another', id: 'usw00014837' });
    expect((await steward.view('mill-row')).garden.climate).toEqual({ kind: 'station', station: 'USW00014837' });
  });

  test('from a station nobody knows is refused at its field', async () => {
    const { get, send } = await sampleApp(yardAlone(springPile ?? {}));
    const refused = await fillIn({ get, send }, `${EDIT}/climate/it`, { from: 'another', id: 'XX1' });
    expect(refused.status).toBe(422);
    expect(await read(refused)).toContain('The id of another station');
  });

  test('from monthly means asks for all of them, in the reader’s own units', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    const empty = await fillIn({ get, send }, `${EDIT}/monthly-means/it`, {});
    expect(empty.status).toBe(422);
    expect(await read(empty)).toMatch(/January, mean high ?: It is empty\./);
    const highs = [27, 32, 44, 58, 70, 79, 83, 80, 73, 60, 45, 32];
    const means = Object.fromEntries(
      highs.flatMap((high, at) => [
        [`monthlyNormals.${at}.highC`, String(high)],
        [`monthlyNormals.${at}.lowC`, String(high - 20)],
        [`monthlyNormals.${at}.precipMm`, '2'],
      ]),
    );
    expect((await fillIn({ get, send }, `${EDIT}/monthly-means/it`, means)).status).toBe(303);
    expect((await steward.view('mill-row')).garden.climate).toMatchObject({ kind: 'monthly-normals' });
  });
});

describe('what there is one of', () => {
  test('is changed, never told anew beside itself, whatever address is asked', async () => {
    const { get, send, steward } = await sampleApp(yardAlone());
    expect(await read(get(`${EDIT}/place/new`))).toContain('Where Mill Row lies');
    const told = { name: 'Elsewhere', latitude: '40', longitude: '-100', timeZone: 'America/Chicago', do: 'keep' };
    expect((await send(`${EDIT}/place/new`, told)).status).toBe(409);
    expect((await steward.view('mill-row')).garden).toMatchObject({ name: 'Mill Row', place: { hoursPerWeek: 5 } });
  });

  test('the garden itself cannot be taken out, its yearly layer can', async () => {
    const { get, send, steward } = await sampleApp(yardAlone());
    for (const list of ['place', 'work', 'care', 'climate'])
      expect((await get(`${EDIT}/${list}/it/delete`)).status).toBe(404);
    const asks = await (await get(`${EDIT}/yearly-layer/it/delete`)).text();
    await send(`${EDIT}/yearly-layer/it/delete`, formIn(asks).fields);
    expect((await steward.view('mill-row')).garden.topdressing).toBeUndefined();
  });

  test('what the household brings is told without touching who works in it', async () => {
    const household = { people: 2, members: [{ name: 'Ida' }] };
    const { get, send, steward } = await sampleApp({ ...yardAlone(), household });
    await fillIn({ get, send }, `${EDIT}/household/it`, { people: '3', clippingsL: '10 gal' });
    expect((await steward.view('mill-row')).garden.household).toMatchObject({
      people: 3,
      clippingsL: expect.closeTo(37.85, 2),
      members: [{ id: 'ida', name: 'Ida' }],
    });
  });
});

describe('what is in the shed', () => {
  test('seed is added with its weight, and changed from a crop to a cover', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/seeds/new`, { plant: 'crop:carrot', packed: '2026' });
    const link = /href="([^"]*\/edit\/seeds\/(?!new)[^"/]+)"/.exec(await (await get(`${GARDEN}/garden`)).text())?.[1];
    await fillIn({ get, send }, link ?? '', { plant: 'cover:oats', grams: '16', on: TODAY });
    const { garden } = await steward.view('mill-row');
    expect(garden.seeds).toEqual([
      { plant: { kind: 'cover', id: 'oats' }, packedYear: 2026, held: { grams: expect.closeTo(453.59, 1), on: TODAY } },
    ]);
  });

  test('a cover against frost is measured in square feet by who reads feet', async () => {
    const { get, send, steward } = await sampleApp(yardAlone(springPile ?? {}));
    await fillIn({ get, send }, `${EDIT}/gear/new`, { what: 'light-fabric', areaM2: '100' });
    expect((await steward.view('mill-row')).garden.gear).toEqual([
      { what: 'light-fabric', areaM2: expect.closeTo(9.29, 2) },
    ]);
  });

  test('a wish for both beds and an area is refused, and says which of the two to give', async () => {
    const { get, send } = await sampleApp(yardAlone(springPile ?? {}));
    const refused = await fillIn({ get, send }, `${EDIT}/wishes/new`, { crop: 'leek', beds: '1', areaM2: '20' });
    expect(refused.status).toBe(422);
    expect(await read(refused)).toMatch(/Give either/);
  });
});

describe('a garden of the south', () => {
  const south = () => {
    const { garden, ...rest } = sampleFile({
      climate: { frostDates: { lastSpring: '10-20', firstAutumn: '04-20' } },
      plantings: [],
      coverStands: [],
    });
    return {
      ...rest,
      garden: { ...garden, latitude: -43.1, longitude: 171.6, timeZone: 'Pacific/Auckland', units: 'metric' },
    };
  };

  test('tells of its freezes in its own spring, and takes other dates of it', async () => {
    const { get, send } = await sampleApp(south());
    const before = await read(get(`${GARDEN}/garden`));
    expect(before).toContain('lies at 43.1° south, 171.6° east');
    expect(before).toContain('the last freeze of spring is over by 20 October');
    await fillIn({ get, send }, `${EDIT}/frost-dates/it`, {
      'frostDates.lastSpring:month': '11',
      'frostDates.lastSpring:day': '02',
    });
    expect(await read(get(`${GARDEN}/garden`))).toContain('the last freeze of spring is over by 2 November');
  });

  test('is offered no station of the north, and is told how far the nearest is', async () => {
    const { get } = await sampleApp(south());
    const text = await read(get(`${EDIT}/climate/it`));
    expect(text).toMatch(/The nearest station is \d{4,5} km away, and none says anything of this garden\./);
    expect(text).not.toContain('by even odds');
  });

  test('cannot take its climate from a station of the north', async () => {
    const { get, send } = await sampleApp(south());
    const refused = await fillIn({ get, send }, `${EDIT}/climate/it`, { from: 'another', id: 'USW00014837' });
    expect(refused.status).toBe(422);
  });
});

describe('times away and cold nights', () => {
  test('a time away that was told too long is shortened', async () => {
    const { get, send, steward } = await sampleApp({
      ...yardAlone(),
      away: [{ from: '2027-05-01', to: '2027-05-20' }],
    });
    const link = /href="([^"]*\/edit\/away\/(?!new)[^"/]+)"/.exec(await (await get(`${GARDEN}/garden`)).text())?.[1];
    await fillIn({ get, send }, link ?? '', { to: '2027-05-08' });
    expect((await steward.view('mill-row')).garden.away).toEqual([{ from: '2027-05-01', to: '2027-05-08' }]);
  });

  test('a night that was not so cold is put right in the reader’s degrees', async () => {
    const coldNights = [{ evening: '2027-04-18', lowC: -3, how: 'measured' }];
    const { get, send, steward } = await sampleApp({ ...yardAlone(), coldNights });
    const link = /href="([^"]*\/edit\/cold-nights\/(?!new)[^"/]+)"/.exec(
      await (await get(`${GARDEN}/garden`)).text(),
    )?.[1];
    await fillIn({ get, send }, link ?? '', { lowC: '32' });
    expect((await steward.view('mill-row')).garden.coldNights).toEqual([
      { evening: '2027-04-18', lowC: 0, how: 'measured' },
    ]);
  });
});

describe('a pile’s log changed from two browsers', () => {
  const first = { on: '2027-04-12', tempC: 58 };
  const last = { on: '2027-04-16', tempC: 40 };
  const logged = { ...springPile, readings: [first, { on: '2027-04-14', tempC: 50 }, last] };
  const readingsOf = async ({ steward }: { steward: Steward }) =>
    (await steward.view('mill-row')).garden.piles[0]?.readings.map(({ on, tempC }) => `${on} ${tempC}`);

  /** Opens the form twice, keeps one change, and sends the other back twice: what it came back with is kept. */
  async function both(one: Record<string, string>, other: Record<string, string>) {
    const app = await sampleApp(sampleFile({ piles: [logged] }));
    const headers = { Cookie: 'reading=metric' };
    const { fields } = formIn(await (await app.get(PILE, headers)).text());
    expect((await app.send(PILE, { ...fields, ...one })).status).toBe(303);
    const told = await app.send(PILE, { ...fields, ...other });
    expect(told.status).toBe(409);
    const back = formIn(await told.text());
    expect((await app.send(back.action, { ...back.fields, do: 'keep' })).status).toBe(303);
    return readingsOf(app);
  }

  const added = { 'readings[3].on': '2027-04-18', 'readings[3].tempC': '35' };

  test('keeps an entry added there beside one changed here', async () => {
    expect(await both(added, { 'readings[0].tempC': '60' })).toEqual([
      '2027-04-12 60',
      '2027-04-14 50',
      '2027-04-16 40',
      '2027-04-18 35',
    ]);
  });

  test('keeps an entry changed there beside one added here, and two that were both added', async () => {
    expect(await both({ 'readings[1].tempC': '51' }, added)).toHaveLength(4);
    const other = { 'readings[3].on': '2027-04-19', 'readings[3].tempC': '33' };
    expect((await both(added, other))?.slice(3)).toEqual(['2027-04-18 35', '2027-04-19 33']);
    expect(await both({ ...added, 'readings[1].tempC': '51' }, { ...added, 'readings[0].tempC': '60' })).toHaveLength(
      4,
    );
  });

  test('takes out what was ticked though another stands at its place by now, and changes that other', async () => {
    expect(await both({ 'readings[0].gone': 'yes' }, { 'readings[1].gone': 'yes' })).toEqual(['2027-04-16 40']);
    expect(await both({ 'readings[0].gone': 'yes' }, { 'readings[2].tempC': '41' })).toEqual([
      '2027-04-14 50',
      '2027-04-16 41',
    ]);
  });

  test('keeps what both changed of one entry, field by field, and what was typed at one taken out there', async () => {
    const changed = await both({ 'readings[1].tempC': '51' }, { 'readings[1].on': '2027-04-15' });
    expect(changed?.[1]).toBe('2027-04-15 51');
    expect(await both({ 'readings[0].gone': 'yes' }, { 'readings[0].tempC': '60' })).toContain('2027-04-12 60');
  });
});
