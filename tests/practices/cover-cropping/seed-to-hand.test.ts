import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Garden, Stand } from '../../../src/garden/garden.ts';
import type { SeedPacket } from '../../../src/garden/household.ts';
import { coverCrops } from '../../../src/handbook/cover-crops.ts';
import { coverSeedLifeOf, seedLives } from '../../../src/handbook/seed-life.ts';
import type { Day } from '../../../src/measures/days.ts';
import { seedToBuy } from '../../../src/practices/cover-cropping/fit/seed-to-buy.ts';
import { lackingOf, type SowingNeed, seedLeft } from '../../../src/practices/cover-cropping/seed-left.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, inputOf, rulesOf } from '../gardens.ts';

/** Bed A of 28.56 m², where oats at 14 g/m² (cover:S4c) take 399.84 g, 400 g in whole ones. */
const WIDE = bed('a', { lengthM: 20, widthM: 1.428 });
const climate = frostDates('04-28', '10-19');

const packet = (coverId: string, grams: number, on: Day, packedYear = Number(on.slice(0, 4))): SeedPacket => ({
  plant: { kind: 'cover', id: coverId },
  packedYear,
  held: { grams, on },
});
/** Oats that grew in bed A from 25 August 2027 and are over. */
const lastYear = (seed?: Stand['seed']): Stand =>
  cover('oats', '2027-08-25', { id: 'old', deadOn: '2028-03-20', ...(seed ? { seed } : {}) });
const SOWN_320 = [{ coverId: 'oats', on: '2027-08-25', grams: 320 }];
const BOUGHT_500 = packet('oats', 500, '2027-07-20');

/** A garden of 1 June 2028 that means to sow oats in bed A on 25 August, after what is said. */
function next(parts: Partial<Omit<Garden, 'place'>> = {}, coverId = 'oats'): Garden {
  const { stands = [lastYear(SOWN_320)], ...rest } = parts;
  const stand = cover(coverId, '2028-08-25', { id: 'next' });
  return garden({ startedOn: '2028-06-01', beds: [WIDE], stands: [...stands, stand], seeds: [BOUGHT_500], ...rest });
}
const orders = (of: Garden): TaskDraft[] =>
  draftsIn(of, climate).filter(({ kind, key }) => kind === 'order-cover-seed' && key.includes('stand:next'));
const asked = (of: Garden) => orders(of)[0]?.makes;
const sowing = (of: Garden): TaskDraft => draft(draftsIn(of, climate), 'cover-sow/stand:next');
const oats = (grams: number) => [{ makes: 'seed-bought', coverId: 'oats', grams }];

