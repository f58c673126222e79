import { describe, expect, test } from 'vitest';
import { mailSince } from '../../../src/digest/mail/mail-history.ts';
import type { Fact } from '../../../src/garden/facts.ts';
import type { Member } from '../../../src/garden/household.ts';
import { exampleFile, imported, ledgerOf } from '../../garden/example-garden.ts';

const MAIL = { to: 'ida@example.org', weekday: 7, hour: 18, tasks: 'own' } as const;
const kept = (member: Member): Fact => ({ kind: 'member-kept', member });
const ida = (name = 'Ida', mail: Member['mail'] = MAIL) => kept({ id: 'ida', name, mail });
const stopped: Fact = { kind: 'mail-stopped', id: 'ida', name: 'Ida' };

/** Since which day of June each member has mail, by facts told one a day from 1 June on. */
function sinceAfter(...facts: Fact[]) {
  const days = facts.map((fact, at) => [`2027-06-${String(at + 1).padStart(2, '0')}`, fact] as const);
  return Object.fromEntries([...mailSince(ledgerOf(...days))].map(([id, since]) => [id, Number(since.slice(8, 10))]));
}

const bare = imported(exampleFile());
const withIda = imported(exampleFile({ household: { members: [{ name: 'Ida', mail: { ...MAIL, weekday: 'sun' } }] } }));

describe('the mail of a member', () => {
  test('begins with the fact or the file that first told of it', () => {
    expect(sinceAfter(bare, ida())).toEqual({ ida: 2 });
    expect(sinceAfter(withIda)).toEqual({ ida: 1 });
  });

  test('is not begun anew by other settings, another name, that name taken back, or a file', () => {
    expect(sinceAfter(withIda, ida('Ida', { ...MAIL, hour: 7 }))).toEqual({ ida: 1 });
    expect(sinceAfter(withIda, ida('Ida Berg'))).toEqual({ ida: 1 });
    expect(sinceAfter(withIda, ida('Ida Berg'), { kind: 'entry-undone', entry: 2 })).toEqual({ ida: 1 });
    expect(sinceAfter(withIda, withIda)).toEqual({ ida: 1 });
  });

  test('is not that of somebody who takes the name later', () => {
    expect(sinceAfter(withIda, ida('Ida Berg'), kept({ id: 'ida-2', name: 'Ida', mail: MAIL }))).toEqual({
      ida: 1,
      'ida-2': 3,
    });
  });

  test('begins anew where it was stopped, and when the stop is taken back', () => {
    expect(sinceAfter(withIda, stopped)).toEqual({});
    expect(sinceAfter(withIda, stopped, ida())).toEqual({ ida: 3 });
    expect(sinceAfter(withIda, stopped, bare, { kind: 'entry-undone', entry: 2 }, withIda)).toEqual({ ida: 5 });
    expect(sinceAfter(withIda, stopped, { kind: 'entry-undone', entry: 2 })).toEqual({ ida: 3 });
  });

  test('begins anew in a file that names it again after one that did not', () => {
    expect(sinceAfter(withIda, bare, withIda)).toEqual({ ida: 3 });
  });

  test('begins anew when a leaving is taken back', () => {
    expect(
      sinceAfter(withIda, { kind: 'member-gone', id: 'ida', name: 'Ida' }, { kind: 'entry-undone', entry: 2 }),
    ).toEqual({ ida: 3 });
  });
});
