import { describe, expect, it } from 'vitest';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import { projectGarden } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { doubtsOf } from '../../src/steward/doubts/doubts.ts';
import { samplePlan } from '../web/sample-plan.ts';
import { NORTH_TODAY, northernFile, type Sections } from './gardens.ts';

/** What is doubted of the northern garden with other sections, looked at on its first day unless on another. */
function doubts(sections: Sections, latitude = 44.5, today = NORTH_TODAY) {
  const plain = northernFile({ plantings: [], coverStands: [], piles: [], ...sections });
  const file = checkGardenFile({ ...plain, garden: { ...plain.garden, latitude } });
  const fact = { kind: 'garden-imported' as const, file, prefer: 'file' as const };
  const told = { entry: 1, recordedAt: `${NORTH_TODAY}T12:00:00.000Z`, recordedOn: NORTH_TODAY, by: 'a test', fact };
  const garden = projectGarden([told]);
  if (garden === undefined) throw new Error('The file makes no garden.');
  const climate = climateFromFrostDates({
    latitude,
    longitude: -88.1,
    frostOffsetDays: 0,
    tempOffsetC: 0,
    ...(latitude < 0 ? { lastSpring: '10-10', firstAutumn: '04-25' } : { lastSpring: '05-10', firstAutumn: '09-28' }),
  });
  return doubtsOf(file, { garden, climate, plan: { ...samplePlan([]), today }, ledger: [told] });
}

const places = (...asked: Parameters<typeof doubts>) => doubts(...asked).map(({ where }) => where);
const planted = (...plantings: Record<string, unknown>[]) => ({ plantings });

describe('a tender crop in winter', () => {
  const tomato = (setOut: string) => planted({ bed: 'north', crop: 'tomato', setOut });

  it('is doubted with the day the last freeze is over', () => {
    const [doubt] = doubts(tomato('2028-01-29'));
    expect(doubt?.where).toBe('plantings[0].setOut');
    expect(doubt?.what).toContain('Tomato bears no frost and is set out in the middle of winter, on ⟦2028-01-29⟧.');
    expect(doubt?.mend).toContain('over about ⟦2028-05-10⟧');
  });

  it('is so on either side of the New Year, and no longer in spring', () => {
    expect(places(tomato('2027-12-10'))).toEqual(['plantings[0].setOut']);
    expect(doubts(tomato('2027-12-10'))[0]?.mend).toContain('⟦2028-05-10⟧');
    expect(places(tomato('2028-05-29'))).toEqual([]);
  });

  it('is in July in the south, and not in January', () => {
    expect(places(tomato('2027-07-10'), -44.5)).toEqual(['plantings[0].setOut']);
    expect(places(tomato('2028-01-10'), -44.5)).toEqual([]);
  });

  it('is no matter for a hardy one', () => {
    const garlic = doubts(planted({ bed: 'north', crop: 'garlic', setOut: '2027-12-10' }));
    expect(garlic.filter(({ what }) => what.includes('middle of winter'))).toEqual([]);
  });
});

describe('a crop planned far outside its time', () => {
  const first = (sections: Sections, latitude?: number) => doubts(sections, latitude)[0];

  it('is doubted with the days it goes in here', () => {
    const doubt = first(planted({ bed: 'north', crop: 'tomato', setOut: '2028-04-01' }));
    expect(doubt?.where).toBe('plantings[0].setOut');
    expect(doubt?.what).toMatch(
      /^Tomato is set out on ⟦2028-04-01⟧, long before its time here, from ⟦2028-05-\d\d⟧ to ⟦2028-0[67]-\d\d⟧\.$/,
    );
  });

  it('is so of what goes in towards winter, by the autumn that is nearest', () => {
    const garlic = (setOut: string) => planted({ bed: 'north', crop: 'garlic', setOut });
    expect(first(garlic('2027-07-01'))?.what).toMatch(/long before its time here, from ⟦2027-(09|10)-\d\d⟧/);
    expect(first(garlic('2028-02-29'))?.what).toMatch(/long after its time here, from ⟦2027-(09|10)-\d\d⟧/);
    expect(places(garlic('2027-10-10'))).toEqual([]);
  });

  it('is in the south in its own months, over New Year', () => {
    const lettuce = (sow: string) => planted({ bed: 'north', crop: 'lettuce-leaf', sow });
    expect(places(lettuce('2028-01-10'), -44.5)).toEqual([]);
    expect(first(lettuce('2028-06-10'), -44.5)?.what).toMatch(/long (before|after) its time here/);
    expect(places(planted({ bed: 'north', crop: 'tomato', setOut: '2027-09-01' }), -44.5)).toHaveLength(1);
  });

  it('is none a fortnight away, nor one that is in the ground', () => {
    expect(places(planted({ bed: 'north', crop: 'tomato', setOut: '2027-05-12' }))).toEqual([]);
    expect(places(planted({ bed: 'north', crop: 'tomato', setOut: '2026-04-01' }))).toEqual([]);
  });
});