describe('the order of cover seed', () => {
  it('asks for all of it where no grams are known', () => {
    expect(asked(next({ seeds: [] }))).toEqual(oats(400));
    const unweighed: SeedPacket = { plant: { kind: 'cover', id: 'oats' }, packedYear: 2028 };
    expect(asked(next({ seeds: [unweighed] }))).toEqual(oats(400));
  });

  it('asks for what is lacking: 500 g ordered, 320 g sown, of 400 g another 220 g', () => {
    const [order] = orders(next());
    expect(order?.makes).toEqual(oats(220));
    expect(order?.supplies).toEqual([{ what: 'oats seed', amount: { value: 220, unit: 'g' } }]);
    expect(order?.steps.slice(0, 2)).toEqual([
      'Oats: ⟦220 g⟧.',
      'The sowing takes ⟦400 g⟧: ⟦180 g⟧ of oats is left from before and still good.',
    ]);
    expect(order && rulesOf(order)).toContain('cover-order.left');
    expect(order?.reasons.map(reasonSentence).join(' ')).toContain('⟦180 g⟧ of what was bought before was not sown');
  });

  it('is none where the drawer has it all, and the sowing says so', () => {
    const full = next({ seeds: [packet('oats', 720, '2027-07-20')] });
    expect(orders(full)).toEqual([]);
    expect(sowing(full).steps[0]).toBe('Its seed is in the drawer: ⟦400 g⟧ of oats, left from before.');
    expect(orders(next({ seeds: [packet('oats', 719, '2027-07-20')] }))[0]?.makes).toEqual(oats(1));
  });

  it('counts nothing of seed past its life, and tells of it: oats keep two years (a house default)', () => {
    const aged = (packedYear: number) => next({ seeds: [packet('oats', 500, '2027-07-20', packedYear)] });
    expect(asked(aged(2027))).toEqual(oats(220));
    const [order] = orders(aged(2026));
    expect(order?.makes).toEqual(oats(400));
    expect(order?.steps[1]).toContain('⟦180 g⟧ of oats from 2026 is not counted');
    expect(order?.reasons.map(reasonSentence).join(' ')).toContain('is 2 years old when it would be sown; it keeps 2');
  });

  it('counts a stand nobody told the seed of at the published rate over its bed: 400 g', () => {
    expect(asked(next({ stands: [lastYear()] }))).toEqual(oats(300));
  });

  it('counts what was told once, though the day of the sowing was put right since', () => {
    const moved = SOWN_320.map((row) => ({ ...row, on: '2027-08-28' }));
    expect(asked(next({ stands: [lastYear(moved)] }))).toEqual(oats(220));
    // What was sown again over thin places is not the first sowing, whose 400 g are reckoned besides: 80 g are left of it.
    const again = {
      ...lastYear([{ coverId: 'oats', on: '2027-09-10', grams: 20 }]),
      resown: [{ on: '2027-09-10', coverId: 'oats' }],
    };
    expect(asked(next({ stands: [again] }))).toEqual(oats(320));
  });

  it('takes nothing for a sowing before the day a packet was weighed', () => {
    expect(asked(next({ seeds: [packet('oats', 150, '2027-12-01', 2027)] }))).toEqual(oats(250));
  });

  it('never goes below an empty drawer', () => {
    const sown = [{ coverId: 'oats', on: '2027-08-25', grams: 900 }];
    expect(asked(next({ stands: [lastYear(sown)] }))).toEqual(oats(400));
  });

  it('goes by the kinds of a mix: what is left of the oats is not ordered, the peas are', () => {
    // Oats 9.3 and field pea 7.1 g/m² in the mix (cover:S24), over 28.56 m²: 266 and 203 g.
    const mix = (grams: number) => asked(next({ seeds: [packet('oats', grams, '2028-02-01')] }, 'oats-field-pea'));
    const peas = { makes: 'seed-bought', coverId: 'field_pea', grams: 203 };
    expect(mix(100)).toEqual([{ ...peas, coverId: 'oats', grams: 166 }, peas]);
    expect(mix(300)).toEqual([peas]);
  });

  it('leaves a sowing the seed that was ordered for it, and counts it for no other', () => {
    const second = cover('oats', '2028-09-01', { id: 'later', bedId: 'b' });
    const mark = {
      key: 'cover-order/stand:later',
      on: '2028-06-01',
      practice: 'cover-cropping',
      kind: 'order-cover-seed',
    };
    const done = [
      {
        ...{ ...mark, title: 'Order', job: { id: 'o', title: 'O' }, effortMinutes: 1, entry: 2 },
        subject: { type: 'garden', id: 'g', name: 'Garden' } as const,
      },
    ];
    const parts = { beds: [WIDE, bed('b', { lengthM: 10, widthM: 1 })], stands: [lastYear(SOWN_320), second] };
    const seeds = [BOUGHT_500, packet('oats', 140, '2028-06-01')];
    expect(asked(next({ ...parts, seeds, done }))).toEqual(oats(220));
    // Unordered, the later one comes after this one and finds nothing.
    expect(asked(next({ ...parts, seeds }))).toEqual(oats(80));
  });

  it('is added up so for the end of the season too', () => {
    const bought = seedToBuy(inputOf(next(), climate));
    expect(bought.map(({ coverId, grams }) => [coverId, grams])).toEqual([['oats', 220]]);
    expect(seedToBuy(inputOf(next({ seeds: [packet('oats', 720, '2027-07-20')] }), climate))).toEqual([]);
  });

  it('is the same half a year away in the south, over the turn of the year', () => {
    const south = frostDates('10-28', '04-19', -43);
    const stands = [
      cover('oats', '2027-02-25', {
        ...{ id: 'old', deadOn: '2027-09-20', seed: [{ coverId: 'oats', on: '2027-02-25', grams: 320 }] },
      }),
      cover('oats', '2028-02-25', { id: 'next' }),
    ];
    const at = (packedYear: number) =>
      draftsIn(
        garden({
          ...{ startedOn: '2027-12-01', beds: [WIDE], stands, place: { latitude: -43 } },
          seeds: [packet('oats', 500, '2027-01-20', packedYear)],
        }),
        south,
      ).find(({ key }) => key === 'cover-order/stand:next')?.makes;
    expect(at(2027)).toEqual(oats(220));
    expect(at(2026)).toEqual(oats(400));
  });
});

describe('what is left of cover seed', () => {
  const left = (of: Garden) => seedLeft(inputOf(of, climate)).map(({ packedYear, grams }) => [packedYear, grams]);

  it('is taken from the oldest packet that is still good, and only then from an older one', () => {
    const seeds = [packet('oats', 200, '2027-07-20', 2027), packet('oats', 300, '2027-07-20', 2026)];
    expect(left(next({ seeds }))).toEqual([[2027, 180]]);
    const stale = [packet('oats', 200, '2027-07-20', 2024), packet('oats', 300, '2027-07-20', 2027)];
    expect(left(next({ seeds: stale }))).toEqual([[2024, 180]]);
  });

  it('is of seed of covers alone', () => {
    const seeds: SeedPacket[] = [
      { plant: { kind: 'crop', id: 'pea' }, packedYear: 2028, held: { grams: 9, on: '2028-01-01' } },
    ];
    expect(left(next({ seeds }))).toEqual([]);
  });
});

