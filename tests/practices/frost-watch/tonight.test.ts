import { describe, expect, it } from 'vitest';
import { vegetables } from '../../../src/handbook/vegetables.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { doneMark } from '../../schedule/drafts.ts';
import { bed, rulesOf, setOut, sown } from '../gardens.ts';
import { climate, EVENING, expected, measured, september, tonight, watched } from './gardens.ts';

const light = (areaM2: number) => ({ what: 'light-fabric', areaM2 }) as const;
const heavy = (areaM2: number) => ({ what: 'heavy-fabric', areaM2 }) as const;
const film = (areaM2: number) => ({ what: 'fabric-and-film', areaM2 }) as const;

describe('an evening before a cold night', () => {
  it('covers the bed with most picking still to come and picks the rest', () => {
    // A bed of 2.5 × 1.2 m takes 3.1 × 1.8 m of fabric: 5.58 m². Six square metres cover one.
    const task = tonight(september({ coldNights: [expected(-1)], gear: [light(6)] }));
    expect(task?.title).toBe('Frost tonight, ⟦-1 tempC⟧: cover Bed B; pick tomato');
    expect(task?.steps.slice(0, 3)).toEqual([
      'Pick what is ripe first: tomato in Bed A.',
      'Full-sized green tomatoes ripen indoors.',
      'Cover Bed B (snap bean) with light fabric.',
    ]);
    expect(task?.supplies).toEqual([{ what: 'light fabric', amount: { value: 5.58, unit: 'm2' } }]);
    expect(task?.window).toEqual({ earliest: EVENING, preferred: EVENING, latest: EVENING });
  });

  it('leaves half-hardy greens and roots that stand the night', () => {
    const task = tonight(september({ coldNights: [expected(-1)] }));
    expect(task?.steps).toContain('Leave leaf lettuce in Bed C: they stand such a night.');
    expect(task?.steps.join(' ')).not.toContain('carrot');
  });

  it('sees to lettuce too where the night is below what it stands', () => {
    const task = tonight(september({ coldNights: [expected(-2)] }));
    expect(task?.title).toContain('pick snap bean and tomato; shelter leaf lettuce');
  });

  it('picks what is ripe and shelters what is not, where the household owns no cover', () => {
    const plantings = [sown('snap-bean', '2027-08-20', { bedId: 'a' }), setOut('pepper', '2027-06-01', { bedId: 'b' })];
    const task = tonight(september({ plantings, coldNights: [expected(0)] }));
    expect(task?.title).toBe('Frost tonight, ⟦0 tempC⟧: pick pepper; shelter snap bean');
    expect(task?.steps).toContain(
      'No cover is left for snap bean in Bed A: use sheets, boxes or loose straw, clear of the leaves.',
    );
  });

  it('asks nothing on a night that hurts nothing', () => {
    expect(tonight(september({ coldNights: [expected(2.4)] }))).toBeUndefined();
    expect(tonight(september({ plantings: [], coldNights: [expected(-8)] }))).toBeUndefined();
  });

  it('acts on a forecast of 36 °F for what frost alone kills, and says why', () => {
    const task = tonight(september({ coldNights: [expected(20 / 9)] }));
    expect(task?.title).toContain('pick snap bean and tomato');
    expect(task && rulesOf(task)).toContain('frost-watch.margin');
  });

  it('takes a cold pocket’s own degrees off the forecast, and puts a warm wall’s on for nobody', () => {
    const at = (tempOffsetC: number) => tonight(september({ place: { tempOffsetC }, coldNights: [expected(3)] }));
    expect(at(-2)?.title).toContain('Frost tonight, ⟦1 tempC⟧');
    expect(at(-2)?.reasons.map(reasonSentence)[0]).toContain('a cold pocket, ⟦2 deltaC⟧ colder');
    expect(at(2)).toBeUndefined();
    expect(tonight(september({ place: { tempOffsetC: 2 }, coldNights: [expected(0)] }))?.title).toContain('⟦0 tempC⟧');
  });

  it('carries in what is hardening off', () => {
    const plantings = [setOut('tomato', '2027-05-25', { bedId: 'a' })];
    const of = september({ startedOn: '2027-04-01', plantings, coldNights: [expected(1, '2027-05-15')] });
    const task = tonight(of, climate, '2027-05-15');
    expect(task?.title).toBe('Frost tonight, ⟦1 tempC⟧: carry in tomato');
    expect(tonight({ ...of, coldNights: [expected(1, '2027-05-10')] }, climate, '2027-05-10')).toBeUndefined();
  });

  it('leaves seed that is not up, crops that are cleared and those long over', () => {
    const on = (plantings: Parameters<typeof september>[0]) =>
      tonight(september({ ...plantings, coldNights: [expected(-1)] }));
    expect(on({ plantings: [sown('snap-bean', '2027-09-14')] })).toBeUndefined();
    expect(
      on({ startedOn: EVENING, plantings: [sown('snap-bean', '2027-07-01', { harvested: EVENING })] }),
    ).toBeUndefined();
    expect(on({ plantings: [sown('snap-bean', '2027-05-20', { harvested: '2027-08-20' })] })).toBeUndefined();
  });

  it('still covers a crop past its expected end while nobody has cleared it or planted after it', () => {
    const bean = sown('snap-bean', '2027-07-01', { harvested: '2027-09-10' });
    const of = (more: ReturnType<typeof sown>[]) =>
      tonight(september({ startedOn: '2027-08-01', plantings: [bean, ...more], coldNights: [expected(-1)] }));
    expect(of([])?.title).toContain('pick snap bean');
    expect(of([sown('spinach', '2027-09-12')])).toBeUndefined();
  });
});