describe('a last harvest after the freeze', () => {
  const until = (crop: string, lastHarvest: string) =>
    planted({ bed: 'north', crop, setOut: '2027-05-29', lastHarvest });

  it('is doubted of a crop that bears none, with the day of the freeze', () => {
    const doubt = doubts(until('tomato', '2027-12-20')).find(({ where }) => where === 'plantings[0].lastHarvest');
    expect(doubt?.what).toBe(
      'The last harvest of tomato is to be on ⟦2027-12-20⟧, and it bears no frost: the first freeze comes about ⟦2027-09-28⟧.',
    );
  });

  it('is none within four weeks under covers, nor of what stands in the snow', () => {
    expect(places(until('tomato', '2027-10-26'))).toEqual([]);
    expect(places(until('tomato', '2027-10-27'))).toEqual(['plantings[0].lastHarvest']);
    expect(places(until('kale', '2027-12-20'))).toEqual([]);
  });

  it('is so in the south', () => {
    const tomato = (lastHarvest: string) =>
      planted({ bed: 'north', crop: 'tomato', setOut: '2027-11-05', lastHarvest });
    expect(places(tomato('2028-07-20'), -44.5)).toContain('plantings[0].lastHarvest');
    expect(places(tomato('2028-04-30'), -44.5)).toEqual([]);
  });
});

describe('sizes that are hardly meant', () => {
  const bed = (lengthM: number, widthM: number) => ({ id: 'north', name: 'north bed', lengthM, widthM });

  it('a bed nobody can reach across is one, whichever way it lies', () => {
    expect(places({ beds: [bed(3, 1.5)] })).toEqual([]);
    const [wide] = doubts({ beds: [bed(3, 1.6)] });
    expect(wide?.where).toBe('beds[0].widthM');
    expect(wide?.what).toContain('north bed is ⟦1.6 m⟧ across');
    expect(wide?.mend).toContain('⟦1.2 m⟧ is usual');
    expect(places({ beds: [bed(1.6, 3)] })).toEqual(['beds[0].lengthM']);
  });

  it('a wish for more than the garden has is one, in beds and in areas', () => {
    const wishing = (wish: Record<string, unknown>) => ({ beds: [bed(3, 1.2)], wishes: [wish] });
    expect(doubts(wishing({ crop: 'tomato', beds: 40 }))[0]?.what).toBe(
      '40 beds of tomato are wished for, and the garden has 1.',
    );
    expect(doubts(wishing({ crop: 'tomato', areaM2: 4 }))[0]?.what).toBe(
      '⟦4 m2⟧ of tomato are wished for, and the garden has ⟦3.6 m2⟧.',
    );
    expect(places(wishing({ crop: 'tomato', beds: 1 }))).toEqual([]);
    expect(places(wishing({ crop: 'tomato', areaM2: 3.6 }))).toEqual([]);
  });
});

describe('a last harvest', () => {
  const carrot = (lastHarvest: string) => planted({ bed: 'north', crop: 'carrot', sow: '2026-05-01', lastHarvest });

  it('is doubted before a crop is half grown, and not after', () => {
    expect(places(carrot('2026-05-11'))).toEqual(['plantings[0].lastHarvest']);
    expect(doubts(carrot('2026-05-11'))[0]?.what).toMatch(
      /^Carrot is over 10 days after it went in; the first is ripe/,
    );
    expect(places(carrot('2026-08-01'))).toEqual([]);
  });
});

