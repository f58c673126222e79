/**
 * What each planting still to come has to be sown from, by when, and what the drawer holds of it.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Garden, Planting } from '../../garden/garden.ts';
import { boughtAs, type SeedLife, seedLifeOf } from '../../handbook/seed-life.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { PracticeInput } from '../practice.ts';

/** Days an order takes to be packed and posted in the busy time. House default. */
export const DELIVERY_DAYS = 21;
/** Days seed potatoes stand in the light before they are planted. Common practice: four weeks. */
export const CHIT_DAYS = 28;

/** A packet against the season its seed is wanted in. */
export interface Packet {
  packedYear: number;
  ageYears: number;
  life: SeedLife;
  /** `test` in the last year it is said to keep, `old` beyond it. */
  state: 'good' | 'test' | 'old';
}

/** What one crop of a season wants. */
export interface SeedNeed {
  crop: Vegetable;
  /** What to ask the seller for. */
  what: string;
  season: number;
  /** The first day it must be in the house. */
  day: Day;
  /** How it is used first. */
  use: 'indoors' | 'outdoors' | 'chitting';
  packet?: Packet;
}

/** Every crop of every season still to come, the earliest need of each, oldest first; garlic is left out. */
export function seedNeeds(input: PracticeInput): SeedNeed[] {
  const { garden, climate } = input;
  const needs = garden.plantings
    .filter(({ cropId, start }) => cropId !== 'garlic' && !start.happened)
    .map((planting) => needOf(garden, planting, seasonOf(climate.seasonTurn, planting.start.day)))
    .filter(({ day }) => addDays(day, -DELIVERY_DAYS) >= garden.startedOn)
    .sort((a, b) => order(a.day, b.day) || order(a.crop.id, b.crop.id));
  const first = new Map<string, SeedNeed>();
  for (const need of needs) {
    const key = `${need.season} ${need.crop.id}`;
    if (!first.has(key)) first.set(key, need);
  }
  return [...first.values()];
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function needOf(garden: Garden, { cropId, start }: Planting, season: number): SeedNeed {
  const crop = vegetableById(cropId);
  const indoorWeeks = start.how === 'set-out' && boughtAs[cropId] === undefined ? crop.indoorWeeks?.high : undefined;
  const packet = packetOf(garden, cropId, season);
  return {
    crop,
    what: boughtAs[cropId] ?? crop.name.toLowerCase(),
    season,
    ...(cropId === 'potato'
      ? { day: addDays(start.day, -CHIT_DAYS), use: 'chitting' as const }
      : indoorWeeks === undefined
        ? { day: start.day, use: 'outdoors' as const }
        : { day: addDays(start.day, -7 * indoorWeeks), use: 'indoors' as const }),
    ...(packet ? { packet } : {}),
  };
}

/** The newest packet of a crop, by its age in the season it would be sown in. */
function packetOf({ seeds }: Garden, cropId: string, season: number): Packet | undefined {
  const life = seedLifeOf(cropId);
  const years = seeds.flatMap(({ plant, packedYear }) =>
    plant.kind === 'crop' && plant.id === cropId ? [packedYear] : [],
  );
  if (life === undefined || years.length === 0) return undefined;
  const packedYear = Math.max(...years);
  const ageYears = Math.max(0, season - packedYear);
  const state = ageYears < life.years ? 'good' : ageYears === life.years ? 'test' : 'old';
  return { packedYear, ageYears, life, state };
}

/** The needs of a season that nothing in the drawer can be counted on for. */
export function wantedOf(needs: readonly SeedNeed[]): SeedNeed[] {
  return needs.filter(({ packet }) => packet === undefined || packet.state === 'old');
}

/** The needs of a season whose packet is in its last year. */
export function doubtfulOf(needs: readonly SeedNeed[]): SeedNeed[] {
  return needs.filter(({ packet }) => packet?.state === 'test');
}