describe('covers shared out', () => {
  const coldNights = [expected(-1.5)];

  it('gives each bed the lightest cover that will do, so that the warm ones are left for others', () => {
    const task = tonight(september({ coldNights, gear: [film(6), heavy(6), light(20)] }));
    expect(task?.steps[0]).toBe('Cover Bed B (snap bean) with heavy fabric.');
    expect(task?.steps[1]).toBe('Then cover Bed A (tomato) with fabric with film over it.');
  });

  it('lays a cover that falls short over what it may help, says so, and has the ripe picked first', () => {
    const task = tonight(september({ coldNights, gear: [light(6)] }));
    expect(task?.steps[0]).toBe('Pick what is ripe first: snap bean in Bed B; tomato in Bed A.');
    expect(task?.steps).toContain('Cover Bed B (snap bean) with light fabric. It may not be enough.');
  });

  it('covers nothing twice and no bed with less than it takes', () => {
    const names = (areaM2: number) =>
      tonight(september({ coldNights: [expected(-1)], gear: [light(areaM2)] }))?.steps.filter((step) =>
        /over Bed/i.test(step),
      );
    expect(names(5.5)).toEqual([]);
    expect(names(11.1)).toHaveLength(1);
    expect(names(11.2)).toHaveLength(2);
  });

  it('promises nothing on a calm clear night', () => {
    const task = tonight(september({ coldNights, gear: [film(40)] }));
    expect(task?.cautions[0]).toContain('no cover is sure');
  });

  it('puts the larger of two beds alike first', () => {
    const beds = [bed('a'), bed('b', { lengthM: 5 })];
    const plantings = ['a', 'b'].map((bedId) => sown('snap-bean', '2027-07-10', { id: bedId, bedId }));
    const task = tonight(september({ beds, plantings, coldNights: [expected(-1)], gear: [light(11)] }));
    expect(task?.title).toBe('Frost tonight, ⟦-1 tempC⟧: cover Bed B; pick snap bean');
  });
});

describe('what was told', () => {
  it('counts in its latest word for an evening', () => {
    expect(tonight(september({ coldNights: [expected(-4), expected(-1)] }))?.title).toContain('⟦-1 tempC⟧');
    expect(tonight(september({ coldNights: [expected(-4), expected(6)] }))).toBeUndefined();
  });

  it('is answered by what was measured', () => {
    const kinds = watched(september({ coldNights: [expected(-1), measured(1)] })).map(({ kind }) => kind);
    expect(kinds).toEqual([]);
  });

  it('is dropped once the night has gone by, its covers coming off first', () => {
    const of = september({ coldNights: [expected(-1)], gear: [light(6)] });
    const on = (today: string) => watched(of, climate, today).map(({ key }) => key);
    expect(on(EVENING)).toEqual([`frost-cover/night:${EVENING}`, `frost-uncover/night:${EVENING}`]);
    expect(on('2027-09-19')).toEqual([`frost-uncover/night:${EVENING}`]);
    expect(on('2027-09-20')).toEqual([]);
    const waits = (today: string) =>
      watched(of, climate, today)
        .at(-1)
        ?.after.map(({ key }) => key);
    expect(waits(EVENING)).toEqual([`frost-cover/night:${EVENING}`]);
    expect(waits('2027-09-19')).toEqual([]);
  });

  it('has the covers off even when the low was measured in the morning', () => {
    const of = september({ coldNights: [expected(-1), measured(0.5)], gear: [light(6)] });
    expect(watched(of, climate, '2027-09-19').map(({ kind }) => kind)).toEqual(['uncover-beds']);
  });

  it('has no covers to take off where none were put on', () => {
    const bare = september({ coldNights: [expected(-1)] });
    expect(watched(bare).map(({ kind }) => kind)).toEqual(['cover-beds']);
    const skipped = september({
      coldNights: [expected(-1)],
      gear: [light(6)],
      skipped: { [`frost-cover/night:${EVENING}`]: EVENING },
    });
    expect(watched(skipped).map(({ kind }) => kind)).toEqual(['cover-beds']);
  });

  it('is a night each: two nights running are two evenings', () => {
    const of = september({ coldNights: [expected(-1), expected(0, '2027-09-19')] });
    expect(
      watched(of)
        .filter(({ kind }) => kind === 'cover-beds')
        .map(({ window }) => window.earliest),
    ).toEqual([EVENING, '2027-09-19']);
  });
});

