import { describe, expect, it } from 'vitest';
import { yardSheet } from '../../../src/digest/yard-sheet.ts';
import type { Garden } from '../../../src/garden/garden.ts';
import { readableIn } from '../../../src/measures/quantity.ts';
import { compostBalance } from '../../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, pile, rulesOf, setOut, sown } from '../gardens.ts';

const NEW = { plannedFor: '2027-04-20', depthM: 0.3, pathsM2: 2 } as const;
const newBed = (parts: Parameters<typeof bed>[1] = {}) => bed('n', { ...NEW, ...parts });
const withNew = (parts: Parameters<typeof garden>[0] = {}, own: Parameters<typeof bed>[1] = {}) =>
  garden({ startedOn: '2026-09-01', beds: [bed('a'), newBed(own)], ...parts });
const inN = (planting: Garden['plantings'][number]) => ({ ...planting, bedId: 'n' });
const keysAbout = (drafts: readonly TaskDraft[], id: string) =>
  drafts
    .filter(({ subject }) => subject.id === id || ('bedId' in subject && subject.bedId === id))
    .map(({ key }) => key);
const told = (task: TaskDraft) => readableIn('metric', task.reasons.map(reasonSentence).join(' '), '2027-01-01');

describe('a bed planned for spring', () => {
  const drafts = draftsIn(withNew({ plantings: [inN(sown('pea', '2027-04-24'))] }));

  it('is marked out, its mix ordered, and filled: three tasks', () => {
    expect(keysAbout(drafts, 'n').filter((key) => /^bed-(mark|mix|fill)/.test(key))).toEqual([
      'bed-mark/bed:n',
      'bed-mix/bed:n',
      'bed-fill/bed:n',
    ]);
  });

  it('is filled by its day, on soil that is thawed and awake, after it is marked out and a handful crumbled', () => {
    const fill = draft(drafts, 'bed-fill/');
    expect(fill.window.latest).toBe('2027-04-20');
    expect(fill.window.earliest >= '2027-03-23' && fill.window.earliest < '2027-04-20').toBe(true);
    expect(fill.needs).toEqual(['soil-fit', 'above-freezing']);
    expect(fill.after.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['bed-mark/bed:n', 'squeeze-test/soil:loam/2027/1']),
    );
  });

  it('has its mix ordered five weeks before: two for delivery, three for beans in it', () => {
    const [order, fill] = [draft(drafts, 'bed-mix/'), draft(drafts, 'bed-fill/')];
    expect(fill.window.preferred).toBe('2027-04-13');
    expect(order.window.latest).toBe('2027-03-09');
    expect(fill.after).toContainEqual({ key: 'bed-mix/bed:n', minDays: 35 });
    expect(order.cautions.join(' ')).toContain('weedkiller');
  });

  it('says its sum step by step', () => {
    const words = told(draft(drafts, 'bed-fill/'));
    // 2.5 × 1.2 × 0.3 m; 2 m² × 51 mm; 900 − 101 and a tenth; 3 in over 3 m².
    for (const part of [
      'hold 900 L',
      'give 101 L of topsoil',
      'leaves 799 L',
      '879 L to bring',
      'up to 228 L may be compost',
    ])
      expect(words).toContain(part);
    expect(words).toContain('3 m² filled 300 mm deep');
  });

  it('sows nothing before it is filled', () => {
    const pea = draft(drafts, 'sow/planting:pea');
    expect(pea.window.earliest >= '2027-04-20').toBe(true);
    expect(pea.after).toContainEqual({ key: 'bed-fill/bed:n', minDays: 0 });
  });

  it('raises plants for it indoors all the same', () => {
    const tomato = draftsIn(withNew({ plantings: [inN(setOut('tomato', '2027-05-29'))] }));
    const [indoors, out] = [draft(tomato, 'start-indoors/planting:'), draft(tomato, 'set-out/planting:')];
    expect(indoors.window.earliest < '2027-04-20').toBe(true);
    expect(indoors.after).toEqual([]);
    expect(out.after).toContainEqual({ key: 'bed-fill/bed:n', minDays: 0 });
  });

  it('is not squeezed, mulched or topdressed before it is there, nor topdressed again for its first season', () => {
    const asked = draftsIn(withNew({ stands: [], plantings: [] }, { soilTexture: 'clay' }));
    expect(asked.some(({ key }) => key.startsWith('squeeze-test/soil:clay/2027'))).toBe(false);
    expect(asked.some(({ key }) => key.startsWith('topdress/bed:n/2027'))).toBe(false);
    for (const { subject, window } of asked.filter(({ practice }) => practice !== 'new-beds'))
      if (subject.id === 'n') expect(window.earliest >= '2027-04-20').toBe(true);
  });

  it('once filled has no more such tasks, and its first layer comes for the next season', () => {
    const there = draftsIn(withNew({ startedOn: '2027-05-01' }, { filledOn: '2027-04-16' }));
    expect(keysAbout(there, 'n').filter((key) => /^bed-(mark|mix|fill)/.test(key))).toEqual([]);
    expect(keysAbout(there, 'n')).toContain('topdress/bed:n/2028/before-winter');
  });
});

