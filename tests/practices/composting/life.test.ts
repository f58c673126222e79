import { describe, expect, it } from 'vitest';
import { meanAirStaysAbove } from '../../../src/climate/air.ts';
import type { Garden, Pile } from '../../../src/garden/garden.ts';
import { addDays, type Day, daysBetween, eachDay } from '../../../src/measures/days.ts';
import { DUST } from '../../../src/practices/cautions.ts';
import { activeEnd } from '../../../src/practices/composting/heat-end.ts';
import { hotRecord } from '../../../src/practices/composting/hot-record.ts';
import { composting } from '../../../src/practices/composting/index.ts';
import { finishedLitres } from '../../../src/practices/composting/pile-life.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { draft, draftsIn, garden, inputOf, milwaukee, pile } from '../gardens.ts';

function supply(of: Garden, today = of.startedOn) {
  const found = { coverSowings: [], coverStands: [], uncovered: [], thinStands: [], compostSupply: [] };
  return composting.work(inputOf(of, milwaukee, today), found).found?.compostSupply ?? [];
}

describe('the heat of a hot pile', () => {
  it('lasts 90 to 120 days of weather in which it works (compost:S26)', () => {
    const end = activeEnd(pile('2027-05-20'), milwaukee);
    expect([daysBetween('2027-05-20', end?.low ?? ''), daysBetween('2027-05-20', end?.high ?? '')]).toEqual([90, 120]);
  });

  it('goes on after winter where it was built too late, the cold days not counted', () => {
    const { to = '' } = meanAirStaysAbove(milwaukee, { season: 2027, tempC: 10 });
    const { from = '' } = meanAirStaysAbove(milwaukee, { season: 2028, tempC: 10 });
    const before = daysBetween('2027-09-01', to) + 1;
    expect(activeEnd(pile('2027-09-01'), milwaukee)?.low).toBe(addDays(from, 90 - before));
  });

  it('has no end where the air is never warm enough, and nothing is said of one', () => {
    const polar = inventedClimate({ normals: { tminC: Array(12).fill(-10), tmaxC: Array(12).fill(2) } });
    expect(activeEnd(pile('2027-05-20'), polar)).toBeUndefined();
    const turn = draft(draftsIn(garden({ startedOn: '2027-05-21', piles: [pile('2027-05-20')] }), polar), 'pile-turn/');
    expect(turn.steps.at(-1)).toBe('After this, weekly while it heats.');
  });

  it('ends in curing once a turn would fall after it', () => {
    const turned = pile('2027-05-10', { turns: ['2027-08-18'] });
    const cure = draft(draftsIn(garden({ startedOn: '2027-08-19', piles: [turned] })), 'pile-cure/');
    expect(cure.window).toEqual({ earliest: '2027-08-08', preferred: '2027-08-23', latest: '2027-09-07' });
  });
});

