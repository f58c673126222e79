/**
 * What speaks against a cover in a gap whatever the season: a disease found in the bed, and the crops on either side.
 */
import type { Day } from '../../../measures/days.ts';
import type { CropSpan } from '../../bed-timeline.ts';
import type { CoverPart } from '../../covers.ts';
import type { Reason } from '../../draft.ts';
import { coverLockOut } from '../../lock-out.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import type { SowingHalf } from '../sow-window.ts';

/** A clash, and whether a rule of the trade forbids the cover outright. */
export interface Clash {
  reason: Reason;
  forbids: boolean;
}

/** A cover sown in a gap at a time of the year. */
interface SownThere {
  coverId: string;
  parts: readonly CoverPart[];
  half: SowingHalf;
  latest: Day;
}

/** Every clash of a cover with the gap it would be sown in. */
export function clashesOf({ garden }: PracticeInput, span: OpenSpan, sown: SownThere): Clash[] {
  const beside = [span.before, span.next].flatMap((crop) => crop ?? []);
  return [
    ...diseased(garden, span, sown),
    ...sown.parts.flatMap((part) => beside.flatMap((crop) => kinship(part, crop))),
    ...vineAfterMustard(span, sown),
  ];
}

function diseased(garden: PracticeInput['garden'], span: OpenSpan, { coverId, latest }: SownThere): Clash[] {
  const lock = coverLockOut(garden, span.bedId, coverId, latest);
  if (lock === undefined) return [];
  const { finding, until, source } = lock;
  const saw = { disease: finding.name, found: finding.found.on, ...(until === undefined ? {} : { until }) };
  return [{ reason: { rule: 'cover-fit.disease', saw, source }, forbids: true }];
}

/** Cabbage kin share clubroot, flea beetle and moths (cover:S4e, cover:S19); legumes share root rots. */
function kinship({ cover }: CoverPart, { crop }: CropSpan): Clash[] {
  if (cover.rotationGroup !== crop.rotationGroup) return [];
  const saw = { cover: cover.name.toLowerCase(), crop: crop.name.toLowerCase() };
  if (cover.rotationGroup === 'cabbage')
    return [{ reason: { rule: 'cover-fit.cabbage-kin', saw, source: 'cover:S4e' }, forbids: true }];
  if (cover.rotationGroup === 'legume')
    return [{ reason: { rule: 'cover-fit.legume-kin', saw, source: 'house default' }, forbids: true }];
  return [];
}

/** Cucurbits sprout poorly straight after mustard that grew in spring (cover:S4h). */
function vineAfterMustard({ next }: OpenSpan, { parts, half }: SownThere): Clash[] {
  const mustard = parts.find(({ cover }) => cover.id === 'mustard');
  if (mustard === undefined || half !== 'spring' || next?.crop.rotationGroup !== 'cucurbit') return [];
  const saw = { cover: mustard.cover.name.toLowerCase(), crop: next.crop.name.toLowerCase() };
  return [{ reason: { rule: 'cover-fit.vine-after-mustard', saw, source: 'cover:S4h' }, forbids: true }];
}
