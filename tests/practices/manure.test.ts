import { describe, expect, it } from 'vitest';
import type { Garden, Pile, Topdressed } from '../../src/garden/garden.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { sentenceOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { rawManureOf } from '../../src/practices/manure.ts';
import { bed, draft, draftsIn, frostDates, garden, milwaukee, pile, rulesOf, setOut, sown } from './gardens.ts';
import { dungPile, hotLog, leafPile } from './manure-piles.ts';

const bins = [
  { id: 'bin', name: 'Left bay', volumeL: 1200 },
  { id: 'other', name: 'Right bay', volumeL: 1200 },
];
const NO_BINS = { bins: [] };
/** A garden over Milwaukee in January with a layer of 20 mm each spring, 60 L a bed. */
const yard = (parts: Partial<Omit<Garden, 'place'>> = {}) =>
  garden({
    startedOn: '2027-01-01',
    topdressing: { depthMm: 20, season: 'spring' },
    bins,
    piles: [dungPile()],
    plantings: [sown('carrot', '2027-05-01')],
    ...parts,
  });
const tasks = (parts: Parameters<typeof yard>[0] = {}) => draftsIn(yard(parts), milwaukee);
const layer = (parts: Parameters<typeof yard>[0] = {}, bedId = 'a') =>
  draft(tasks(parts), `topdress/bed:${bedId}/2027`);
const cautions = (task: TaskDraft) => task.cautions.map((text) => readableIn('metric', text, '2026-12-31')).join('\n');
const why = (task: TaskDraft) =>
  task.reasons
    .filter(({ rule }) => rule.startsWith('manure-wait.'))
    .map((reason) => readableIn('metric', sentenceOf(reason.rule)?.(reason) ?? '', '2026-12-31'))
    .join('\n');

describe('compost that counts as raw manure', () => {
  it('is that of a pile with manure in it and no hot record, and of no other', () => {
    expect(rawManureOf(NO_BINS, dungPile())).toEqual({
      manure: 'horse manure with bedding',
      record: { days: 0, turns: 0, isOpen: false },
    });
    for (const free of [leafPile(), hotLog({ days: 15, turns: 5 })]) expect(rawManureOf(NO_BINS, free)).toBeUndefined();
  });

  it('of a pile nobody wrote the makings of says nothing here: the look whether it is ready does', () => {
    expect(rawManureOf(NO_BINS, dungPile({ ingredients: [] }))).toBeUndefined();
    const curing = pile('2026-05-01', { ingredients: [], curingSince: '2026-12-20' });
    expect(cautions(draft(tasks({ piles: [curing] }), 'pile-maturity/'))).toContain('may hold manure');
  });

  it('is that of dung alone however hot it was, and no heating is offered for it', () => {
    const { finishedOn: _, ...hot } = hotLog({ days: 15, turns: 5 });
    const dung = { ...hot, curingSince: '2026-11-20', ingredients: [{ materialId: 'cow_manure_solid', litres: 1000 }] };
    expect(rawManureOf(NO_BINS, dung)?.record).toMatchObject({ days: 15, turns: 5, isOpen: true });
    const task = layer({ piles: [dung] });
    expect(cautions(task)).not.toContain('heat the pile first');
    expect(why(task)).toMatch(
      /whatever it shows, its compost counts as raw manure: it was begun at about 1\d of carbon/,
    );
  });

  it('may still get its record while it is at work, and the warning says so', () => {
    const working = dungPile();
    const { finishedOn: _, ...open } = working;
    expect(rawManureOf(NO_BINS, open)?.record?.isOpen).toBe(true);
  });
});