describe('the look whether compost is ready', () => {
  it('comes three to four weeks into curing (compost:S16)', () => {
    const curing = pile('2027-05-01', { curingSince: '2027-08-20' });
    expect(draft(draftsIn(garden({ startedOn: '2027-08-21', piles: [curing] })), 'pile-maturity/').window).toEqual({
      earliest: '2027-09-10',
      preferred: '2027-09-17',
      latest: '2027-10-15',
    });
  });

  it('comes after one to two years for a cold pile (common practice)', () => {
    const cold = pile('2026-04-10', { method: 'cold' });
    const look = draft(draftsIn(garden({ startedOn: '2027-03-01', piles: [cold] })), 'pile-maturity/');
    expect(look.window).toEqual({ earliest: '2027-04-10', preferred: '2027-04-10', latest: '2028-04-09' });
    expect(look.reasons[0]?.source).toBe('common practice');
  });

  it('warns of manure only where there may be some, and not after a hot record', () => {
    const cautions = (parts: Partial<Pile>) =>
      draft(
        draftsIn(
          garden({ startedOn: '2027-08-21', piles: [pile('2027-05-01', { curingSince: '2027-08-20', ...parts })] }),
        ),
        'pile-maturity/',
      ).cautions.filter((caution) => caution !== DUST);
    const manure = [{ materialId: 'horse_manure_bedded', litres: 200 }];
    const heat = eachDay('2027-05-05', '2027-05-20').map((on) => ({ on, tempC: 58 }));
    const turns = ['2027-05-08', '2027-05-11', '2027-05-14', '2027-05-17', '2027-05-20'];
    expect(cautions({})).toEqual([]);
    expect(cautions({ ingredients: manure })[0]).toContain('120 days before harvest');
    expect(cautions({ ingredients: [] })[0]).toContain('may hold manure');
    // Heat kills germs; weedkiller in horse manure outlives it (compost:S33).
    const large = [...manure, { materialId: 'leaves_dry_loose', litres: 700 }];
    const heated = cautions({ ingredients: large, readings: heat, turns });
    expect(heated).toHaveLength(1);
    expect(heated[0]).toMatch(/horse manure.*grow beans/);
    // The same heat in what was no such pile: as raw, and what failed.
    expect(cautions({ ingredients: manure, readings: heat, turns })[0]).toMatch(
      /raw manure however hot it was: .*200 L/,
    );
  });

  it('is over once the compost was found ready', () => {
    const done = pile('2027-01-01', { finishedOn: '2027-08-01' });
    expect(
      draftsIn(garden({ startedOn: '2027-08-02', piles: [done] })).filter(({ practice }) => practice === 'composting'),
    ).toEqual([]);
  });
});

describe('a hot record (compost:S22, compost:S23)', () => {
  const log = (days: number, turns: number, tempC = 55): Pile =>
    pile('2027-05-01', {
      ingredients: [
        { materialId: 'leaves_dry_loose', litres: 700 },
        { materialId: 'grass_clippings_fresh_loose', litres: 300 },
      ],
      readings: Array.from({ length: days }, (_, i) => ({ on: addDays('2027-05-05', i), tempC })),
      turns: Array.from({ length: turns }, (_, i) => addDays('2027-05-06', 3 * i)),
    });

  it('is 15 days at 55 °C with five turns among them, and nothing less', () => {
    expect([hotRecord(log(15, 5)).passed, hotRecord(log(14, 5)).passed, hotRecord(log(15, 4)).passed]).toEqual([
      'turned',
      undefined,
      undefined,
    ]);
  });

  it('is none of dung alone, however hot: 18 of carbon to 1 of nitrogen, where the rule asks 25 to 40 (compost:S23)', () => {
    const dung = hotRecord({ ...log(15, 5, 56), ingredients: [{ materialId: 'cow_manure_solid', litres: 1000 }] });
    expect([dung.heat, dung.passed]).toEqual(['turned', undefined]);
    expect(dung.unfit).toMatch(/^it was begun at about 1\d of carbon to 1 of nitrogen, and the rule asks 25 to 40$/);
  });

  it('is none of a heap too small to heat through to its outside (compost:S7), and names both where both fail', () => {
    const of = (materialId: string, litres: number) =>
      hotRecord({ ...log(15, 5), ingredients: [{ materialId, litres }] });
    expect(of('horse_manure_bedded', 764).passed).toBeUndefined();
    expect(of('horse_manure_bedded', 764).unfit).toMatch(/⟦764 L⟧, and below ⟦765 L⟧/);
    expect(of('cow_manure_solid', 100).unfit).toMatch(/⟦100 L⟧.*; and it was begun at about 1\d/);
  });

  it('is none of a pile whose makings nobody wrote down', () => {
    expect(hotRecord({ ...log(15, 5), ingredients: [] })).toMatchObject({
      heat: 'turned',
      unfit: 'nobody wrote down what it was built of',
    });
    expect(hotRecord({ ...log(15, 5), ingredients: [] }).passed).toBeUndefined();
  });

  it('does not count a day above 77 °C, nor one below 55 °C', () => {
    expect([hotRecord(log(15, 5, 78)).days, hotRecord(log(15, 5, 54.9)).days]).toEqual([0, 0]);
  });

  it('counts a day once, however often it was read, and turns only from the first to the last', () => {
    const twice = { ...log(15, 5), turns: ['2027-05-04', '2027-05-06', '2027-05-30'] };
    expect(hotRecord({ ...twice, readings: [...twice.readings, ...twice.readings] })).toMatchObject({
      days: 15,
      turns: 1,
    });
  });
});

