import { describe, expect, it } from 'vitest';
import { gardenFileOf, gardenFileText } from '../../src/garden/export-garden-file.ts';
import { type Fact, factSchema } from '../../src/garden/facts.ts';
import { importDifferences } from '../../src/garden/file-difference.ts';
import type { Member } from '../../src/garden/household.ts';
import { heldFile } from '../../src/garden/member-ids.ts';
import { checkGardenFile, readGardenFile } from '../../src/garden/read-garden-file.ts';
import { exampleData, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const SUNDAYS = { to: 'ida@example.org', weekday: 7, hour: 18, tasks: 'own' } as const;
const kept = (member: Member, formerName?: string): Fact =>
  factSchema.parse({ kind: 'member-kept', member, ...(formerName === undefined ? {} : { formerName }) });
const gone = (name: string): Fact => ({ kind: 'member-gone', id: name.toLowerCase(), name });
const given = (to: string | undefined, ...keys: string[]): Fact =>
  factSchema.parse({ kind: 'task-assigned', tasks: keys.map((key) => ({ key, title: key })), to });

const withIdaAndJonas = exampleFile({
  household: { people: 4, members: [{ name: 'Ida', practices: ['composting'] }, { name: 'Jonas' }] },
});

/** The garden of a file on 1 June 2027 with a fact a day after it. */
function gardenAfter(file: typeof withIdaAndJonas, ...facts: Fact[]) {
  return gardenOf(
    ledgerOf(
      ['2027-06-01', imported(file)],
      ...facts.map((fact, at) => [`2027-06-0${at + 2}`, fact] as [string, Fact]),
    ),
  );
}

const namesIn = ({ household }: ReturnType<typeof gardenAfter>) => household?.members?.map(({ name }) => name);

describe('the members of a household', () => {
  it('come and go, and each keeps their place when something about them changes', () => {
    const garden = gardenAfter(
      withIdaAndJonas,
      kept({ id: 'runa', name: 'Runa' }),
      kept({ id: 'ida', name: 'Ida', beds: ['north-bed'] }),
    );
    expect(garden.household).toEqual({
      people: 4,
      members: [
        { id: 'ida', name: 'Ida', beds: ['north-bed'] },
        { id: 'jonas', name: 'Jonas' },
        { id: 'runa', name: 'Runa' },
      ],
    });
    expect(namesIn(gardenAfter(withIdaAndJonas, gone('Ida')))).toEqual(['Jonas']);
  });

  it('may be named where the file names nobody, and nothing is known then of how many eat', () => {
    expect(gardenAfter(exampleFile(), kept({ id: 'ida', name: 'Ida' })).household).toEqual({
      members: [{ id: 'ida', name: 'Ida' }],
    });
    expect(gardenAfter(exampleFile(), { kind: 'people-told', people: 3 }).household).toEqual({ people: 3 });
  });

  it('take what was given to them along to another name', () => {
    const garden = gardenAfter(withIdaAndJonas, given('Ida', 'turn:2'), kept({ id: 'ida', name: 'Ida Holm' }, 'Ida'));
    expect(namesIn(garden)).toEqual(['Ida Holm', 'Jonas']);
    expect(garden.assigned).toEqual({ 'turn:2': 'Ida Holm' });
  });

  it('see to no bed that is no longer there', () => {
    const garden = gardenAfter(withIdaAndJonas, kept({ id: 'ida', name: 'Ida', beds: ['wall-bed', 'north-bed'] }));
    expect(garden.household?.members?.[0]?.beds).toEqual(['north-bed']);
  });

  it('get mail until it is stopped', () => {
    const mailed = kept({ id: 'ida', name: 'Ida', mail: SUNDAYS });
    expect(gardenAfter(withIdaAndJonas, mailed).household?.members?.[0]).toEqual({
      id: 'ida',
      name: 'Ida',
      mail: SUNDAYS,
    });
    const stopped = gardenAfter(withIdaAndJonas, mailed, {
      kind: 'mail-stopped',
      id: 'ida',
      name: 'Ida',
      week: '2027-06-07',
    });
    expect(stopped.household?.members?.[0]).toEqual({ id: 'ida', name: 'Ida' });
  });
});

describe('work given to somebody', () => {
  it('is theirs by its key until it is given on or to nobody in particular', () => {
    expect(gardenAfter(withIdaAndJonas, given('Ida', 'a', 'b')).assigned).toEqual({ a: 'Ida', b: 'Ida' });
    expect(gardenAfter(withIdaAndJonas, given('Ida', 'a', 'b'), given('Jonas', 'b')).assigned).toEqual({
      a: 'Ida',
      b: 'Jonas',
    });
    expect(gardenAfter(withIdaAndJonas, given('Ida', 'a', 'b'), given(undefined, 'a')).assigned).toEqual({ b: 'Ida' });
  });

  it('is nobody’s again when they leave, and theirs again when that is taken back', () => {
    const facts = [given('Ida', 'a'), gone('Ida')];
    expect(gardenAfter(withIdaAndJonas, ...facts).assigned).toEqual({});
    expect(gardenAfter(withIdaAndJonas, ...facts, { kind: 'entry-undone', entry: 3 }).assigned).toEqual({ a: 'Ida' });
  });

  it('is nobody’s when a file no longer names them', () => {
    const ledger = ledgerOf(
      ['2027-06-01', imported(withIdaAndJonas)],
      ['2027-06-02', given('Ida', 'a')],
      ['2027-06-03', imported(exampleFile({ household: { people: 4, members: [{ name: 'Jonas' }] } }))],
    );
    expect(gardenOf(ledger).assigned).toEqual({});
  });
});

describe('a file that no longer names somebody', () => {
  const onlyJonas = exampleFile({ household: { people: 4, members: [{ name: 'Jonas' }] } });
  const done: Fact = {
    kind: 'tasks-done',
    on: '2027-06-03',
    tasks: [
      {
        key: 'b',
        practice: 'mulching',
        taskKind: 'mulch',
        title: 'b',
        job: { id: 'b', title: 'b' },
        subject: { type: 'garden', id: 'g', name: 'the garden' },
        effortMinutes: 5,
        makes: [],
      },
    ],
  };
  const ledger = ledgerOf(
    ['2027-06-01', imported(withIdaAndJonas)],
    ['2027-06-02', given('Ida', 'a', 'b', 'c')],
    ['2027-06-03', done],
  );

  it('says beforehand what of their work comes back to nobody in particular', () => {
    const differences = importDifferences(ledger, onlyJonas, { prefer: 'reported', readOn: '2027-06-04' });
    expect(differences?.map(({ path, now, file }) => [path, now, file])).toEqual([
      ['household.members', 'name Ida, practices composting', 'not there'],
      ['work given to Ida', '2 tasks', 'nobody’s'],
    ]);
  });

  it('says nothing of the kind where they stay', () => {
    expect(importDifferences(ledger, withIdaAndJonas, { prefer: 'file', readOn: '2027-06-04' })).toEqual([]);
  });
});

describe('a file brought in after somebody was changed on the page', () => {
  const changed = kept({ id: 'ida', name: 'Ida', practices: ['mulching'], mail: SUNDAYS });
  const ledger = (prefer: 'reported' | 'file', file = withIdaAndJonas) =>
    ledgerOf(
      ['2027-06-01', imported(withIdaAndJonas)],
      ['2027-06-02', changed],
      ['2027-06-03', { ...imported(file), prefer } as Fact],
    );

  it('leaves what was told standing, unless the file is preferred', () => {
    expect(gardenOf(ledger('reported')).household?.members?.[0]?.practices).toEqual(['mulching']);
    expect(gardenOf(ledger('file')).household?.members?.[0]).toEqual({
      id: 'ida',
      name: 'Ida',
      practices: ['composting'],
    });
  });

  it('is told of beforehand, with whose word is kept', () => {
    const told = ledgerOf(['2027-06-01', imported(withIdaAndJonas)], ['2027-06-02', changed]);
    const differences = importDifferences(told, withIdaAndJonas, { prefer: 'reported', readOn: '2027-06-03' });
    expect(differences).toMatchObject([
      { path: 'household.members', now: expect.stringContaining('to ida@example.org'), keeps: 'reported' },
      { path: 'household.members', file: 'name Ida, practices composting', keeps: 'reported' },
    ]);
  });

  it('says the same as before where it is the garden’s own export, mail and all', () => {
    const garden = gardenAfter(withIdaAndJonas, changed);
    const text = gardenFileText(gardenFileOf(garden));
    expect(text).toContain('weekday: sun');
    const file = readGardenFile(text);
    expect(file.household).toEqual(gardenFileOf(garden).household);
    expect(gardenOf(ledger('file', file)).household).toEqual(garden.household);
  });
});

describe('mail in a garden file', () => {
  const read =
    (mail: object, name = 'Ida') =>
    () =>
      checkGardenFile({ ...exampleData(), household: { members: [{ name, mail }] } });
  const good = { to: 'ida@example.org', weekday: 'fri', hour: 7 };

  it('is the reader’s own work unless it says all', () => {
    expect(read(good)().household?.members?.[0]?.mail?.tasks).toBe('own');
    expect(read({ ...good, tasks: 'all' })().household?.members?.[0]?.mail?.tasks).toBe('all');
  });

  it.each([
    [{ ...good, to: 'ida' }],
    [{ ...good, to: 'ida@example.org\nBcc: all@example.org' }],
    [{ ...good, from: 'Ida <ida@example.org>' }],
    [{ ...good, to: `${'a'.repeat(250)}@example.org` }],
    [{ ...good, hour: 25 }],
    [{ ...good, hour: 7.5 }],
    [{ ...good, weekday: 'caturday' }],
  ])('is refused as %j', (mail) => {
    expect(read(mail)).toThrow();
  });

  it('goes to nobody whose name has a line break in it, which could begin a header', () => {
    expect(read(good, 'Ida\r\nBcc: all@example.org')).toThrow();
    expect(factSchema.safeParse({ kind: 'member-kept', member: { id: 'ida', name: 'Ida\nX: y' } }).success).toBe(false);
  });
});

describe('the id of a member', () => {
  const ledger = (...facts: Fact[]) =>
    ledgerOf(['2027-06-01', imported(withIdaAndJonas)], ...facts.map((fact) => ['2027-06-02', fact] as const));
  const read = (facts: Fact[], ...members: object[]) =>
    checkGardenFile({ ...exampleData(), household: { members } }, heldFile(ledger(...facts))).household?.members?.map(
      ({ id }) => id,
    );
  const berg = kept({ id: 'ida', name: 'Ida Berg' }, 'Ida');

  it('is kept through an export, and by another name beside it', () => {
    const text = gardenFileText(gardenFileOf(gardenOf(ledger(berg))));
    const members = readGardenFile(text).household?.members;
    expect(members?.map(({ id, name }) => [id, name])).toEqual([
      ['ida', 'Ida Berg'],
      ['jonas', 'Jonas'],
    ]);
    expect(read([], { id: 'ida', name: 'Ilse' })).toEqual(['ida']);
  });

  it('is found by the name somebody has, or that the last file gave them', () => {
    expect(read([berg], { name: 'Ida Berg' })).toEqual(['ida']);
    expect(read([gone('Ida')], { name: 'Ida' })).toEqual(['ida']);
    expect(read([berg, kept({ id: 'ida-2', name: 'Ida' })], { name: 'Ida' })).toEqual(['ida-2']);
  });

  it('is nobody else’s after they have left, though what told of them was taken back', () => {
    const runa = kept({ id: 'runa', name: 'Runa' });
    expect(read([runa, gone('Runa')], { name: 'Runa' })).toEqual(['runa-2']);
    expect(read([runa, { kind: 'entry-undone', entry: 2 }], { name: 'Runa' })).toEqual(['runa-2']);
  });

  it('belongs to one', () => {
    const two = [
      { id: 'a', name: 'Ida' },
      { id: 'a', name: 'Jonas' },
    ];
    expect(() => read([], ...two)).toThrow('"a" is the id of two.');
  });
});
