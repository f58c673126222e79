import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../../src/climate/climate.ts';
import type { Garden } from '../../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../../src/measures/days.ts';
import { sentenceOf } from '../../../../src/practices/catalogue.ts';
import type { GapFit } from '../../../../src/practices/cover-cropping/fit/fit.ts';
import { bestCover, gapFits } from '../../../../src/practices/cover-cropping/fit/gap-fits.ts';
import { gapsAhead } from '../../../../src/practices/cover-cropping/fit/gaps-ahead.ts';
import { bed, cover, frostDates, garden, inputOf, milwaukee, setOut, sown } from '../../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

function fits(of: Garden, over: Climate = climate, today: Day = of.startedOn): GapFit[] {
  const input = inputOf(of, over, today);
  const [span] = gapsAhead(input, bed('a'));
  if (span === undefined) throw new Error('No gap ahead.');
  return gapFits(input, bed('a'), span);
}

function theFit(all: readonly GapFit[], id: string): GapFit {
  const found = all.find(({ choice }) => (choice.choice === 'cover' ? choice.coverId : choice.mulch) === id);
  if (found === undefined) throw new Error(`no fit for ${id}`);
  return found;
}

const against = ({ cons }: GapFit) => cons.map(({ rule }) => rule);

describe('the gaps of a bed', () => {
  const spans = (of: Garden) => gapsAhead(inputOf(of, climate), bed('a')).map(({ from, to }) => [from, to]);

  it('run from the last harvest to the next planting, and on from the last crop with no end', () => {
    const plantings = [
      sown('carrot', '2027-04-15', { harvested: '2027-08-09' }),
      setOut('tomato', '2028-06-01', { harvested: '2028-09-30' }),
    ];
    expect(spans(garden({ startedOn: '2027-08-01', plantings }))).toEqual([
      ['2027-08-10', '2028-06-01'],
      ['2028-10-01', undefined],
    ]);
  });

  it('are not looked for more than two years ahead', () => {
    const plantings = [sown('carrot', '2027-04-15', { harvested: '2029-09-01' })];
    expect(spans(garden({ startedOn: '2027-08-01', plantings }))).toEqual([]);
    expect(spans(garden({ startedOn: '2027-09-03', plantings }))).toHaveLength(1);
  });

  it('leave out what a sown cover holds, but not what one is only planned for', () => {
    const plantings = [setOut('tomato', '2028-06-01', { harvested: '2028-09-30' })];
    const over = (day: Day) =>
      spans(garden({ startedOn: '2027-09-05', plantings, stands: [cover('cereal_rye', day)] }));
    expect(over('2027-09-20')[0]).toEqual([undefined, '2028-06-01']);
    expect(over('2027-09-01')[0]?.[0]).not.toBe(undefined);
  });

  it('are none in a bed a lasting crop holds', () => {
    expect(spans(garden({ plantings: [setOut('rhubarb', '2026-05-01')] }))).toEqual([]);
  });
});

