import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/measures/days.ts';
import { type KnownLots, type LotMember, lotsOf } from '../../src/schedule/lots.ts';
import type { Entry, RetiredLot } from '../../src/schedule/plan.ts';
import { draft, planOn, taskIn } from './drafts.ts';

/** A sowing on a bed on a day of April 2027. */
function sowing(bed: string, date: number, parts: Partial<LotMember> = {}): LotMember {
  const day: Day = `2027-04-${String(date).padStart(2, '0')}`;
  return { draft: draft('sow', bed, [day, day, day]), day, state: 'open', ...parts };
}

/** Lots known by id, beds and age: entry "old", created on that day of January. */
function known(
  entries: readonly [lotId: string, beds: string, january: number][],
  retired: RetiredLot[] = [],
): KnownLots {
  const base = planOn('2027-04-01', [draft('sow', 'z', ['2027-04-10', '2027-04-10', '2027-04-10'])]).entries;
  const row = ([lotId, beds, january]: (typeof entries)[number]): Entry[] =>
    base.slice(0, 1).map((entry) => ({ ...entry, lotId, keys: keysOf(beds), createdAt: january1(january) }));
  return { entries: entries.flatMap(row), retired };
}

const keysOf = (beds: string): string[] => [...beds].map((bed) => `sow/bed:${bed}`);
const january1 = (date: number): string => `2027-01-${String(date).padStart(2, '0')}T12:00:00.000Z`;

function left(lotId: string, beds: string): RetiredLot {
  return { lotId, kind: 'sow', keys: keysOf(beds), sequence: 3, createdAt: january1(1), on: '2027-03-01' };
}

/** Lots as "id: beds". */
function told(members: readonly LotMember[], before?: KnownLots): string[] {
  return lotsOf(members, before).map(
    ({ lotId, members: held }) => `${lotId}: ${held.map(({ draft: { subject } }) => subject.id).join('')}`,
  );
}

describe('gathering into lots', () => {
  it('makes one of the same job on one day, in bed order, named after its first task', () => {
    expect(told([sowing('b', 10), sowing('a', 10)])).toEqual(['sow/bed:a: ab']);
  });

  it('parts other days, other jobs and other states', () => {
    const cut = { ...sowing('c', 10), draft: draft('cut', 'c', ['2027-04-10', '2027-04-10', '2027-04-10']) };
    const members = [sowing('a', 10), sowing('b', 14), cut, sowing('d', 10, { state: 'done' })];
    expect(told(members)).toHaveLength(4);
  });

  it('puts a check into the lot of the work it rides with, after the work', () => {
    const look = draft('look', 'a', ['2027-04-10', '2027-04-10', '2027-04-10'], { weight: 'check' });
    const rider: LotMember = { draft: look, day: '2027-04-10', state: 'open', ridesWith: 'sow/bed:b' };
    const [lot] = lotsOf([rider, sowing('b', 10), sowing('c', 10)]);
    expect(lot?.members.map((member) => member.draft.key)).toEqual(['sow/bed:b', 'sow/bed:c', 'look/bed:a']);
  });

  it('gives a new lot another id than any in use or remembered', () => {
    const before = known([['sow/bed:a', 'bc', 1]], [left('sow/bed:a~2', 'q')]);
    expect(told([sowing('a', 10), sowing('b', 14), sowing('c', 14)], before)).toEqual([
      'sow/bed:a~3: a',
      'sow/bed:a: bc',
    ]);
  });
});

