/**
 * What the facts about people do to a garden.
 */
import type { Garden } from './garden.ts';
import type { Household, Member } from './household.ts';
import type { HouseholdFact } from './household-facts.ts';
import { hasBed } from './plan-covers.ts';
import { withoutAbsent } from './without-absent.ts';

type Told<Kind extends HouseholdFact['kind']> = Omit<Extract<HouseholdFact, { kind: Kind }>, 'kind'>;

/** The members of a garden's household; none where nobody was named. */
export function membersOf({ household }: Pick<Garden, 'household'>): readonly Member[] {
  return household?.members ?? [];
}

/** The garden with a member as they are now, at the place they had, or last; work given to them goes with their name. */
export function withMember(garden: Garden, { member }: Told<'member-kept'>): Garden {
  const kept = memberOf(member, garden);
  const was = membersOf(garden).find(({ id }) => id === member.id);
  const members = membersOf(garden);
  const now = was === undefined ? [...members, kept] : members.map((each) => (each === was ? kept : each));
  return { ...withMembers(garden, now), assigned: renamed(garden.assigned, was?.name ?? member.name, member.name) };
}

/** Beds that are no longer there are left out: a file could not name them. */
function memberOf({ mail, beds = [], ...rest }: Told<'member-kept'>['member'], garden: Garden): Member {
  const there = beds.filter((bed) => hasBed(garden, bed));
  return withoutAbsent({
    ...rest,
    beds: there.length === 0 ? undefined : there,
    mail: mail && withoutAbsent(mail),
  });
}

/** The garden without a member: what was given to them belongs to nobody in particular again. */
export function withoutMember(garden: Garden, { id }: Told<'member-gone'>): Garden {
  const gone = membersOf(garden).find((each) => each.id === id);
  if (gone === undefined) return garden;
  const members = membersOf(garden).filter((each) => each !== gone);
  return { ...withMembers(garden, members), assigned: only(garden.assigned, (to) => to !== gone.name) };
}

/** The garden with a member who gets no more mail. */
export function withoutMail(garden: Garden, { id }: Told<'mail-stopped'>): Garden {
  if (!membersOf(garden).some((each) => each.id === id && each.mail !== undefined)) return garden;
  const members = membersOf(garden).map((each) => {
    const { mail: _mail, ...rest } = each;
    return each.id === id ? rest : each;
  });
  return withMembers(garden, members);
}

/** The garden with how many eat from it. */
export function withPeople(garden: Garden, { people }: Told<'people-told'>): Garden {
  return { ...garden, household: { ...garden.household, people } };
}

/** The garden with tasks given to somebody, or to nobody in particular. */
export function withAssigned(garden: Garden, { tasks, to }: Told<'task-assigned'>): Garden {
  const keys = new Set(tasks.map(({ key }) => key));
  const others = Object.entries(garden.assigned).filter(([key]) => !keys.has(key));
  const given = to === undefined ? [] : [...keys].map((key) => [key, to] as const);
  return { ...garden, assigned: Object.fromEntries([...others, ...given]) };
}

/**
 * Only work that is given to somebody who is there: a file that no longer names a member gives theirs to nobody. A name
 * stands for one person: where a file and what was told beside it come to two, for the last of them.
 */
export function withPresentOnly(all: Garden): Garden {
  const members = membersOf(all);
  const last = members.filter(({ name }, at) => members.findLastIndex((each) => each.name === name) === at);
  const garden = last.length === members.length ? all : withMembers(all, last);
  const names = new Set(membersOf(garden).map(({ name }) => name));
  if (Object.values(garden.assigned).every((to) => names.has(to))) return garden;
  return { ...garden, assigned: only(garden.assigned, (to) => names.has(to)) };
}

function withMembers(garden: Garden, members: readonly Member[]): Garden {
  const { members: _members, ...rest } = garden.household ?? {};
  const household: Household = members.length === 0 ? rest : { ...rest, members };
  return { ...garden, household };
}

function renamed(assigned: Garden['assigned'], was: string, name: string): Garden['assigned'] {
  if (was === name) return assigned;
  return Object.fromEntries(Object.entries(assigned).map(([key, to]) => [key, to === was ? name : to]));
}

function only(assigned: Garden['assigned'], keeps: (to: string) => boolean): Garden['assigned'] {
  return Object.fromEntries(Object.entries(assigned).filter(([, to]) => keeps(to)));
}