describe('a night that was measured', () => {
  const look = (lowC: number, parts = {}) =>
    watched(september({ coldNights: [measured(lowC)], ...parts }), climate, '2027-09-19').find(
      ({ kind }) => kind === 'look-for-frost-damage',
    );

  it('asks for a look on the next day at what was likely hurt', () => {
    const task = look(-1);
    expect(task).toMatchObject({ weight: 'check', title: 'Look for frost damage: tomato and snap bean' });
    expect(task?.window.preferred).toBe('2027-09-19');
    expect(task?.steps.join(' ')).not.toContain('Likely dead');
  });

  it('asks for none where nothing that stood was hurt', () => {
    expect(look(0.5)).toBeUndefined();
    const plantings = [sown('lettuce-leaf', '2027-08-10')];
    expect(look(-1.5, { plantings })).toBeUndefined();
    expect(look(-2.5, { plantings })).toBeDefined();
  });

  it('names what is likely dead and asks for its clearing, and clears nothing by itself', () => {
    const task = look(-2.5);
    expect(task?.steps[1]).toContain('Likely dead: tomato in Bed A; snap bean in Bed B.');
    expect(task?.steps[1]).toContain('Does it live? Choose Not yet on its clearing');
    expect(task?.makes).toEqual([]);
  });

  it('calls nothing dead that was covered', () => {
    const [cover] = watched(september({ coldNights: [expected(-2.5)], gear: [light(40)] }));
    if (cover === undefined) throw new Error('No evening.');
    const task = look(-2.5, { done: [doneMark(cover, EVENING)] });
    expect(task?.steps.join(' ')).not.toContain('Likely dead');
  });

  it('has what it killed covered no more on later nights', () => {
    const coldNights = [measured(-3, '2027-09-16'), expected(-1)];
    expect(tonight(september({ coldNights }))).toBeUndefined();
    expect(tonight(september({ coldNights: [measured(-1, '2027-09-16'), expected(-1)] }))).toBeDefined();
  });
});

describe('what frost watch goes by', () => {
  it('is how growing plants fare, not how stored produce does', () => {
    // The storage grading calls lettuce and asparagus "most", kale "least" susceptible (USDA Handbook 66, produce in a
    // shed). A bed of lettuce outlives a night that kills beans, which the same grading sets beside it.
    const lettuce = tonight(september({ plantings: [sown('lettuce-leaf', '2027-08-01')], coldNights: [expected(-1)] }));
    const bean = tonight(september({ plantings: [sown('snap-bean', '2027-07-10')], coldNights: [expected(-1)] }));
    expect([lettuce, bean?.kind]).toEqual([undefined, 'cover-beds']);
  });

  it('has a sentence and a lawful source for every reason of every crop at −6 °C', () => {
    for (const { id } of vegetables) {
      const of = september({
        plantings: [setOut(id, '2027-07-01', { harvested: '2027-10-30' })],
        coldNights: [expected(-6)],
      });
      for (const task of watched(of)) expect(task.reasons.map(reasonSentence).join(' '), id).not.toContain('undefined');
    }
  });

  it('leaves permanent beds and hardy crops be', () => {
    const plantings = ['asparagus', 'rhubarb', 'garlic', 'kale', 'leek', 'parsnip'].map((id) =>
      setOut(id, '2027-06-01'),
    );
    expect(watched(september({ plantings, coldNights: [expected(-6)] }))).toEqual([]);
  });
});
