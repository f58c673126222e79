import { describe, expect, it } from 'vitest';
import { applyFact } from '../../../src/garden/apply-fact.ts';
import type { Effect } from '../../../src/garden/effects.ts';
import type { Garden, Planting } from '../../../src/garden/garden.ts';
import { vegetableById } from '../../../src/handbook/vegetables.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { cropSpans, killedByFreeze } from '../../../src/practices/bed-timeline.ts';
import { draft, draftsIn, frostDates, garden, milwaukee, pile, setOut, sown } from '../gardens.ts';

/** A garden once a task with some effects was marked done on a day. */
function done(of: Garden, on: Day, ...makes: Effect[]): Garden {
  const task = {
    key: 'k',
    practice: 'planting',
    taskKind: 'k',
    title: 'K',
    job: { id: 'k', title: 'K' },
    subject: { type: 'garden' as const, id: 'g', name: 'G' },
    effortMinutes: 1,
    makes,
  };
  const fact = { kind: 'tasks-done' as const, on, tasks: [task] };
  return applyFact(of, { entry: 2, recordedAt: `${on}T00:00:00Z`, recordedOn: on, by: 'a', fact });
}

const raised = (of: Garden, on: Day): Garden =>
  done(of, on, { makes: 'planting-raised', plantingId: 'tomato-2027-05-25' });
const window = (of: Garden, key: string, climate = milwaukee) => draft(draftsIn(of, climate), key).window;

describe('plants sown under a roof', () => {
  const plan = garden({ plantings: [setOut('tomato', '2027-05-25')] });
  const weeks = vegetableById('tomato').indoorWeeks?.low ?? 0;

  it('three weeks late go out when they are as old as their kind is set out, and are hardened off before that', () => {
    const late = raised(plan, '2027-04-27');
    const grown = addDays('2027-04-27', 7 * weeks);
    expect(window(late, 'set-out').preferred).toBe(grown);
    expect(window(late, 'set-out').earliest).toBe(grown);
    expect(window(late, 'harden-off').latest).toBe(addDays(grown, -7));
    expect(draft(draftsIn(late), 'set-out').reasons.map(({ rule }) => rule)).toContain('plant.grown-by');
  });

  it('ten days early wait for the day that was planned: the season lets them out no sooner', () => {
    expect(window(raised(plan, '2027-03-20'), 'set-out')).toEqual(window(plan, 'set-out'));
  });

  it('far too late go out small at the end of their season, not after it', () => {
    const { latest } = window(plan, 'set-out');
    expect(window(raised(plan, '2027-06-20'), 'set-out').preferred).toBe(latest);
  });

  it('are not asked for again', () => {
    expect(draftsIn(raised(plan, '2027-04-01')).some(({ kind }) => kind === 'start-indoors')).toBe(false);
  });
});