describe('the id of a lot', () => {
  it('stays when the lot moves, when a bed joins and when a bed leaves', () => {
    expect(told([sowing('a', 17), sowing('b', 17)], known([['old', 'ab', 1]]))).toEqual(['old: ab']);
    expect(told([sowing('a', 10), sowing('b', 10)], known([['old', 'a', 1]]))).toEqual(['old: ab']);
    expect(told([sowing('a', 10)], known([['old', 'ab', 1]]))).toEqual(['old: a']);
  });

  it('stays when the last of its work is done', () => {
    expect(told([sowing('a', 10, { state: 'done' })], known([['old', 'a', 1]]))).toEqual(['old: a']);
  });

  it('stays on a split with the larger part', () => {
    const members = [sowing('a', 10), sowing('b', 14), sowing('c', 14)];
    expect(told(members, known([['old', 'abc', 1]]))).toEqual(['sow/bed:a: a', 'old: bc']);
  });

  it('stays on an even split with the part that holds the lowest bed', () => {
    expect(told([sowing('a', 14), sowing('b', 10)], known([['old', 'ab', 1]]))).toEqual(['sow/bed:b: b', 'old: a']);
  });

  it('stays on an even split with the part that is not mostly another lot', () => {
    const before = known([
      ['old', 'bc', 1],
      ['new', 'a', 2],
    ]);
    expect(told([sowing('a', 10), sowing('b', 10), sowing('c', 14)], before)).toEqual(['new: ab', 'old: c']);
  });

  it('is the older one on a merge', () => {
    const before = known([
      ['young', 'abc', 2],
      ['old', 'd', 1],
    ]);
    expect(told([sowing('a', 10), sowing('b', 10), sowing('c', 10), sowing('d', 10)], before)).toEqual(['old: abcd']);
  });

  it('passes to the rest of a lot when its larger part has gone into an older one', () => {
    const before = known([
      ['old', 'a', 1],
      ['young', 'bcd', 2],
    ]);
    const members = [sowing('a', 10), sowing('b', 10), sowing('c', 10), sowing('d', 14)];
    expect(told(members, before)).toEqual(['old: abc', 'young: d']);
  });

  it('does not go with a check that leaves its work', () => {
    const days = ['2027-04-10', '2027-04-10', '2027-04-17'] as const;
    const looks = ['1', '2'].map((number) =>
      draft('look', 'a', days, { key: `look/bed:a/${number}`, weight: 'check' }),
    );
    const before = planOn('2027-04-01', [draft('sow', 'a', days), ...looks]);
    expect(before.entries.map(({ keys }) => keys)).toEqual([['sow/bed:a', 'look/bed:a/1', 'look/bed:a/2']]);
    const apart = looks.map((look): LotMember => ({ draft: look, day: '2027-04-14', state: 'open' }));
    const lots = lotsOf([sowing('a', 9, { state: 'done' }), ...apart], before);
    const lotId = taskIn(before, 'sow/bed:a').lotId;
    expect(lots.find(({ state }) => state === 'done')?.lotId).toBe(lotId);
  });
});

describe('the id of a check that stood alone', () => {
  const days = ['2027-04-10', '2027-04-10', '2027-04-17'] as const;
  const look = draft('look', 'a', days, { weight: 'check' });
  const alone = planOn('2027-04-01', [look]);
  const rider: LotMember = { draft: look, day: '2027-04-10', state: 'open', ridesWith: 'sow/bed:a' };

  it('does not pass to the work it begins to ride with', () => {
    const [lot] = lotsOf([sowing('a', 10), rider], alone);
    expect(lot?.lotId).toBe('sow/bed:a');
  });

  it('is its own again when it stands alone again', () => {
    const riding = planOn('2027-04-02', [look, draft('sow', 'a', days)], { published: alone });
    expect(riding.entries.map(({ keys }) => keys)).toEqual([['sow/bed:a', 'look/bed:a']]);
    const [lot] = lotsOf([{ draft: look, day: '2027-04-10', state: 'open' }], riding);
    expect(lot?.lotId).toBe('look/bed:a');
  });
});

describe('a lot that left', () => {
  it('comes back under its own id', () => {
    expect(told([sowing('a', 10)], known([], [left('gone', 'a')]))).toEqual(['gone: a']);
  });

  it('comes back to the group that is just what it was, before one that is so in part', () => {
    const before = known([], [left('part', 'ab'), left('whole', 'a')]);
    expect(told([sowing('a', 10)], before)).toEqual(['whole: a']);
  });

  it('takes its id back when the lot it went into splits again', () => {
    const before = known([['old', 'abc', 1]], [left('gone', 'bc')]);
    expect(told([sowing('a', 10), sowing('b', 14), sowing('c', 14)], before)).toEqual(['old: a', 'gone: bc']);
  });

  it('does not take the id of a lot that is still there', () => {
    const before = known([['old', 'ab', 1]], [left('gone', 'ab')]);
    expect(told([sowing('a', 10), sowing('b', 10)], before)).toEqual(['old: ab']);
  });
});
