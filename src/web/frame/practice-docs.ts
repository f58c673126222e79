/**
 * The page of the handbook that tells of a practice.
 */
import type { PracticeName } from '../../garden/practice-names.ts';
import { handbookPath } from '../addresses/addresses.ts';

/** Each practice's page in the docs. */
export const PRACTICE_DOCS: Readonly<Record<PracticeName, string>> = {
  'soil-readiness': 'soil-readiness',
  planting: 'planting',
  'cover-cropping': 'cover-cropping',
  composting: 'composting',
  topdressing: 'topdressing',
  'new-beds': 'new-beds',
  mulching: 'mulching',
  rotation: 'rotation',
  fertility: 'fertility',
  'frost-watch': 'frost-watch',
  'season-end': 'season-end',
};

/** The heading on that page under which amounts are told. */
const AMOUNTS_TOLD: Readonly<Record<PracticeName, string>> = {
  'soil-readiness': 'rules',
  planting: 'raising-and-emergence',
  'cover-cropping': 'sowing',
  composting: 'the-mix',
  topdressing: 'rules',
  'new-beds': 'rules',
  mulching: 'rules',
  rotation: 'rules',
  fertility: 'rules',
  'frost-watch': 'rules',
  'season-end': 'rules',
};

/** Kinds of tasks whose amounts are told under another heading. */
const AMOUNTS_OF_KIND: Readonly<Record<string, string>> = {
  'cut-cover': 'cutting',
  'cut-again': 'regrowth',
  'lay-sheet': 'regrowth',
  'turn-pile': 'turning',
  'cure-pile': 'ripening',
  'check-maturity': 'ripening',
};

/** Where it is read how the amounts of a task are worked out. */
export function amountsPath({ practice, kind }: { practice: PracticeName; kind: string }): string {
  return handbookPath(PRACTICE_DOCS[practice], AMOUNTS_OF_KIND[kind] ?? AMOUNTS_TOLD[practice]);
}

/** Where it is read. */
export function practiceDocsPath(practice: PracticeName): string {
  return handbookPath(PRACTICE_DOCS[practice]);
}
