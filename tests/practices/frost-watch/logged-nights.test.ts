import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { EVENING, expected, september, tonight, watched } from './gardens.ts';

const light = { what: 'light-fabric', areaM2: 20 } as const;
const MORNING = '2027-09-19';

describe('a night known from the weather log', () => {
  it('asks for the same covers as one that was told of: the low of a day is that of its morning', () => {
    const told = tonight(september({ coldNights: [expected(-1)], gear: [light] }));
    const logged = tonight(september({ weather: [{ day: MORNING, kind: 'expected', tminC: -1 }], gear: [light] }));
    expect(logged).toEqual(told);
  });

  it('asks for nothing where the low is no danger, and for a look where one was measured', () => {
    expect(tonight(september({ weather: [{ day: MORNING, kind: 'expected', tminC: 6 }] }))).toBeUndefined();
    const after = september({ weather: [{ day: MORNING, kind: 'observed', tminC: -3 }] });
    expect(watched(after, undefined, MORNING).map(({ key }) => key)).toContain(`frost-look/night:${EVENING}`);
  });

  it('gives way to what was told of that very night', () => {
    const weather = [{ day: MORNING, kind: 'expected', tminC: -4 } as const];
    expect(tonight(september({ weather, coldNights: [expected(8)] }))).toBeUndefined();
  });
});

describe('snow', () => {
  const snow = { weather: [{ day: EVENING, kind: 'observed', snowDepthMm: 60 } as const], gear: [light] };

  it('that lies covers tender beds this evening, says why, and has the covers brushed off', () => {
    const task = tonight(september(snow));
    expect(task?.title).toMatch(/^Snow tonight: cover /);
    expect(task?.steps.join(' ')).toContain('Brush snow off the covers');
    expect(reasonSentence(task?.reasons[0] ?? { rule: '', saw: {}, source: 'house default' })).toContain(
      'with no low named for that night it is taken for one of ⟦0 tempC⟧',
    );
    const uncover = watched(september(snow)).find(({ kind }) => kind === 'uncover-beds');
    expect(uncover?.steps[0]).toContain('Brush the snow off first');
  });

  it('beside a named low takes that low, and still has the covers brushed off', () => {
    const task = tonight(september({ ...snow, coldNights: [expected(-2)] }));
    expect(task?.title).toContain('Frost tonight, ⟦-2 tempC⟧');
    expect(task?.steps.join(' ')).toContain('Brush snow off the covers');
  });

  it('that is gone asks for nothing any more', () => {
    expect(tonight(september(snow), undefined, '2027-09-20')).toBeUndefined();
  });
});