describe('what sowings to come lack', () => {
  const amount = fc.integer({ min: 1, max: 900 });
  const need = (standId: string, grams: number, parts: Partial<SowingNeed> = {}): SowingNeed => ({
    ...{ standId, on: '2028-08-25', need: [{ coverId: 'oats', grams }], ordered: false, planned: true },
    ...parts,
  });
  const sum = (grams: readonly number[]): number => grams.reduce((all, each) => all + each, 0);
  const lacked = (of: Garden, needs: readonly SowingNeed[]) =>
    needs.map(({ standId }) =>
      sum((lackingOf(inputOf(of, climate), needs).get(standId) ?? []).map((each) => each.grams)),
    );

  it('is in all what they take less what was bought and not sown, however it was bought', () => {
    fc.assert(
      fc.property(
        fc.array(amount, { maxLength: 4 }),
        amount,
        fc.array(amount, { minLength: 1, maxLength: 4 }),
        (bought, grams, wanted) => {
          const stands = [lastYear([{ coverId: 'oats', on: '2027-08-25', grams }])];
          const seeds = bought.map((each) => packet('oats', each, '2027-07-20'));
          const there = Math.max(0, sum(bought) - grams);
          const needs = wanted.map((each, at) => need(`s-${at}`, each));
          expect(sum(lacked(next({ stands, seeds }), needs))).toBe(Math.max(0, sum(wanted) - there));
        },
      ),
    );
  });

  it('falls on suggested sowings first, then on the later of those planned', () => {
    const of = next();
    expect(lacked(of, [need('a', 100, { planned: false, on: '2028-08-01' }), need('b', 100)])).toEqual([20, 0]);
    expect(lacked(of, [need('a', 100, { on: '2028-09-01' }), need('b', 100)])).toEqual([20, 0]);
    expect(lacked(of, [need('a', 100, { on: '2028-09-01', ordered: true }), need('b', 100)])).toEqual([0, 20]);
  });

  it('is all of it before the day the seed is there', () => {
    expect(lacked(next(), [need('a', 100, { on: '2027-07-01' })])).toEqual([100]);
  });
});

describe('a sowing of a cover', () => {
  it('asks for the grams of each kind, as planned', () => {
    expect(sowing(next({}, 'oats-field-pea')).makes.slice(1)).toEqual([
      { makes: 'seed-sown', standId: 'next', coverId: 'oats', grams: 266 },
      { makes: 'seed-sown', standId: 'next', coverId: 'field_pea', grams: 203 },
    ]);
  });
});

describe('the look at a young cover', () => {
  /** Oats on 3 m²: published at 12.3 to 15.7 g/m² broadcast (cover:S4c), 36 to 48 g in whole ones. */
  const look = (grams: number, coverId = 'oats', day = '2027-09-05') => {
    const seed = [{ coverId, on: day, grams }];
    const of = garden({ startedOn: day, stands: [cover(coverId, day, { seed })] });
    return draftsIn(of, climate).find(({ kind }) => kind === 'check-stand');
  };

  it('tells of seed that was sown thinner than published, and looks for gaps', () => {
    const check = look(9);
    expect(check?.steps[0]).toBe(
      'It was sown at ⟦3 gPerM2⟧, where the handbook has ⟦12.3 to 15.7 gPerM2⟧: look for gaps.',
    );
    expect(check?.reasons.at(-1)).toMatchObject({ rule: 'cover-check.density', source: 'cover:S4c' });
    expect(check?.reasons.map(reasonSentence).at(-1)).toContain('Oats went in at ⟦3 gPerM2⟧');
  });

  it('tells of seed that was sown thicker', () => {
    expect(look(90)?.steps[0]).toContain('look whether it stands so close');
  });

  it.each([36, 42, 48])('says nothing inside the published rate: %d g', (grams) => {
    expect(look(grams) && rulesOf(look(grams) as TaskDraft)).toEqual(['cover-check.emergence']);
  });

  it('finds rye as thick as a late sowing asks neither thick nor, sown early at that, right', () => {
    // 28 g/m² half a week before the freeze, 9.5 to 15.7 else (cover:S4b).
    expect(look(84, 'cereal_rye', '2027-10-15')?.steps[0]).toContain('Stand over the bed');
    expect(look(84, 'cereal_rye', '2027-09-15')?.steps[0]).toContain('look whether');
  });
});

describe('the life of cover seed', () => {
  it('is known of every cover, and lies among those published of vegetables (veg:V81: 1 to 6 years)', () => {
    const published = new Set(seedLives.map(({ years }) => years));
    expect(coverCrops.length).toBeGreaterThan(20);
    for (const { id } of coverCrops) expect(published, id).toContain(coverSeedLifeOf(id).years);
  });

  it('is of no mix and no unknown kind', () => {
    expect(() => coverSeedLifeOf('rye-vetch')).toThrow('No seed life is known of "rye-vetch"');
  });
});