describe('a layer of it before a crop', () => {
  it('is warned of with the days the bed is closed and the harvest that comes too soon', () => {
    const said = cautions(layer());
    expect(said).toContain('wear gloves');
    // Its last day is 24 April: 120 days, 90 days. Carrots take 70 from 1 May.
    expect(said).toContain(
      'Bed A: spread on 24 April 2027, its last day, nothing that touches soil is harvested there before 22 August 2027, and nothing else before 23 July 2027;',
    );
    expect(said).toContain(
      'the carrot planned for 1 May 2027 may be ripe from 10 July 2027; the 120 days from 24 April 2027 end on 22 August 2027.',
    );
    expect(said).toContain('grow there what is ripe after 22 August 2027');
    expect(said).toMatch(/no promise that food is safe.*label and no licence\. Local rules come first/);
  });

  it('says why: what the pile holds, what its log lacks, both dates', () => {
    const task = layer();
    expect(rulesOf(task)).toEqual(expect.arrayContaining(['manure-wait.as-raw', 'manure-wait.clash']));
    expect(why(task)).toContain('holds horse manure with bedding. Its log shows 0 days at 55 °C and 0 turns');
    expect(task.reasons.find(({ rule }) => rule === 'manure-wait.clash')).toMatchObject({
      saw: { crop: 'carrot', ripe: '2027-07-10', days: 120, spread: '2027-04-24' },
      limit: '2027-08-22',
    });
  });

  it('names the beds it would not harm, and heating while that can still be', () => {
    const beds = [bed('a'), bed('b')];
    expect(cautions(layer({ beds }))).toContain('Spread it on Bed B instead');
    expect(cautions(layer({ beds }))).not.toContain('heat the pile first');
    const { finishedOn: _, ...curing } = dungPile({ curingSince: '2026-11-20' });
    expect(cautions(layer({ piles: [curing] }))).toMatch(/heat the pile first \(15 logged days at 55 °C, 5 turns\)/);
  });

  it('from a pile with a hot record, or without manure, carries no such word', () => {
    for (const free of [hotLog({ days: 15, turns: 5 }), leafPile()]) {
      const drafts = tasks({ piles: [free] });
      expect(drafts.flatMap(rulesOf).filter((rule) => rule.startsWith('manure-wait.'))).toEqual([]);
      expect(drafts.flatMap((each) => each.cautions).join(' ')).not.toContain('raw manure');
    }
  });

  it('goes on in time where its days allow that, so that the harvest keeps the wait', () => {
    // Tomatoes set out on 25 May are ripe from 24 July: 90 days after 25 April, on stakes.
    const task = layer({ plantings: [setOut('tomato', '2027-05-25')] });
    expect(task.window.latest).toBe('2027-04-25');
    expect(task.window.preferred <= task.window.latest).toBe(true);
    expect(rulesOf(task)).toContain('manure-wait.by');
    expect(rulesOf(task)).not.toContain('manure-wait.clash');
    expect(cautions(task)).toContain(
      'on the bed by 25 April 2027. The tomato may be ripe from 24 July 2027, 90 days later (on stakes; on the ground 120).',
    );
    const free = layer({ plantings: [setOut('tomato', '2027-05-25')], piles: [leafPile()] });
    expect(free.window.latest > '2027-04-25').toBe(true);
  });

  it('in autumn lies long enough before spring’s crops', () => {
    const drafts = draftsIn(
      yard({
        startedOn: '2026-08-10',
        topdressing: { depthMm: 20, season: 'autumn' },
        piles: [dungPile({ finishedOn: '2026-08-01' })],
      }),
      milwaukee,
    );
    const task = draft(drafts, 'topdress/bed:a/2027');
    expect(task.window.latest < '2026-12-31').toBe(true);
    expect(rulesOf(task)).toContain('manure-wait.as-raw');
    expect(rulesOf(task)).not.toContain('manure-wait.clash');
  });

  it('does not go among a crop that stands there', () => {
    const leeks = [sown('leek', '2026-04-10', { harvested: '2027-06-10' })];
    const spread = tasks({ plantings: leeks, topdressing: { depthMm: 20, season: 'spring' } });
    const task = draft(spread, 'topdress/bed:a/2027');
    expect(rulesOf(task)).toContain('manure-wait.standing');
    expect(cautions(task)).toContain('leek stands there. Raw manure goes on beds without a crop.');
  });

  it('is not put off once its days are past, as other compost is', () => {
    expect(layer()).toMatchObject({ ifMissed: 'drop', missedNote: expect.stringContaining('Do not spread it late') });
    const free = layer({ piles: [leafPile()] });
    expect(free).toMatchObject({ ifMissed: 'still do', missedNote: expect.stringContaining('between the rows') });
  });

  it('remembers the pile once it is done', () => {
    expect(layer().makes).toEqual([{ makes: 'bed-topdressed', bedId: 'a', litres: 60, pileIds: ['p'] }]);
  });
});