describe('the choices for a gap', () => {
  const wantedInJune = garden({
    startedOn: '2027-07-20',
    plantings: [sown('carrot', '2027-04-15', { harvested: '2027-08-09' }), setOut('tomato', '2028-06-15')],
  });

  it('are every cover, every mix, leaves and straw, with what is forbidden last', () => {
    const all = fits(wantedInJune);
    expect(all).toHaveLength(21 + 6 + 2);
    const order = all.map(({ verdict }) => ({ good: 0, possible: 0, poor: 1, unusable: 2 })[verdict]);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('put what holds the winter ahead before a mulch, and a mulch before what is sown after that winter', () => {
    const open = garden({ plantings: [sown('carrot', '2027-04-15', { harvested: '2027-09-15' })] });
    const names = (today: Day) => fits(open, climate, today).map(({ name }) => name);
    const autumn = names('2027-09-16');
    expect(autumn[0]).toBe('winter rye');
    expect(autumn.indexOf('a mulch of leaves')).toBeLessThan(autumn.indexOf('oats with hairy vetch'));
    expect(autumn.indexOf('a mulch of leaves')).toBeGreaterThan(0);
    // Once winter is over nothing of the kind is left to wait for.
    expect(names('2028-04-01').indexOf('a mulch of leaves')).toBeGreaterThan(5);
  });

  it('say when to sow, when to cut, and when the bed is free: rye 31 days before plants of 15 June', () => {
    const rye = theFit(fits(wantedInJune), 'cereal_rye');
    expect(rye.sow).toMatchObject({ earliest: '2027-08-20', latest: '2027-10-01' });
    // Ten days to see it grow again and three weeks of sheet (cover:S39).
    expect(rye.cut?.window.latest).toBe('2028-05-15');
    expect(rye.next).toEqual({ met: 'yes', how: 'through residue', freeOn: '2028-06-15', wantedOn: '2028-06-15' });
  });

  it('ask for no cut of oats, which winter ends in zone 5', () => {
    const place = { ...wantedInJune.place, hardinessZone: '5b' };
    const oats = theFit(fits({ ...wantedInJune, place }), 'oats');
    expect(oats.cut).toBe(undefined);
    expect(oats.next?.met).toBe('yes');
    expect(oats.next && oats.next.freeOn < '2028-05-15').toBe(true);
  });

  it('pull residue aside for small seed', () => {
    const plantings = [sown('carrot', '2027-04-15', { harvested: '2027-08-09' }), sown('lettuce-leaf', '2028-06-15')];
    expect(theFit(fits(garden({ startedOn: '2027-07-20', plantings })), 'cereal_rye').next?.how).toBe(
      'residue pulled aside',
    );
  });

  it('give seed by the area: oats at 14 g/m² over 3 m² are 42 g', () => {
    const [seed] = theFit(fits(wantedInJune), 'oats').seed;
    expect(seed).toMatchObject({ gPerM2: 14, grams: 42 });
  });

  it('give mulch in litres: 65 mm over 3 m² are 195 L', () => {
    expect(theFit(fits(wantedInJune), 'leaves').mulch).toEqual({ litres: 195, depthMm: 65 });
  });

  it('name the inoculant of each legume in a mix once', () => {
    expect(theFit(fits(wantedInJune), 'oats-field-pea-vetch').needs.inoculants).toEqual(['pea and vetch']);
  });
});

describe('what is forbidden', () => {
  const between = (crop: string, next: string) =>
    fits(
      garden({
        startedOn: '2027-07-01',
        plantings: [sown(crop, '2027-04-15', { harvested: '2027-07-15' }), setOut(next, '2028-06-15')],
      }),
    );

  it('is mustard and radish before cabbage or after it (cover:S4e)', () => {
    expect(against(theFit(between('carrot', 'cabbage'), 'mustard'))).toContain('cover-fit.cabbage-kin');
    expect(theFit(between('carrot', 'cabbage'), 'oilseed_radish').verdict).toBe('unusable');
    expect(theFit(between('broccoli', 'tomato'), 'mustard').verdict).toBe('unusable');
    expect(theFit(between('carrot', 'tomato'), 'mustard').verdict).not.toBe('unusable');
  });

  it('is a legume, alone or in a mix, beside peas', () => {
    expect(theFit(between('pea', 'tomato'), 'hairy_vetch').verdict).toBe('unusable');
    expect(theFit(between('pea', 'tomato'), 'oats-field-pea').verdict).toBe('unusable');
  });

  it('is cucumber straight after mustard grown in spring, not after mustard that winter killed (cover:S4h)', () => {
    const inSpring = fits(garden({ startedOn: '2027-03-01', plantings: [setOut('cucumber', '2027-07-20')] }));
    expect(against(theFit(inSpring, 'mustard'))).toContain('cover-fit.vine-after-mustard');
    expect(against(theFit(between('carrot', 'cucumber'), 'mustard'))).not.toContain('cover-fit.vine-after-mustard');
  });

  it('is what carries a disease found in the bed', () => {
    const diseases = [{ bedId: 'a', cropId: 'cabbage', disease: 'clubroot', on: '2026-08-01' }];
    const of = garden({
      startedOn: '2027-07-01',
      plantings: [sown('carrot', '2027-04-15', { harvested: '2027-07-10' })],
    });
    expect(against(theFit(fits({ ...of, diseases }), 'mustard'))).toContain('cover-fit.disease');
  });

  it('is any cover in a gap of five weeks in May, and mulch is left', () => {
    const plantings = [
      setOut('lettuce-head', '2027-04-10', { harvested: '2027-05-01' }),
      setOut('tomato', '2027-06-05'),
    ];
    const all = fits(garden({ startedOn: '2027-05-01', plantings }));
    expect(all.filter(({ verdict }) => verdict !== 'unusable').map(({ choice }) => choice.choice)).toEqual([
      'mulch',
      'mulch',
    ]);
  });

  it('is everything but mulch where no freeze date is known', () => {
    const nothing: Climate = {
      ...climate,
      freezes: {
        32: { 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } },
        28: { 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } },
        24: { 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } },
      },
    };
    const all = fits(garden({ startedOn: '2027-07-01' }), nothing);
    expect(all.filter(({ choice }) => choice.choice === 'cover').every(({ verdict }) => verdict === 'unusable')).toBe(
      true,
    );
    expect(against(theFit(all, 'oats'))).toEqual(['cover-fit.no-dates']);
  });

  it('always has its sentence', () => {
    const said = [...between('pea', 'cabbage'), ...between('broccoli', 'pea')].flatMap(({ cons, pros }) => [
      ...cons,
      ...pros,
    ]);
    for (const reason of said) expect(sentenceOf(reason.rule)?.(reason), reason.rule).toMatch(/\.$/);
  });
});

