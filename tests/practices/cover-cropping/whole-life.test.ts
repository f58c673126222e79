/**
 * A stand lived through from its seed order to the free bed, as the gardener marks and tells it.
 */
import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import { climateFromRecord } from '../../../src/climate/from-record.ts';
import { dayOfIndex, seasonIndex, seasonOf } from '../../../src/climate/season.ts';
import { applyFact } from '../../../src/garden/apply-fact.ts';
import type { Fact } from '../../../src/garden/facts.ts';
import type { Garden, StandLook } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { draftsOf } from '../../../src/practices/catalogue.ts';
import { standSpans } from '../../../src/practices/cover-cropping/fit/stand-spans.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { NO_OFFSETS, recordRows } from '../../climate/real-data.ts';
import { cover, draft, garden, inputOf, setOut } from '../gardens.ts';

/** The southern day at the season index of a northern one. */
const south = (day: Day): Day => dayOfIndex('07-01', seasonOf('01-01', day), seasonIndex('01-01', day));
const rows = recordRows('milwaukee').filter(({ day }) => !day.endsWith('-02-29'));
const at = { longitude: -88, origin: 'Milwaukee', ...NO_OFFSETS };
const HALVES = [
  { half: 'north', on: (day: Day) => day, latitude: 43, climate: climateFromRecord({ ...at, latitude: 43, rows }) },
  {
    half: 'south',
    on: south,
    latitude: -43,
    climate: climateFromRecord({ ...at, latitude: -43, rows: rows.map((row) => ({ ...row, day: south(row.day) })) }),
  },
] as const;

/** A garden whose gardener marks work done and tells what is seen. */
class Life {
  readonly #climate: Climate;
  #garden: Garden;
  #entry = 1;
  today: Day;

  constructor(of: Garden, climate: Climate) {
    this.#garden = of;
    this.#climate = climate;
    this.today = of.startedOn;
  }

