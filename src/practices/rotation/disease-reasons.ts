/**
 * What was found in a bed, and what it keeps out of it, as reasons.
 */
import { type Finding, hostsOf, type SickPlanting } from '../disease.ts';
import type { Reason } from '../draft.ts';
import { type LockOut, ownLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';

/** Why remains are taken out, and how long their kin stay away: for each finding. */
export function sickReasons({ garden }: PracticeInput, { findings, on }: SickPlanting): Reason[] {
  return [
    ...findings.map(foundReason),
    { rule: 'disease.no-compost', saw: { on }, source: 'compost:S19' },
    ...findings.flatMap((finding) => lockReasons(ownLockOut(garden, finding))),
  ];
}

function foundReason({ name, crop, found: { on } }: Finding): Reason {
  return { rule: 'disease.found', saw: { disease: name, crop: cropName(crop), on }, source: "the garden's own plan" };
}

/** How long a finding keeps its hosts out, and what is not known of it. */
export function lockReasons(lock: LockOut): Reason[] {
  const { finding, until, years, since, source } = lock;
  const { disease, crop, name } = finding;
  const saw = { disease: name, hosts: hostsOf(finding), since };
  const kept: Reason =
    until === undefined || years === 'for good'
      ? { rule: 'disease.closed', saw, source }
      : { rule: 'disease.locked-out', saw: { ...saw, years, until }, limit: until, source };
  if (disease === undefined) {
    return [{ rule: 'disease.not-in-handbook', saw: { disease: name, crop: cropName(crop) }, source }, kept];
  }
  return [kept, ...lingerReasons(finding)];
}

function lingerReasons({ disease }: Finding): Reason[] {
  if (disease?.lingerYears === undefined) return [];
  const source = disease.readIn?.lingerYears ?? disease.sources[0] ?? 'house default';
  return [{ rule: 'disease.lingers', saw: { disease: disease.name, years: disease.lingerYears }, source }];
}

function cropName({ name }: { name: string }): string {
  return name.toLowerCase();
}