describe('hours in the heat', () => {
  const hours = (...readings: readonly [Day, string | undefined, number][]) =>
    hotRecord(
      pile('2027-05-01', {
        readings: readings.map(([on, at, tempC]) => ({ on, tempC, ...(at === undefined ? {} : { at }) })),
      }),
    ).hours;

  it('are those between two hot readings, and only where no more than 30 hours lie between', () => {
    expect(hours(['2027-05-05', '08:00', 56], ['2027-05-05', '20:30', 60])).toBe(12.5);
    expect(hours(['2027-05-05', '08:00', 56], ['2027-05-06', '14:00', 60])).toBe(30);
    expect(hours(['2027-05-05', '08:00', 56], ['2027-05-06', '14:01', 60])).toBe(0);
    expect(hours(['2027-05-05', '08:00', 56])).toBe(0);
  });

  it('end where a reading between was below 55 °C or above 77 °C', () => {
    const through = (tempC: number) =>
      hours(['2027-05-05', '08:00', 56], ['2027-05-05', '12:00', tempC], ['2027-05-05', '18:00', 60]);
    expect([through(55), through(54.9), through(78)]).toEqual([10, 0, 0]);
  });

  it('count a day from one reading without an hour to the next', () => {
    expect(hours(['2027-05-05', undefined, 56], ['2027-05-06', undefined, 56], ['2027-05-08', undefined, 56])).toBe(24);
    // In whatever order they were told.
    expect(hours(['2027-05-06', undefined, 56], ['2027-05-05', undefined, 56])).toBe(24);
  });

  it('of a day with a cold reading too make no hot day', () => {
    const readings = [
      { on: '2027-05-05', at: '07:00', tempC: 60 },
      { on: '2027-05-05', at: '19:00', tempC: 40 },
    ];
    expect(hotRecord(pile('2027-05-01', { readings })).days).toBe(0);
  });

  it('and turns are told at the turn of a pile that holds manure, as a label', () => {
    const manure = [{ materialId: 'horse_manure_bedded', litres: 600 }];
    const readings = [
      { on: '2027-05-05', tempC: 57 },
      { on: '2027-05-06', tempC: 58 },
    ];
    const turn = (ingredients: Pile['ingredients']) =>
      draft(
        draftsIn(garden({ startedOn: '2027-05-07', piles: [pile('2027-05-01', { ingredients, readings })] })),
        'pile-turn/',
      ).reasons.find(({ rule }) => rule === 'pile-maturity.not-heated');
    const told = turn(manure);
    expect(told && reasonSentence(told)).toMatch(/2 days at .* and 0 turns among them, and 24 hours .* not a licence/);
    expect(turn(pile('2027-05-01').ingredients)).toBeUndefined();
  });
});

