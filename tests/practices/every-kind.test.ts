/**
 * Every kind of task there is, and what each must warn of where it is read.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Garden, Pile } from '../../src/garden/garden.ts';
import { feedstockById, mayHoldWeedkiller } from '../../src/handbook/feedstocks.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { anyCase, inputIn } from './any-garden.ts';
import { bed, draftsIn, garden, milwaukee } from './gardens.ts';

/** Every kind of task a plan may hold but those of a single cold night. */
const KINDS = [
  'begin-pile',
  'bone-meal',
  'build-pile',
  'check-maturity',
  'check-regrowth',
  'check-rotation',
  'check-stand',
  'check-winter-kill',
  'clear-bed',
  'close-down',
  'cure-pile',
  'cut-again',
  'cut-cover',
  'draw-aside',
  'feed-crop',
  'fill-bed',
  'gather-leaves',
  'harden-off',
  'hold-compost',
  'keep-moist',
  'lay-sheet',
  'lift-sheet',
  'look-for-buds',
  'loosen-bed',
  'mark-out-bed',
  'mend-date',
  'mulch-bare-bed',
  'mulch-garlic',
  'mulch-thin-cover',
  'mulch-warm-crop',
  'order-bed-mix',
  'order-compost',
  'order-cover-seed',
  'order-garlic',
  'order-seed',
  'plan-again',
  'recheck-pile',
  'set-out',
  'settle-plan',
  'sow-cover',
  'sow-cover-again',
  'sow-crop',
  'sow-ideas',
  'squeeze-soil',
  'start-indoors',
  'take-out-sick',
  'take-soil-sample',
  'test-compost',
  'test-material',
  'test-seed',
  'topdress',
  'turn-pile',
  'uncover-garlic',
  'watch-for-frost',
  'weed-cover',
  'winter-bin',
];

interface Cautioned {
  /** What its cautions must say, all of it. */
  says: readonly RegExp[];
  kinds: readonly string[];
  /** Which tasks of those kinds; all of them where it is left out. */
  where?: (draft: TaskDraft, of: Garden) => boolean;
}

const MULCHING = ['mulch-bare-bed', 'mulch-garlic', 'mulch-thin-cover', 'mulch-warm-crop'];
const PILE_WORK = ['build-pile', 'turn-pile', 'cure-pile'];

function pileOf({ subject }: TaskDraft, { piles }: Garden): Pile | undefined {
  return piles.find(({ id }) => id === subject.id);
}

/** What can hurt, and the kinds of tasks where it can. */
const CAUTIONED: Readonly<Record<string, Cautioned>> = {
  'dust and spores': {
    says: [/dust|spores|mould/i],
    kinds: [
      ...PILE_WORK,
      ...MULCHING,
      'begin-pile',
      'bone-meal',
      'check-maturity',
      'draw-aside',
      'feed-crop',
      'fill-bed',
      'gather-leaves',
      'start-indoors',
      'test-compost',
      'test-material',
      'topdress',
      'uncover-garlic',
      'winter-bin',
    ],
  },
  lifting: {
    says: [/knees|straight back/],
    kinds: [
      ...PILE_WORK,
      ...MULCHING,
      'begin-pile',
      'fill-bed',
      'gather-leaves',
      'loosen-bed',
      'take-out-sick',
      'topdress',
      'winter-bin',
    ],
  },
  'heat in a heap': {
    says: [/scalding/],
    kinds: ['turn-pile', 'cure-pile', 'recheck-pile'],
    where: (draft, of) => pileOf(draft, of)?.built.happened === true,
  },
  'weedkiller in what is bought': {
    says: [/weedkiller/],
    kinds: [...MULCHING, 'begin-pile', 'fill-bed', 'order-bed-mix', 'order-compost'],
  },
  'weedkiller in what a pile is built of': {
    says: [/weedkiller/],
    kinds: ['build-pile'],
    where: (draft, of) =>
      pileOf(draft, of)?.ingredients.some(({ materialId }) => mayHoldWeedkiller(feedstockById(materialId))) === true,
  },
  'raw manure, with local rules first': {
    says: [/manure|dung/i, /local rules/],
    kinds: ['begin-pile', 'feed-crop', 'order-compost', 'test-material'],
  },
  'raw manure in a pile, with local rules first': {
    says: [/manure/, /local rules/],
    kinds: PILE_WORK,
    where: (draft, of) =>
      pileOf(draft, of)?.ingredients.some(({ materialId }) => feedstockById(materialId).manure) === true,
  },
  'blades and tines': {
    says: [/blades|tines|fork|sharpen|cut, and soil/i],
    kinds: [
      ...PILE_WORK,
      'bone-meal',
      'clear-bed',
      'close-down',
      'cut-again',
      'cut-cover',
      'loosen-bed',
      'take-out-sick',
      'test-material',
      'weed-cover',
    ],
  },
  'fire and sick remains, with local rules first': { says: [/local rules/], kinds: ['take-out-sick', 'clear-bed'] },
};

describe('gardens of every make, and one with a bed still to be made', () => {
  const all: { drafts: TaskDraft[]; of: Garden }[] = [];

  beforeAll(() => {
    for (const each of fc.sample(anyCase, { seed: 1, numRuns: 400 })) {
      all.push({ drafts: draftsOf(inputIn(each)), of: each.of });
    }
    const of = garden({ beds: [bed('n', { plannedFor: '2027-05-10', depthM: 0.3 })] });
    all.push({ drafts: draftsIn(of, milwaukee, '2027-01-10'), of });
    // Four hundred gardens are planned here, which a busy machine takes its time for.
  }, 180_000);

  it('ask for every kind of task', () => {
    const kinds = all.flatMap(({ drafts }) => drafts.map(({ kind }) => kind));
    expect([...new Set(kinds)].sort()).toEqual(KINDS);
  });

  it.each(Object.entries(CAUTIONED))(
    'have a caution on %s with every task it is about',
    (_, { says, kinds, where }) => {
      const asked = all.flatMap(({ drafts, of }) =>
        drafts.filter((each) => kinds.includes(each.kind) && (where?.(each, of) ?? true)),
      );
      expect(new Set(asked.map(({ kind }) => kind)), 'each kind is met').toEqual(new Set(kinds));
      const silent = asked.filter(({ cautions }) => !says.every((words) => words.test(cautions.join(' '))));
      expect([...new Set(silent.map(({ kind }) => kind))]).toEqual([]);
    },
  );
});