describe('a family that comes back too soon', () => {
  const kale = { bed: 'north', crop: 'kale', setOut: '2026-05-01', lastHarvest: '2026-09-01' };
  const cabbage = (setOut: string, bed = 'north') => ({ bed, crop: 'cabbage', setOut });

  it('is doubted in the plan, with the years', () => {
    const [doubt, ...others] = doubts(planted(kale, cabbage('2027-05-10')));
    expect(others).toEqual([]);
    expect(doubt?.where).toBe('plantings[1]');
    expect(doubt?.what).toMatch(/^Cabbage comes back to north bed 1 year after kale, and \d are asked for\.$/);
  });

  it('is not in another bed, after its interval, in the same season or in the past', () => {
    expect(places(planted(kale, cabbage('2027-05-10', 'south')))).toEqual([]);
    expect(places(planted(kale, cabbage('2031-05-10')))).toEqual([]);
    const early = { ...kale, setOut: '2027-04-25', lastHarvest: '2027-07-20' };
    expect(places(planted(early, cabbage('2027-08-01')))).toEqual([]);
    const past = { ...cabbage('2026-05-01'), lastHarvest: '2026-10-01' };
    expect(places(planted({ ...kale, setOut: '2025-05-01', lastHarvest: '2025-09-01' }, past))).toEqual([]);
  });
});

describe('things of one bed in each other’s time', () => {
  const carrot = { bed: 'north', crop: 'carrot', sow: '2027-05-20', lastHarvest: '2027-09-01' };
  const stand = (cover: string, sow: string, more = {}) => ({ bed: 'north', cover, sow, ...more });

  it('a crop before the last harvest of the one before, with both days', () => {
    const [doubt, ...others] = doubts(planted(carrot, { bed: 'north', crop: 'tomato', setOut: '2027-06-10' }));
    expect(others).toEqual([]);
    expect(doubt?.where).toBe('plantings[1].setOut');
    expect(doubt?.what).toBe(
      'Tomato is set out in north bed on ⟦2027-06-10⟧, before the last harvest of the carrot there on ⟦2027-09-01⟧.',
    );
    expect(doubt?.mend).toContain('between the rows');
  });

  it('two crops that go in side by side are no doubt, nor one that follows on the day', () => {
    expect(places(planted(carrot, { bed: 'north', crop: 'lettuce-leaf', sow: '2027-05-28' }))).toEqual([]);
    expect(places(planted(carrot, { bed: 'north', crop: 'spinach', sow: '2027-09-01' }))).toEqual([]);
    expect(places(planted(carrot, { bed: 'south', crop: 'tomato', setOut: '2027-06-10' }))).toEqual([]);
  });

  it('a cover sown into a growing crop, with both days and what the plan makes of it', () => {
    const [doubt, ...others] = doubts({ ...planted(carrot), coverStands: [stand('oats', '2027-07-10')] });
    expect(others).toEqual([]);
    expect(doubt?.where).toBe('coverStands[0].sow');
    expect(doubt?.what).toContain(
      'Oats is to be sown in north bed on ⟦2027-07-10⟧, and carrot grows there from ⟦2027-05-20⟧',
    );
    expect(doubt?.mend).toContain('the plan sows it once the crop is over');
  });

  it('a cover sown while another stands, told of the later with both days', () => {
    const [doubt, ...others] = doubts({
      coverStands: [stand('oats', '2027-09-12'), stand('cereal_rye', '2027-09-10')],
    });
    expect(others).toEqual([]);
    expect(doubt?.where).toBe('coverStands[0].sow');
    expect(doubt?.what).toMatch(
      /^Oats is dated ⟦2027-09-12⟧ in north bed, where the winter rye of ⟦2027-09-10⟧ stands until about ⟦2028-/,
    );
  });

  it('covers one after another, cut in time or of two years, are no doubt, nor clover on frozen ground', () => {
    const rye = stand('cereal_rye', '2026-09-20', { cut: '2027-04-10' });
    expect(places({ coverStands: [rye, stand('oats', '2027-08-15')] })).toEqual([]);
    expect(places({ coverStands: [stand('cereal_rye', '2026-09-20'), stand('red_clover', '2027-03-10')] })).toEqual([]);
    expect(places({ coverStands: [rye, stand('oats', '2027-04-01')] })).toEqual(['coverStands[1].sow']);
  });

  it('a mulch over a crop or over a cover, with the days of both', () => {
    const leaves = (from: string, to?: string) => ({
      mulches: [{ bed: 'north', from, ...(to ? { to } : {}), mulch: 'leaves' }],
    });
    const [crop] = doubts({ ...planted(carrot), ...leaves('2027-06-10', '2027-08-01') });
    expect(crop?.where).toBe('mulches[0]');
    expect(crop?.what).toContain('from ⟦2027-06-10⟧ to ⟦2027-08-01⟧, and carrot grows there from ⟦2027-05-20⟧ until');
    const rye = { coverStands: [stand('cereal_rye', '2027-09-10')] };
    const [cover] = doubts({ ...rye, ...leaves('2027-09-01', '2028-04-01') });
    expect(cover?.what).toContain('and winter rye stands there from ⟦2027-09-10⟧ until about ⟦2028-');
    expect(places({ ...planted(carrot), ...leaves('2027-09-02') })).toEqual([]);
    expect(places({ ...rye, ...leaves('2027-08-01', '2027-09-10') })).toEqual([]);
  });

  it('are so in the south over New Year and on a leap day', () => {
    const oats = stand('oats', '2028-02-29');
    const beans = { bed: 'north', crop: 'snap-bean', sow: '2027-12-01', lastHarvest: '2028-03-20' };
    const [doubt] = doubts({ ...planted(beans), coverStands: [oats] }, -44.5);
    expect(doubt?.what).toContain('on ⟦2028-02-29⟧, and snap bean grows there from ⟦2027-12-01⟧');
    expect(places({ ...planted({ ...beans, lastHarvest: '2028-02-28' }), coverStands: [oats] }, -44.5)).toEqual([]);
  });
});