describe('building a pile', () => {
  const build = (parts: Partial<Pile>) =>
    draft(draftsIn(garden({ startedOn: '2027-06-01', piles: [pile('2027-06-20', parts)] })), 'pile-build/');

  it('holds two parts of browns to one of greens by volume (common practice)', () => {
    const right = build({});
    expect(right.reasons.find(({ rule }) => rule === 'pile-build.ratio')).toMatchObject({
      saw: { browns: 400, greens: 200 },
      limit: 2,
      source: 'common practice',
    });
    expect(right.steps).toContain('In all ⟦400 L⟧ of browns to ⟦200 L⟧ of greens.');
  });

  it('asks for the browns that are missing, and says what no greens means', () => {
    const ingredients = [
      { materialId: 'leaves_dry_loose', litres: 150 },
      { materialId: 'grass_clippings_fresh_loose', litres: 200 },
    ];
    expect(build({ ingredients }).steps.join(' ')).toContain('add about ⟦250 L⟧ more browns');
    expect(build({ ingredients: ingredients.slice(0, 1) }).steps.join(' ')).toContain('without greens');
  });

  it('keeps sticks to half an inch (common practice)', () => {
    expect(build({}).steps.join(' ')).toContain('Nothing thicker than ⟦12.7 mm⟧');
  });

  it('says when a hot pile is too small to heat (3 × 3 × 3 ft, compost:S19), or more than its bin holds', () => {
    expect(build({}).steps.at(-1)).toContain('Below ⟦765 L⟧');
    expect(build({ method: 'cold' }).steps.join(' ')).not.toContain('Below');
    const much = [{ materialId: 'leaves_dry_loose', litres: 1000 }];
    expect(build({ ingredients: much }).steps.at(-1)).toContain('more than Left bay holds');
  });

  it('carries the cautions of what goes in, each once', () => {
    const manure = { materialId: 'horse_manure_bedded', litres: 100 };
    const { cautions } = build({ ingredients: [manure, manure] });
    expect(cautions.join(' ')).toContain('weedkiller');
    expect(new Set(cautions).size).toBe(cautions.length);
  });
});

describe('what can hurt', () => {
  const turning = (parts: Partial<Pile>) =>
    draft(
      draftsIn(garden({ startedOn: '2027-05-02', piles: [pile('2027-05-01', parts)] })),
      'pile-turn/',
    ).cautions.join(' ');

  it('is said where a pile is opened: dust, heat, lifting, cuts and tetanus', () => {
    for (const word of ['mask', 'scalding', 'bent knees', 'tetanus']) expect(turning({})).toContain(word);
  });

  it('names manure and local rules only where there is some', () => {
    const manure = [{ materialId: 'horse_manure_bedded', litres: 300 }];
    expect([turning({ ingredients: manure }), turning({})].map((said) => said.includes('local rules'))).toEqual([
      true,
      false,
    ]);
  });

  it('names fire for a heap above 5 × 5 × 5 ft (3540 L), or hotter than 77 °C; not for a garden heap', () => {
    const leaves = (litres: number) => [{ materialId: 'leaves_dry_loose', litres }];
    const hot = (tempC: number) => ({ readings: [{ on: '2027-05-02', tempC }] });
    const fire = [{ ingredients: leaves(3541) }, hot(78), { ingredients: leaves(3539) }, hot(70)].map((parts) =>
      turning(parts).includes('fire brigade'),
    );
    expect(fire).toEqual([true, true, false, false]);
  });
});

describe('what a pile will give', () => {
  it('is four tenths of what was built, or what was measured (compost:S13: 50–70 % is lost)', () => {
    expect([finishedLitres(pile('2027-05-01')), finishedLitres(pile('2027-05-01', { finishedLitres: 180 }))]).toEqual([
      240, 180,
    ]);
  });

  it('is counted from the late end of what its method takes', () => {
    const piles = [
      pile('2027-05-20', { id: 'hot' }),
      pile('2026-05-20', { id: 'cold', method: 'cold' }),
      pile('2026-05-20', { id: 'curing', curingSince: '2027-05-01' }),
      pile('2026-05-20', { id: 'ready', finishedOn: '2027-04-01' }),
    ];
    expect(supply(garden({ startedOn: '2027-05-21', piles })).map(({ pileId, ready }) => [pileId, ready])).toEqual([
      ['hot', addDays('2027-05-20', 148)],
      ['cold', addDays('2026-05-20', 730)],
      ['curing', '2027-05-29'],
      ['ready', '2027-04-01'],
    ]);
  });

  it('is nothing where it was skipped, or never built by two months after its window', () => {
    const planned = garden({ startedOn: '2027-06-01', piles: [pile('2027-06-20')] });
    expect(supply(planned)).toHaveLength(1);
    expect(supply({ ...planned, skipped: { 'pile-build/pile:p': '2027-06-02' } })).toEqual([]);
    expect([supply(planned, '2027-08-26'), supply(planned, '2027-08-27')].map(({ length }) => length)).toEqual([1, 0]);
  });
});