it('a bed that was to be there before the garden was brought in is still to be made', () => {
  const late = draftsIn(withNew({ startedOn: '2027-06-01' }));
  expect(draft(late, 'bed-fill/').window.latest).toBe('2027-04-20');
  expect(draft(late, 'bed-fill/').ifMissed).toBe('still do');
  expect(draft(late, 'bed-mix/').window.earliest).toBe('2027-06-01');
});

describe('the day of the filling', () => {
  const fillFor = (plannedFor: string, climate = milwaukee, startedOn = '2026-01-01') =>
    draft(draftsIn(garden({ startedOn, beds: [newBed({ plannedFor })] }), climate), 'bed-fill/');

  it.each(['2027-01-10', '2028-02-29', '2028-01-01', '2027-12-31', '2027-12-10'])(
    'for a bed wanted in winter, on %s, is before the ground freezes, whichever year the day is of',
    (plannedFor) => {
      const autumn = plannedFor.startsWith('2027-01') ? 2026 : 2027;
      const fill = fillFor(plannedFor, milwaukee, `${autumn}-06-01`);
      expect(fill.window.latest > `${autumn}-10-23` && fill.window.latest < `${autumn}-12-01`).toBe(true);
      expect(fill.window.preferred < fill.window.latest).toBe(true);
      expect(rulesOf(fill)).toContain('bed-fill.before-frost');
      expect(rulesOf(fill)).not.toContain('bed-fill.fit-too-late');
    },
  );

  it('is before that freeze in the south too, over its winter', () => {
    const south = frostDates('10-05', '04-25', -43);
    const [june, july] = ['2027-06-28', '2027-07-05'].map((day) => fillFor(day, south, '2027-01-01'));
    expect(june?.window).toEqual(july?.window);
    expect(july?.window.latest).toMatch(/^2027-0[56]-/);
  });

  it('is never before the soil is fit: once the freeze is past, a bed wanted in January waits for the thaw, and that is said', () => {
    const { window, ...fill } = fillFor('2027-01-15', milwaukee, '2026-12-01');
    expect(window.earliest >= '2027-03-15').toBe(true);
    expect(rulesOf({ window, ...fill })).toContain('bed-fill.fit-too-late');
    expect(told({ window, ...fill })).toContain('cannot be there by then');
  });

  it('is before the ground freezes, for a bed wanted in December', () => {
    const fill = fillFor('2026-12-10');
    expect(fill.window.latest < '2026-12-01' && fill.window.latest > '2026-10-23').toBe(true);
    expect(rulesOf(fill)).toContain('bed-fill.before-frost');
  });

  it('in autumn waits for no handful of the spring after it', () => {
    expect(fillFor('2026-09-20').after.map(({ key }) => key)).toEqual(['bed-mark/bed:n', 'bed-mix/bed:n']);
  });

  it('in summer asks only for its four weeks', () => {
    const fill = fillFor('2026-08-01');
    expect(fill.window).toEqual({ earliest: '2026-07-04', preferred: '2026-07-25', latest: '2026-08-01' });
    expect(rulesOf(fill)).not.toContain('bed-fill.fit');
  });

  it('counts over 29 February', () => {
    const south = frostDates('09-10', '05-20', -43);
    expect(fillFor('2028-03-10', south, '2027-06-01').window.earliest).toBe('2028-02-11');
  });

  it('follows the southern spring', () => {
    const south = frostDates('10-05', '04-25', -43);
    const fill = fillFor('2026-10-20', south);
    expect(fill.window.latest).toBe('2026-10-20');
    expect(fill.window.earliest >= '2026-09-01').toBe(true);
    const winter = fillFor('2026-07-20', south, '2026-06-15');
    expect(winter.window.earliest >= '2026-08-01').toBe(true);
    expect(rulesOf(winter)).toContain('bed-fill.fit-too-late');
  });
});