it('a pile is doubted where its bin holds less', () => {
  const pile = (litres: number) => {
    const ingredients = [{ material: 'leaves_dry_loose', litres }];
    return { piles: [{ bin: northernFile().bins[0]?.name, built: '2027-04-04', method: 'hot', ingredients }] };
  };
  const [doubt] = doubts(pile(7600));
  expect(doubt?.where).toBe('piles[0].ingredients');
  expect(doubt?.what).toContain('They make ⟦7600 L⟧ together');
  expect(places(pile(200))).toEqual([]);
});

describe('raw manure before a harvest', () => {
  const ingredients = [{ material: 'horse_manure_bedded', litres: 300 }];
  const piles = [{ id: 'dung', bin: 'left', built: '2026-04-04', method: 'cold', ingredients, finished: '2027-04-01' }];
  const carrots = { id: 'carrots', bed: 'north', crop: 'carrot', sow: '2027-05-01' };
  const spread = (on: string, parts: object = { piles: ['dung'] }) => ({
    ...planted(carrots),
    piles,
    topdressing: { depthMm: 13, season: 'autumn' },
    topdressed: [{ bed: 'north', on, litres: 40, ...parts }],
  });

  it('is a line with both dates, at the layer that was spread', () => {
    const [doubt, ...others] = doubts(spread('2027-04-15'));
    expect(others).toEqual([]);
    expect(doubt?.where).toBe('topdressed[0]');
    expect(doubt?.what).toContain('no logged hot record was spread on north bed on ⟦2027-04-15⟧.');
    expect(doubt?.what).toContain(
      'before ⟦2027-08-13⟧, 120 days after ⟦2027-04-15⟧: the first may be ripe from ⟦2027-07-10⟧',
    );
    expect(doubt?.mend).toMatch(/another bed.*local rules come first/);
  });

  it('is told of manure laid as it is, and of no other stuff', () => {
    expect(doubts(spread('2027-04-15', { material: 'cow_manure_solid' }))[0]?.what).toContain(
      'Raw manure (cow manure)',
    );
    expect(places(spread('2027-04-15', { material: 'straw_wheat' }))).toEqual([]);
  });

  it('is no line early enough, and none where the pile was not told', () => {
    expect(places(spread('2027-03-12'))).toEqual([]);
    expect(places(spread('2027-03-13'))).toEqual(['topdressed[0]']);
    expect(places(spread('2027-04-15', {}))).toEqual([]);
  });

  it('that is still to be spread is a line at the planting', () => {
    const sections = { ...spread('2026-04-15'), topdressed: [], topdressing: { depthMm: 13, season: 'spring' } };
    const [doubt] = doubts(sections);
    expect(doubt?.where).toBe('plantings[0]');
    expect(doubt?.what).toContain('is to be spread on north bed by');
    expect(doubt?.mend).toContain('give the bed compost without manure');
  });
});