describe('a planned last harvest', () => {
  const climate = frostDates('05-10', '10-10');
  const plan = garden({ plantings: [sown('carrot', '2027-06-15', { harvested: '2027-09-01' })] });
  const start: Effect = { makes: 'planting-started', plantingId: 'carrot-2027-06-15' };
  const ends = (on: Day, of = plan, effect = start) => cropSpans(done(of, on, effect), 'a', climate)[0]?.to;

  it('moves with a crop that went in later than it was meant to', () => {
    expect(ends('2027-06-25')).toBe('2027-09-11');
    const clearing = draft(draftsIn(done(plan, '2027-06-25', start), climate, '2027-06-25'), 'bed-clear');
    expect(clearing.window.earliest).toBe('2027-09-11');
    expect(clearing.reasons[0]?.rule).toBe('changeover.moved-on');
  });

  it('that moved on is no earlier once its bed was cleared, and no later than the clearing', () => {
    const cleared = (sowing: Day, on: Day) => done(done(plan, sowing, start), on, clear);
    const clear: Effect = { makes: 'bed-cleared', plantingId: 'carrot-2027-06-15' };
    const end = (of: Garden) => cropSpans(of, 'a', climate)[0];
    // By hand: ten days late, so 1 September becomes 11 September.
    expect(end(cleared('2027-06-25', '2027-09-20'))).toMatchObject({ to: '2027-09-11', end: 'happened' });
    expect(end(cleared('2027-06-25', '2027-09-08'))).toMatchObject({ to: '2027-09-08', end: 'happened' });
    expect(end(cleared('2027-06-15', '2027-09-20'))?.to).toBe('2027-09-01');
  });

  it('that was told keeps its day, however late the crop went in and its bed was cleared', () => {
    const told = garden({ plantings: [sown('carrot', '2027-06-15', { harvested: '2027-09-01' })] });
    const [row] = told.plantings;
    const happened = { ...row, lastHarvest: { day: '2027-09-01', happened: true } } as Planting;
    const late = done({ ...told, plantings: [happened] }, '2027-06-25', start);
    const [span] = cropSpans(done(late, '2027-09-20', { makes: 'bed-cleared', plantingId: happened.id }), 'a', climate);
    expect(span?.to).toBe('2027-09-01');
  });

  it('stays with a crop that went in on its day, or early', () => {
    expect([ends('2027-06-15'), ends('2027-06-05')]).toEqual(['2027-09-01', '2027-09-01']);
  });

  it('does not move past the freeze that kills the crop', () => {
    const beans = garden({ plantings: [sown('snap-bean', '2027-07-10', { harvested: '2027-10-01' })] });
    const killed = killedByFreeze(vegetableById('snap-bean'), '2027-08-05', climate)?.day;
    expect(ends('2027-08-05', beans, { makes: 'planting-started', plantingId: 'snap-bean-2027-07-10' })).toBe(killed);
  });

  it('moves over New Year in the south, and over 29 February', () => {
    const south = { ...climate, seasonTurn: '07-01' } as typeof climate;
    const of = garden({
      startedOn: '2027-10-01',
      plantings: [sown('carrot', '2027-11-20', { harvested: '2028-02-24' })],
    });
    const late = done(of, '2027-11-30', { makes: 'planting-started', plantingId: 'carrot-2027-11-20' });
    expect(cropSpans(late, 'a', south)[0]?.to).toBe('2028-03-05');
  });
});

describe('a pile', () => {
  const plan = garden({
    startedOn: '2027-04-01',
    piles: [pile('2027-05-01')],
  });
  const litres = ({ piles: [pile] }: Garden): number[] => pile?.ingredients.map((each) => each.litres) ?? [];

  it('built of half as much holds half of each thing, and is expected to give half', () => {
    const half = done(plan, '2027-05-03', { makes: 'pile-built', pileId: 'p', litres: 300 });
    expect(litres(half)).toEqual([200, 100]);
    const saw = (of: Garden) =>
      draft(draftsIn(of, milwaukee, '2027-05-03'), 'pile-maturity').reasons.find(
        ({ rule }) => rule === 'pile-maturity.volume',
      )?.saw.litres;
    expect([saw(plan), saw(half)]).toEqual([240, 120]);
  });

  it('built as planned holds what was planned', () => {
    expect(litres(done(plan, '2027-05-03', { makes: 'pile-built', pileId: 'p' }))).toEqual([400, 200]);
  });

  it('found ready with so many litres has those and no guess', () => {
    const built = done(plan, '2027-05-03', { makes: 'pile-built', pileId: 'p' });
    const ready = done(built, '2027-10-01', { makes: 'pile-finished', pileId: 'p', litres: 210 });
    expect(ready.piles[0]).toMatchObject({ finishedOn: '2027-10-01', finishedLitres: 210 });
    expect(done(built, '2027-10-01', { makes: 'pile-finished', pileId: 'p' }).piles[0]?.finishedLitres).toBeUndefined();
  });
});