describe('compost for a new bed', () => {
  const yard = (finishedLitres: number) =>
    withNew({
      topdressing: { depthMm: 20, season: 'autumn' },
      piles: [{ ...pile('2026-03-01'), finishedOn: '2026-08-01', finishedLitres }],
    });
  const balance = (of: Garden) => compostBalance({ garden: of, climate: milwaukee, today: of.startedOn });
  const fillOf = (of: Garden) => draft(draftsIn(of), 'bed-fill/');

  it('is what no layer goes without: none of 100 L, which the layers of bed A are promised', () => {
    const of = yard(100);
    const layers = balance(of).beds.filter(({ fill }) => fill === undefined);
    expect(layers.reduce((sum, { given }) => sum + given, 0)).toBe(100);
    expect(told(fillOf(of))).toContain('has no compost free for it');
    expect(fillOf(of).makes).toEqual([{ makes: 'bed-filled', bedId: 'n' }]);
  });

  it('stands in the balance as a demand of its own, and is no shortage: mix takes its place', () => {
    const row = balance(yard(100)).beds.find(({ fill }) => fill);
    expect(row).toMatchObject({ key: 'bed-fill/bed:n', litres: 228, given: 0 });
    const lacking = (of: Garden) => balance(of).shortfalls.map(({ season, litres }) => [season, litres]);
    const without = { ...yard(100), beds: [bed('a'), newBed({ filledOn: '2026-08-30' })] };
    expect(lacking(yard(100)).length).toBeLessThanOrEqual(lacking(without).length);
  });

  it('may take a heap that is ready now, where a newer one serves the layers after it', () => {
    // Bed A wants 60 L in the autumns of 2026 and 2027. The old heap holds 160 L, a new one is ready in summer.
    const of = withNew({
      topdressing: { depthMm: 20, season: 'autumn' },
      piles: [
        { ...pile('2026-03-01'), finishedOn: '2026-08-01', finishedLitres: 160 },
        { ...pile('2027-03-01', { id: 'q' }), finishedLitres: 200 },
      ],
    });
    const rows = balance(of).beds;
    const layers = rows.filter(({ fill }) => fill === undefined);
    expect(layers.every(({ litres, given }) => given === litres)).toBe(true);
    const fill = rows.find((row) => row.fill);
    expect(fill).toMatchObject({ litres: 228, given: 100 });
    expect(told(fillOf(of))).toContain('The yard can spare 100 L of its own by then');
  });

  it('takes nothing that any layer would be given without it, however much the yard holds', () => {
    for (const litres of [0, 30, 60, 90, 125, 180, 250, 400]) {
      const of = yard(litres);
      const without = { ...of, beds: of.beds.filter(({ id }) => id !== 'n') };
      const given = new Map(balance(of).beds.map((row) => [row.key, row.given]));
      for (const layer of balance(without).beds) expect(given.get(layer.key)).toBeCloseTo(layer.given, 6);
    }
  });

  it('is told in the yard as what it could take, and shortens no month', () => {
    const { fills, beds, shortfalls } = yardSheet(balance(yard(100)), '2026-09-01');
    expect(readableIn('metric', fills.join(' '), '2026-09-01')).toBe(
      'Bed N, to be filled by 20 April 2027, could take 228 L of compost. None is free: all is promised to layers; bought mix takes its place.',
    );
    expect(beds.some(({ fill }) => fill)).toBe(false);
    expect(shortfalls.every(({ heading }) => !heading.includes('228'))).toBe(true);
    const full = yardSheet(balance(yard(2000)), '2026-09-01');
    expect(full.beds.find(({ fill }) => fill)).toMatchObject({ litres: 228, given: 228 });
  });

  it('is given where the yard can spare it, and marking the filling done takes it off the pile', () => {
    const of = yard(2000);
    expect(told(fillOf(of))).toContain('The yard can spare all of it: 228 L');
    expect(fillOf(of).makes).toEqual([
      { makes: 'bed-filled', bedId: 'n' },
      { makes: 'bed-topdressed', bedId: 'n', litres: 228, pileIds: ['p'] },
    ]);
  });

  it('is none on ground very high in phosphorus, and the mix is asked to have little', () => {
    const of = { ...yard(2000), soilTests: [{ on: '2026-08-01', phosphorusPpm: 40 }] };
    expect(rulesOf(fillOf(of))).toContain('bed-fill.phosphorus');
    expect(fillOf(of).makes).toHaveLength(1);
  });

  it('leaves what a skipped filling would have taken', () => {
    const of = { ...yard(2000), skipped: { 'bed-fill/bed:n': '2026-09-01' } };
    expect(balance(of).beds.find(({ fill }) => fill)?.given).toBe(0);
  });
});

describe('covers and rotation', () => {
  it('sow a cover in it only once it is there', () => {
    const drafts = draftsIn(withNew({ stands: [cover('oats', '2027-04-22', { bedId: 'n' })] }));
    expect(draft(drafts, 'cover-sow/stand:s').after).toContainEqual({ key: 'bed-fill/bed:n', minDays: 0 });
  });

  it('plans it from its first season, and calls nothing of its past unknown', () => {
    const settle = (plannedFor: string) =>
      draft(draftsIn(withNew({ plantings: [sown('pea', '2026-04-10')] }, { plannedFor })), 'settle-plan/garden/2027');
    const steps = (plannedFor: string) => settle(plannedFor).steps.join(' ');
    expect(steps('2027-04-20')).toContain('Bed N');
    expect(steps('2027-04-20')).not.toMatch(/Nobody wrote down[^.]*Bed N/);
    expect(steps('2027-09-20')).not.toContain('Bed N');
  });
});
