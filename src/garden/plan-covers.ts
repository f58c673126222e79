/**
 * Covers and mulches meant for a bed: the last choice counts, and takes with it what it replaces.
 */
import type { Day } from '../measures/days.ts';
import type { Fact } from './facts.ts';
import type { Garden, MulchPlan } from './garden.ts';
import { asUnsaid } from './unsaid.ts';
import { withoutAbsent } from './without-absent.ts';

/**
 * A stand meant to be sown. A mulch that was meant for its sowing day gives way to it. What was skipped, pinned or put off of a
 * stand of the same id, as it was suggested or planned before, was said of that one: the new one asks for all its work.
 */
export function planStandIn(garden: Garden, fact: Extract<Fact, { kind: 'stand-planned' }>): Garden {
  const { standId: id, bedId, coverId, sowOn, instead = [] } = fact;
  if (!hasBed(garden, bedId)) return garden;
  const cleared = withoutPlanned(garden, instead);
  const there = cleared.stands.find((stand) => stand.id === id);
  // A garden file may tell the same stand already.
  if (there !== undefined) return there.sow.happened ? garden : asUnsaid(garden, [`stand:${id}`]);
  const { stands, mulches, ...rest } = asUnsaid(cleared, [`stand:${id}`]);
  const stand = { id, bedId, coverId, sow: { day: sowOn, happened: false }, regrowthCheckedOn: [] };
  const givesWay = (mulch: MulchPlan): boolean => mulch.bedId === bedId && lies(mulch, sowOn);
  return { ...rest, stands: [...stands, stand], mulches: mulches.filter((mulch) => !givesWay(mulch)) };
}

/** A mulch meant for days of a bed, in place of any other for some of them. */
export function planMulch(garden: Garden, fact: Extract<Fact, { kind: 'mulch-planned' }>): Garden {
  const { kind: _kind, instead = [], ...mulch } = fact;
  if (!hasBed(garden, mulch.bedId)) return garden;
  const cleared = asUnsaid(withoutPlanned(garden, instead), ['mulch-bare', `bed:${mulch.bedId}`]);
  const others = cleared.mulches.filter((other) => other.bedId !== mulch.bedId || !overlap(other, mulch));
  return { ...cleared, mulches: [...others, withoutAbsent(mulch)] };
}

/** The garden without those stands among some that were never sown, nor what was skipped, pinned or put off of them. */
export function withoutPlanned(garden: Garden, ids: readonly string[]): Garden {
  const leaving = garden.stands.filter(({ id, sow }) => !sow.happened && ids.includes(id));
  if (leaving.length === 0) return garden;
  const left: Garden = { ...garden, stands: garden.stands.filter((stand) => !leaving.includes(stand)) };
  return leaving.reduce<Garden>((state, { id }) => asUnsaid(state, [`stand:${id}`]), left);
}

/** Whether a garden has a bed of this id. */
export function hasBed({ beds }: Garden, id: string): boolean {
  return beds.some((bed) => bed.id === id);
}

function lies({ from, to }: Lying, day: Day): boolean {
  return from <= day && (to === undefined || day < to);
}

interface Lying {
  from: Day;
  to?: Day | undefined;
}

function overlap(one: Lying, other: Lying): boolean {
  return lies(one, other.from) || lies(other, one.from);
}
