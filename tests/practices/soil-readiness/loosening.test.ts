import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays } from '../../../src/measures/days.ts';
import { soilAwake } from '../../../src/practices/seasons.ts';
import { bed, draft, draftsIn, frostDates, garden, setOut, sown } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const awake = soilAwake(climate, 2027) ?? '';
const flat = (id: string) => bed(id, { raised: false });

const loosened = (of: Garden) => draftsIn(of, climate).filter(({ kind }) => kind === 'loosen-bed');

describe('loosening', () => {
  it('is asked once of new ground at bed level, by lifts and without turning', () => {
    const task = draft(draftsIn(garden({ beds: [flat('a')] }), climate), 'loosen/bed:a');
    expect(task.window).toEqual({ earliest: awake, preferred: addDays(awake, 7), latest: addDays(awake, 28) });
    expect(task.steps[0]).toContain('Turn nothing over.');
    expect(task.needs).toEqual(['soil-fit']);
    expect(task.after).toEqual([{ key: 'squeeze-test/soil:loam/2027/1', minDays: 0 }]);
    // 1.5 minutes a square metre on 3 m² and five to begin with.
    expect(task.effortMinutes).toBe(10);
  });

  it('is never asked of a raised bed, which nobody treads on', () => {
    expect(loosened(garden())).toEqual([]);
  });

  it('is not asked of a bed that has grown something before, nor of one that lasting crops hold', () => {
    expect(loosened(garden({ beds: [flat('a')], plantings: [sown('carrot', '2026-05-01')] }))).toEqual([]);
    expect(loosened(garden({ beds: [flat('a')], plantings: [setOut('asparagus', '2024-05-01')] }))).toEqual([]);
    const topdressed = [{ bedId: 'a', on: '2026-10-01', litres: 40 }];
    expect(loosened(garden({ beds: [flat('a')], topdressed }))).toEqual([]);
  });

  it('is over the day before the first crop goes in', () => {
    const plantings = [setOut('cabbage', addDays(awake, 4))];
    const [task] = loosened(garden({ beds: [flat('a')], plantings }));
    expect(task?.window.latest).toBe(addDays(awake, 3));
  });

  it('is left out where the bed is planted before its soil wakes, or was planted already', () => {
    expect(loosened(garden({ beds: [flat('a')], plantings: [sown('pea', addDays(awake, -5))] }))).toEqual([]);
    const startedOn = addDays(awake, 10);
    const plantings = [sown('pea', addDays(awake, 8))];
    expect(loosened(garden({ startedOn, beds: [flat('a')], plantings }))).toEqual([]);
  });

  it('of several beds is one job', () => {
    const tasks = loosened(garden({ beds: [flat('a'), flat('b')] }));
    expect(new Set(tasks.map(({ job }) => job.id)).size).toBe(1);
    expect(tasks).toHaveLength(2);
  });

  it('of a garden begun in autumn waits for spring, and is not asked a second year', () => {
    const of = garden({ startedOn: '2026-10-05', beds: [flat('a')] });
    expect(draft(draftsIn(of, climate), 'loosen/bed:a').window.earliest).toBe(awake);
    expect(draftsIn(of, climate, '2028-01-10').filter(({ kind }) => kind === 'loosen-bed')[0]?.window.earliest).toBe(
      awake,
    );
  });
});