it('what has happened is doubted on a day to come, and not today', () => {
  const told = (on: string) => ({
    topdressed: [{ bed: 'north', on, litres: 40 }],
    compostBought: [{ on, litres: 500 }],
    soilTests: [{ on, ph: 6.5 }],
  });
  expect(places(told('2028-02-29'))).toEqual(['topdressed[0].on', 'compostBought[0].on', 'soilTests[0].on']);
  expect(doubts(told('2028-02-29'))[0]?.what).toBe('A topdressing is dated ⟦2028-02-29⟧, which is still to come.');
  expect(places(told(NORTH_TODAY))).toEqual([]);
});

it('nothing is doubted of a garden that is well told', () => {
  const { plantings, piles, coverStands } = northernFile();
  expect(doubts({ plantings, piles, coverStands })).toEqual([]);
});

describe('a bed still to be made', () => {
  const made = (days: object) => ({
    beds: [...northernFile({}).beds, { name: 'New bed', lengthM: 2, widthM: 1, depthM: 0.3, ...days }],
  });
  const at = northernFile({}).beds.length;

  it('is doubted where it is to be there before the soil can be moved, and not in its time', () => {
    expect(places(made({ plannedFor: '2028-02-10' }), 44.5, '2027-12-15')).toEqual([`beds[${at}].plannedFor`]);
    expect(doubts(made({ plannedFor: '2028-02-10' }), 44.5, '2027-12-15')[0]?.what).toMatch(
      /New bed is to be there by ⟦2028-02-10⟧.* not fit to be moved before ⟦2028-0[345]/,
    );
    expect(places(made({ plannedFor: '2028-05-20' }))).toEqual([]);
    // In the south February is summer, and August is not.
    expect(places(made({ plannedFor: '2028-02-10' }), -44.5)).toEqual([]);
    expect(places(made({ plannedFor: '2028-07-20' }), -44.5, '2028-07-01')).toEqual([`beds[${at}].plannedFor`]);
    // As long as the freeze of autumn is ahead, it is filled before that.
    expect(places(made({ plannedFor: '2028-02-10' }))).toEqual([]);
  });

  it('is doubted where it was filled on a day to come', () => {
    expect(places(made({ plannedFor: '2028-05-20', filledOn: '2028-05-19' }))).toEqual([`beds[${at}].filledOn`]);
  });
});

describe('a succession that goes on too long', () => {
  const lettuce = (times: number, parts: Record<string, unknown> = {}) =>
    planted({
      id: 'lettuce',
      bed: 'north',
      crop: 'lettuce-leaf',
      sow: '2027-06-20',
      again: { everyDays: 14, times },
      ...parts,
    });

  it('is told with the sowings that come too late, and the times that fit', () => {
    const [doubt] = doubts(lettuce(7));
    expect(doubt?.where).toBe('plantings[0].again');
    expect(doubt?.what).toMatch(
      /^The last 3 of the 8 sowings of leaf lettuce, from ⟦2027-08-29⟧ on, would not be ready in time: it goes in until ⟦2027-08-\d\d⟧ here\.$/,
    );
    expect(doubt?.mend).toBe('Give times: 4, or fewer days between two sowings.');
    expect(places(lettuce(4))).toEqual([]);
  });

  it('says so where none of them is in time', () => {
    const [doubt] = doubts(lettuce(3, { sow: '2027-08-29' }));
    expect(doubt?.what).toMatch(/^None of the 4 sowings of leaf lettuce, from ⟦2027-08-29⟧ on, would be ready in time/);
    expect(doubt?.mend).toBe('Leave "again" out, or begin sooner.');
  });

  it('is told in the south by its own autumn', () => {
    const [doubt] = doubts(lettuce(7, { sow: '2028-01-20' }), -44.5);
    expect(doubt?.what).toMatch(/from ⟦2028-0[34]-\d\d⟧ on, would not be ready in time/);
  });

  it('says nothing of what is in the ground', () => {
    expect(places(lettuce(7, { sow: '2025-06-20' }))).toEqual([]);
  });
});