  get work(): TaskDraft[] {
    const settled = new Set(this.#garden.done.map(({ key }) => key));
    return draftsOf(inputOf(this.#garden, this.#climate, this.today)).filter(({ key }) => !settled.has(key));
  }

  get stand() {
    return this.#garden.stands.find(({ id }) => id === 's');
  }

  /** What is still to be done on the stand, by kind of key. */
  get keys(): string[] {
    return this.work.map(({ key }) => key).filter((key) => key.includes('stand:s'));
  }

  get holdsBedUntil(): Day | undefined {
    const spans = standSpans(inputOf(this.#garden, this.#climate, this.today), 'a');
    return spans.find(({ stand }) => stand.id === 's')?.ends;
  }

  task(keyStart: string): TaskDraft {
    return draft(this.work, keyStart);
  }

  /** Marks a task done on its best day, or on another. */
  done(keyStart: string, on = this.task(keyStart).window.preferred): this {
    const { kind, ...task } = this.task(keyStart);
    const { key, practice, title, job, subject, effortMinutes, makes } = task;
    const told = { key, practice, taskKind: kind, title, job, subject, effortMinutes, makes: [...makes] };
    return this.#tell(on, { kind: 'tasks-done', on, tasks: [told] });
  }

  looked(on: Day, covered: StandLook['covered'], weedy = false): this {
    return this.#tell(on, { kind: 'stand-looked', standId: 's', on, covered, weedy });
  }

  /** Tells that it was green again after its cut; the look that asked for it is settled. */
  grewAgain(on: Day, answer: 'cut' | 'sheet'): this {
    return this.#tell(on, { kind: 'regrowth-seen', standId: 's', bedId: 'a', coverId: 'cereal_rye', on, answer });
  }

  #tell(on: Day, fact: Fact): this {
    this.#entry += 1;
    const entry = { entry: this.#entry, recordedAt: `${on}T12:00:00.000Z`, recordedOn: on, by: 'test', fact } as const;
    this.#garden = applyFact(this.#garden, entry);
    this.today = on;
    return this;
  }
}

describe.each(HALVES)('a stand in the $half', ({ on, latitude, climate }) => {
  const planned = (coverId: string, sow: Day) =>
    new Life(
      garden({
        startedOn: on('2027-08-01'),
        place: { latitude },
        plantings: [setOut('tomato', on('2028-06-05'))],
        stands: [cover(coverId, on(sow))],
      }),
      climate,
    );
  const sown = (coverId: string, sow: Day) => planned(coverId, sow).done('cover-order/').done('cover-sow/', on(sow));

  it('of rye that comes up well: order, sow, look, cut, look for regrowth, and the bed is free', () => {
    const life = sown('cereal_rye', '2027-09-20');
    expect(life.keys).toContain('cover-check/stand:s');
    life.looked(on('2027-10-08'), 'nearly-all');
    expect(life.keys).toEqual(expect.arrayContaining(['cover-cut/stand:s', 'cover-regrowth/stand:s/check:1']));
    expect(life.keys).not.toContain('cover-check/stand:s');
    const { window } = life.task('cover-cut/stand:s');
    expect(life.holdsBedUntil).toBe(window.latest);
    life.done('cover-cut/stand:s');
    expect(life.stand?.cutOn).toBe(window.preferred);
    const again = life.task('cover-regrowth/stand:s/check:1');
    expect(again.window.earliest).toBe(addDays(window.preferred, 10));
    life.done('cover-regrowth/stand:s/check:1');
    expect(life.keys.filter((key) => key.startsWith('cover-cut'))).toEqual([]);
    expect(life.holdsBedUntil).toBe(window.preferred);
  });

  it('of rye that comes up thin and grows again after its cut: cut again, then under a sheet, and free when that is off', () => {
    const life = sown('cereal_rye', '2027-09-20').looked(on('2027-10-08'), 'two-thirds');
    life.done('cover-cut/stand:s');
    life.grewAgain(addDays(life.today, 11), 'cut');
    expect(life.keys).toEqual(['cover-cut-again/stand:s/1', 'cover-regrowth/stand:s/check:2']);
    life.done('cover-cut-again/');
    life.grewAgain(addDays(life.today, 10), 'sheet');
    expect(life.keys).toEqual(['cover-sheet/stand:s/lay:1', 'cover-sheet/stand:s/lift:1']);
    life.done('cover-sheet/stand:s/lay');
    const laid = life.today;
    life.done('cover-sheet/stand:s/lift');
    expect(life.today).toBe(addDays(laid, 21));
    expect(life.keys).toEqual([]);
    expect(life.holdsBedUntil).toBe(life.today);
  });

  it('of oats that come up well: nothing to cut, only to see in late winter that they are dead', () => {
    const life = sown('oats', '2027-08-30').looked(on('2027-09-17'), 'nearly-all');
    expect(life.keys).toEqual(['cover-dead-check/stand:s']);
    const { window } = life.task('cover-dead-check/');
    life.done('cover-dead-check/');
    expect(life.stand?.deadOn).toBe(window.preferred);
    expect(life.keys).toEqual([]);
    expect(life.holdsBedUntil).toBe(window.preferred);
  });

  it('of oats that come up thin: sown again with rye, looked at again, cut in spring with it', () => {
    const life = sown('oats', '2027-09-10').looked(on('2027-09-28'), 'a-third');
    expect(life.keys).toEqual(
      expect.arrayContaining(['cover-sow-again/stand:s/look:1', 'cover-check/stand:s/look:2', 'cover-cut/stand:s']),
    );
    life.done('cover-sow-again/', on('2027-09-30'));
    expect(life.stand?.resown).toEqual([{ on: on('2027-09-30'), coverId: 'cereal_rye' }]);
    expect(life.task('cover-check/stand:s/look:2').window.earliest).toBe(addDays(on('2027-09-30'), 14));
    life.looked(on('2027-10-16'), 'two-thirds');
    expect(life.keys).toEqual(expect.arrayContaining(['cover-cut/stand:s', 'cover-regrowth/stand:s/check:1']));
    expect(life.keys).not.toContain('cover-dead-check/stand:s');
    life.done('cover-cut/stand:s').done('cover-regrowth/stand:s/check:1');
    expect(life.keys.filter((key) => !key.startsWith('cover-regrowth'))).toEqual([]);
  });

  it('of oats of which hardly any come up too late for anything: the bed is bare, and is mulched', () => {
    const life = sown('oats', '2027-09-20').looked(on('2027-10-25'), 'hardly-any');
    expect(life.keys).toEqual([]);
    expect(life.holdsBedUntil).toBe(on('2027-10-25'));
    expect(life.task('mulch-bare/bed:a/2028').window.earliest).toBe(addDays(on('2027-10-25'), 1));
  });

  it('of rye full of weeds: they are cut in autumn, and the rye in spring', () => {
    const life = sown('cereal_rye', '2027-09-20').looked(on('2027-10-08'), 'two-thirds', true);
    const weeds = life.task('cover-weeds/stand:s/look:1');
    expect(weeds.window.latest < life.task('cover-cut/stand:s').window.earliest).toBe(true);
    life.done('cover-weeds/');
    expect(life.keys).toEqual(['cover-cut/stand:s', 'cover-regrowth/stand:s/check:1']);
  });
});
