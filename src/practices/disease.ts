/**
 * Diseases found in beds, as the practices see them: what was found, and on which planting.
 */

import type { Climate } from '../climate/climate.ts';
import { seasonOf } from '../climate/season.ts';
import type { Bed, DiseaseFound, Garden, Planting } from '../garden/garden.ts';
import { inBed } from '../garden/in-bed.ts';
import { diseaseNamed } from '../handbook/disease-names.ts';
import type { Disease } from '../handbook/diseases.ts';
import type { Vegetable } from '../handbook/shapes/vegetable.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { type Day, latestOf } from '../measures/days.ts';
import { isPermanent } from './bed-timeline.ts';

/** A disease found, with what the handbook knows of it. */
export interface Finding {
  found: DiseaseFound;
  crop: Vegetable;
  /** Absent where the handbook knows no disease of that name on the crop. */
  disease?: Disease;
  /** How it is called in a sentence: the handbook's name, else the gardener's own word. */
  name: string;
}

/** What was found on one planting of a bed; without a planting, on one crop of it in one season. */
export interface SickPlanting {
  /** What its tasks are named by: "planting:p-7", or "bed:north/cabbage/2027". */
  unit: string;
  bed: Bed;
  crop: Vegetable;
  planting?: Planting;
  /** Oldest first, at least one. */
  findings: readonly [Finding, ...Finding[]];
  /** The newest day something was found. */
  on: Day;
}

/** A disease as it was found. */
export function findingOf(found: DiseaseFound): Finding {
  const crop = vegetableById(found.cropId);
  const disease = diseaseNamed(found.disease, crop);
  return { found, crop, ...(disease ? { disease } : {}), name: disease?.name ?? found.disease };
}

/** Every planting something was found on, in the order of their names. */
export function sickPlantings(garden: Garden, climate: Climate): SickPlanting[] {
  const units = new Map<string, SickPlanting>();
  for (const bed of garden.beds) {
    for (const finding of findingsIn(garden, bed.id)) {
      const { found } = finding;
      const planting = plantingWith(garden, found);
      const season = seasonOf(climate.seasonTurn, found.on);
      const unit = unitOf(finding, planting, season);
      const before = units.get(unit);
      units.set(unit, {
        unit,
        bed,
        crop: finding.crop,
        ...(planting ? { planting } : {}),
        findings: before ? [...before.findings, finding] : [finding],
        on: latestOf(found.on, before?.on ?? found.on),
      });
    }
  }
  return [...units.values()].sort((a, b) => order(a.unit, b.unit));
}

/** What was found in a bed, oldest first. */
export function findingsIn({ diseases }: Garden, bedId: string): Finding[] {
  return [...inBed(diseases, bedId)]
    .sort((a, b) => order(a.on, b.on) || order(a.disease, b.disease) || order(a.cropId, b.cropId))
    .map(findingOf);
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A lasting crop is found sick in one season after another; any other only in its own. */
function unitOf({ crop, found }: Finding, planting: Planting | undefined, season: number): string {
  if (planting === undefined) return `bed:${found.bedId}/${crop.id}/${season}`;
  return isPermanent(crop) ? `planting:${planting.id}/${season}` : `planting:${planting.id}`;
}

/** The newest planting of the crop that was in the bed by the day, told to be in or not: somebody saw it there. */
function plantingWith({ plantings }: Garden, { bedId, cropId, on }: DiseaseFound): Planting | undefined {
  return inBed(plantings, bedId)
    .filter((row) => row.cropId === cropId && row.start.day <= on)
    .sort((a, b) => order(a.start.day, b.start.day) || order(a.id, b.id))
    .at(-1);
}

/** What was found on a planting, each thing once: "clubroot and black rot". */
export function namesOf(findings: readonly Finding[]): string {
  return [...new Set(findings.map(({ name }) => name))].join(' and ');
}

/** What catches it, in words: of an unknown disease, the crop and its kin. */
export function hostsOf({ disease, crop }: Finding): string {
  const name = crop.name.toLowerCase();
  return disease?.hosts ?? (crop.rotationGroup === 'perennial' ? name : `${name} and its kin`);
}