describe('a gap with a cover planned in it', () => {
  it('is thought over as if nothing were planned', () => {
    const plantings = [setOut('tomato', '2028-06-15')];
    const of = garden({ startedOn: '2027-08-01', plantings });
    const planned = { ...of, stands: [cover('cereal_rye', '2027-09-15')] };
    expect(fits(planned, milwaukee).map(({ name }) => name)).toEqual(fits(of, milwaukee).map(({ name }) => name));
    expect(theFit(fits(planned, milwaukee), 'oats')).toEqual(theFit(fits(of, milwaukee), 'oats'));
  });
});

it('is the same half a year later at latitude −43', () => {
  const south = frostDates('10-20', '04-20', -43);
  const plantings = [sown('carrot', '2027-10-15', { harvested: '2028-02-10' }), setOut('tomato', '2028-12-15')];
  const rye = theFit(
    fits(garden({ startedOn: '2028-02-01', place: { latitude: -43, hardinessZone: '6a' }, plantings }), south),
    'cereal_rye',
  );
  expect(rye.sow?.latest).toBe('2028-04-20');
  // Its flowers ask for the cut before what follows does; then ten days and three weeks of sheet.
  const cut = rye.cut?.window.latest ?? '';
  expect(cut > '2028-10-01' && cut < addDays('2028-12-15', -31), cut).toBe(true);
  expect(rye.next).toMatchObject({ met: 'yes', freeOn: addDays(cut, 31) });
});

describe('the cover that is suggested', () => {
  const emptied = ['2027-06-20', '2027-07-10', '2027-07-31', '2027-08-10', '2027-08-25', '2027-09-10', '2027-10-05'];
  const wanted = [undefined, '2028-04-20', '2028-05-20', '2028-06-05', '2028-07-10'];

  it.each([
    ['two freeze dates', climate],
    ['the record of Milwaukee', milwaukee],
  ])(
    'is what stands first of all covers that serve, by %s, though not all of them are worked out in full',
    (_, over) => {
      for (const out of emptied)
        for (const next of wanted) {
          const plantings = [
            sown('carrot', '2027-04-15', { harvested: out }),
            ...(next === undefined ? [] : [setOut('tomato', next)]),
          ];
          const of = garden({ startedOn: '2027-06-01', plantings });
          const input = inputOf(of, over);
          const [span] = gapsAhead(input, bed('a')).filter(({ from }) => from === addDays(out, 1));
          if (span === undefined) throw new Error(`No gap from ${out}.`);
          const [first] = gapFits(input, bed('a'), span).filter(
            ({ choice, verdict }) => choice.choice === 'cover' && (verdict === 'good' || verdict === 'possible'),
          );
          const best = bestCover(input, bed('a'), span, { from: addDays(out, 1), isTaken: () => false })?.fit;
          const rankOf = (fit: GapFit | undefined) => fit && [fit.wintersBare, fit.verdict, fit.points];
          expect(rankOf(best), `${out} to ${next}`).toEqual(rankOf(first));
        }
    },
  );
});
