/**
 * What the facts about people do to a garden.
 */
import type { Garden, Household, Member } from './garden.ts';
import type { HouseholdFact } from './household-facts.ts';
import { hasBed } from './plan-covers.ts';
import { withoutAbsent } from './without-absent.ts';

type Told<Kind extends HouseholdFact['kind']> = Omit<Extract<HouseholdFact, { kind: Kind }>, 'kind'>;

/** The members of a garden's household; none where nobody was named. */
export function membersOf({ household }: Pick<Garden, 'household'>): readonly Member[] {
  return household?.members ?? [];
}

/** The garden with a member as they are now, at the place they had, or last; work given to them goes with their name. */
export function withMember(garden: Garden, { member, formerName }: Told<'member-kept'>): Garden {
  const { name } = member;
  const was = formerName ?? name;
  const kept = memberOf(member, garden);
  const members = membersOf(garden).filter((each) => each.name === was || each.name !== name);
  const isThere = members.some((each) => each.name === was);
  const now = isThere ? members.map((each) => (each.name === was ? kept : each)) : [...members, kept];
  return { ...withMembers(garden, now), assigned: renamed(garden.assigned, was, name) };
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
export function withoutMember(garden: Garden, { name }: Told<'member-gone'>): Garden {
  const members = membersOf(garden).filter((each) => each.name !== name);
  return { ...withMembers(garden, members), assigned: only(garden.assigned, (to) => to !== name) };
}

/** The garden with a member who gets no more mail. */
export function withoutMail(garden: Garden, { name }: Told<'mail-stopped'>): Garden {
  if (!membersOf(garden).some((each) => each.name === name && each.mail !== undefined)) return garden;
  const members = membersOf(garden).map((each) => {
    const { mail: _mail, ...rest } = each;
    return each.name === name ? rest : each;
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

/** Only work that is given to somebody who is there: a file that no longer names a member gives theirs to nobody. */
export function withPresentOnly(garden: Garden): Garden {
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