describe('a crop after it', () => {
  const spread = (parts: Partial<Topdressed> = {}): Topdressed => ({
    bedId: 'a',
    on: '2027-04-15',
    litres: 60,
    pileIds: ['p'],
    ...parts,
  });
  const sowing = (topdressed: Topdressed[], piles: Pile[] = [dungPile()]) =>
    draft(
      draftsIn(
        yard({ startedOn: '2027-04-20', piles, topdressed, skipped: { 'topdress/bed:a/2027': '2027-04-20' } }),
        milwaukee,
      ),
      'sow/planting:carrot',
    );

  it('is sown with the first day it may be harvested, and the ways out', () => {
    const task = sowing([spread()]);
    expect(cautions(task)).toContain(
      'Compost made with horse manure with bedding and no logged hot record was spread on Bed A on 15 April 2027. Harvest no carrot there before 13 August 2027, 120 days after 15 April 2027: the first may be ripe from 10 July 2027.',
    );
    // 34 days later than 1 May.
    expect(cautions(task)).toContain('put it in from 4 June 2027 on or grow it in another bed');
    expect(rulesOf(task)).toContain('manure-wait.clash');
  });

  it('is warned of raw manure laid as it is', () => {
    const task = sowing([{ bedId: 'a', on: '2027-04-15', litres: 60, materialId: 'cow_manure_solid' }], [leafPile()]);
    expect(cautions(task)).toContain('Raw manure (cow manure) was spread on Bed A on 15 April 2027.');
  });

  it('is not where nobody told the pile, where it was another bed, or long enough ago', () => {
    const untold = { bedId: 'a', on: '2027-04-15', litres: 60 };
    for (const row of [untold, spread({ bedId: 'b' }), spread({ on: '2027-03-12' }), spread({ pileIds: ['gone'] })])
      expect(rulesOf(sowing([row]))).not.toContain('manure-wait.clash');
    expect(rulesOf(sowing([spread({ on: '2027-03-13' })]))).toContain('manure-wait.clash');
  });

  it('is not where a straw mulch was laid', () => {
    const straw = { bedId: 'a', on: '2027-04-15', litres: 60, materialId: 'straw_wheat' };
    expect(rulesOf(sowing([straw]))).not.toContain('manure-wait.clash');
  });

  it('that grows already is warned of where it is lifted before its day', () => {
    const drafts = draftsIn(
      yard({ startedOn: '2027-06-01', plantings: [sown('radish', '2027-05-20')], topdressed: [spread()] }),
      milwaukee,
    );
    expect(cautions(draft(drafts, 'bed-clear/'))).toContain('Harvest no radish there before 13 August 2027');
  });

  it('that is over is no matter any more', () => {
    const over = sown('radish', '2027-04-25', { harvested: '2027-05-28' });
    const drafts = draftsIn(yard({ startedOn: '2027-06-01', plantings: [over], topdressed: [spread()] }), milwaukee);
    expect(drafts.flatMap(rulesOf)).not.toContain('manure-wait.clash');
  });

  it('later in the same bed counts as well, over New Year in the south', () => {
    const south = frostDates('10-10', '04-25', -43);
    const of = yard({
      startedOn: '2027-11-20',
      piles: [dungPile()],
      plantings: [sown('radish', '2027-12-20'), sown('carrot', '2028-02-01')],
      topdressed: [spread({ on: '2027-11-10' })],
    });
    const drafts = draftsIn({ ...of, place: { ...of.place, latitude: -43 } }, south);
    // 120 days from 10 November, 29 February among them.
    expect(cautions(draft(drafts, 'sow/planting:radish'))).toContain('before 9 March 2028');
    expect(rulesOf(draft(drafts, 'sow/planting:carrot'))).not.toContain('manure-wait.clash');
  });
});

describe('two piles to give from', () => {
  const beds = [bed('a'), bed('b')];

  it('the bed with the harvest gets that without manure, the other that with it', () => {
    const drafts = tasks({
      beds,

      piles: [dungPile(), leafPile({ finishedLitres: 60 })],
    });
    expect(draft(drafts, 'topdress/bed:a/2027').makes).toEqual([
      { makes: 'bed-topdressed', bedId: 'a', litres: 60, pileIds: ['q'] },
    ]);
    expect(draft(drafts, 'topdress/bed:b/2027').makes[0]).toMatchObject({ pileIds: ['p'] });
    expect(draft(drafts, 'topdress/bed:a/2027').steps[0]).toBe('Take it from the pile in Right bay.');
    expect(drafts.flatMap(rulesOf)).not.toContain('manure-wait.clash');
  });

  it('where all holds manure, it is given and warned of', () => {
    expect(layer({ beds }).makes[0]).toMatchObject({ pileIds: ['p'] });
    expect(rulesOf(layer({ beds }))).toContain('manure-wait.clash');
  });
});

describe('a layer drawn from two finished piles with different manure', () => {
  it('names the same manure in whatever order the piles were written down', () => {
    const [horse, cow] = [
      dungPile({ id: 'a-horse' }),
      dungPile({ id: 'b-cow', ingredients: [{ materialId: 'cow_manure_solid', litres: 900 }] }),
    ];
    const layers = (piles: readonly Pile[]) =>
      draftsIn(garden({ piles: [...piles], topdressing: { depthMm: 25, season: 'spring' } }))
        .filter(({ kind }) => kind === 'topdress')
        .map(({ reasons, cautions }) => [reasons, cautions]);
    expect(layers([cow, horse])).toEqual(layers([horse, cow]));
  });
});
