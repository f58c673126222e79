/**
 * Orders and sowings of covers held against the seed that is left: what is there is not ordered again.
 */
import type { Effect } from '../../garden/effects.ts';
import { coverSeedLifeOf } from '../../handbook/seed-life.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { capital } from '../../measures/capital.ts';
import { type Day, yearOf } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { seedSupply } from './seed.ts';
import { isGoodIn, lackingOf, type SeedGrams, type SeedLeft, type SowingNeed, seedLeft } from './seed-left.ts';
import { lateSeed, orderKey, seedAtHand } from './sow-drafts.ts';

/** A sowing's draft with what it takes. */
interface Sowing extends SowingNeed {
  draft: TaskDraft;
}

/** The drafts with orders of what is lacking alone, and sowings that say where their seed comes from. */
export function heldAgainstSeed(input: PracticeInput, drafts: readonly TaskDraft[]): TaskDraft[] {
  const sowings = drafts.flatMap((draft) => sowingOf(input, draft) ?? []);
  const lacking = lackingOf(input, sowings);
  const left = seedLeft(input);
  const byOrder = new Map(sowings.map((sowing) => [orderKey(sowing.standId), sowing]));
  const byKey = new Map(sowings.map((sowing) => [sowing.draft.key, sowing]));
  return drafts.flatMap((draft) => {
    const [ordering, sowing] = [byOrder.get(draft.key), byKey.get(draft.key)];
    if (ordering !== undefined && !ordering.ordered)
      return orderOf(draft, ordering, lacking.get(ordering.standId) ?? [], left);
    if (sowing === undefined || draft.kind !== 'sow-cover') return [draft];
    const isThere = (lacking.get(sowing.standId) ?? []).length === 0;
    return [{ ...draft, steps: [...whence(input, sowing, isThere), ...draft.steps] }];
  });
}

function sowingOf({ garden }: PracticeInput, draft: TaskDraft): Sowing | undefined {
  const need = draft.makes.filter((effect) => effect.makes === 'seed-sown');
  const [first] = need;
  if (first === undefined || garden.skipped[draft.key] !== undefined) return undefined;
  const isAgain = draft.kind === 'sow-cover-again';
  const { standId } = first;
  return {
    draft,
    need,
    standId: isAgain ? draft.key : standId,
    on: garden.pins[draft.key] ?? draft.window.preferred,
    ordered: garden.done.some(({ key }) => key === orderKey(standId)),
    planned: isAgain || garden.stands.some(({ id }) => id === standId),
  };
}

/** Where the seed of a sowing comes from, where no order of its own brings it. */
function whence(
  input: PracticeInput,
  { draft, standId, on, ordered, planned, need }: Sowing,
  isThere: boolean,
): string[] {
  if (ordered) return [];
  if (isThere) return [`Its seed is in the drawer: ${need.map(amountOf).join(', ')}, left from before.`];
  if (!planned) return seedAtHand(input, standId, on);
  const pinned = input.garden.pins[draft.key];
  const window = pinned === undefined ? draft.window : { earliest: pinned, preferred: pinned, latest: pinned };
  return lateSeed(input, standId, on, window);
}

function amountOf({ coverId, grams }: SeedGrams): string {
  return `${quantity(grams, 'g')} of ${coverName(coverId)}`;
}

/** An order of what is lacking; none where nothing is. */
function orderOf(
  draft: TaskDraft,
  { need, on }: Sowing,
  lacking: readonly SeedGrams[],
  left: readonly SeedLeft[],
): TaskDraft[] {
  if (lacking.length === 0) return [];
  const there = need.flatMap((whole): (SeedGrams & { whole: number })[] => {
    const short = lacking.find(({ coverId }) => coverId === whole.coverId)?.grams ?? 0;
    return short < whole.grams ? [{ coverId: whole.coverId, grams: whole.grams - short, whole: whole.grams }] : [];
  });
  const old = left.filter(
    (packet) => need.some(({ coverId }) => coverId === packet.coverId) && !isGoodIn(packet, yearOf(on)),
  );
  const told = draft.makes.length;
  const kept = draft.supplies.filter(({ amount }) => amount === undefined);
  return [
    {
      ...draft,
      steps: [
        ...lacking.map(({ coverId, grams }) => `${capital(coverName(coverId))}: ${quantity(grams, 'g')}.`),
        ...there.map(
          (each) =>
            `The sowing takes ${quantity(each.whole, 'g')}: ${amountOf(each)} is left from before and still good.`,
        ),
        ...old.map(oldStep),
        ...draft.steps.slice(told),
      ],
      supplies: [...lacking.map(({ coverId, grams }) => seedSupply(coverName(coverId), grams)), ...kept],
      reasons: [...draft.reasons, ...there.map(leftReason), ...old.map((packet) => oldReason(packet, on))],
      makes: lacking.map((each): Effect => ({ makes: 'seed-bought', ...each })),
    },
  ];
}

function oldStep(packet: SeedLeft): string {
  return `${capital(amountOf(packet))} from ${packet.packedYear} is not counted: try ten seeds in a damp cloth first, and order so much less if nearly all sprout.`;
}

function leftReason({ coverId, grams, whole }: SeedGrams & { whole: number }): Reason {
  const saw = { cover: coverName(coverId), needGrams: whole, leftGrams: grams };
  return { rule: 'cover-order.left', saw, source: "the garden's own plan" };
}

function oldReason({ coverId, packedYear }: SeedLeft, on: Day): Reason {
  const life = coverSeedLifeOf(coverId);
  const saw = { cover: coverName(coverId), packedYear, ageYears: yearOf(on) - packedYear };
  return { rule: 'cover-order.old', saw, limit: life.years, source: originOf(life, 'years') };
}
