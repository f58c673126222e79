import { describe, expect, it } from 'vitest';
import type { Effect } from '../../src/garden/effects.ts';
import { factSchema } from '../../src/garden/facts.ts';
import { done, exampleFile, imported } from './example-garden.ts';

const effects: readonly Effect[] = [
  { makes: 'stand-sown', standId: 's', bedId: 'b', coverId: 'oats' },
  { makes: 'stand-resown', standId: 's', coverId: 'oats' },
  { makes: 'seed-sown', standId: 's', coverId: 'oats', grams: 320 },
  { makes: 'seed-bought', coverId: 'oats', grams: 500 },
  { makes: 'stand-cut', standId: 's' },
  { makes: 'regrowth-checked', standId: 's' },
  { makes: 'regrowth-worked', standId: 's', what: 'sheet-laid' },
  { makes: 'stand-dead', standId: 's' },
  { makes: 'bed-cleared', plantingId: 'p' },
  { makes: 'pile-built', pileId: 'p' },
  { makes: 'pile-turned', pileId: 'p' },
  { makes: 'pile-curing', pileId: 'p' },
  { makes: 'pile-finished', pileId: 'p' },
  { makes: 'bed-topdressed', bedId: 'b', litres: 37 },
  { makes: 'bed-topdressed', bedId: 'b', litres: 37, pileIds: ['p', 'q'] },
  { makes: 'compost-bought', litres: 400 },
  { makes: 'compost-tested', boughtOn: '2027-06-01' },
  { makes: 'planting-started', plantingId: 'p' },
  { makes: 'soil-sampled' },
  { makes: 'soil-sampled', bedId: 'b' },
  { makes: 'soil-squeezed', soilTexture: 'loam', answer: 'smears' },
];

describe('a fact', () => {
  it.each([
    imported(exampleFile()),
    done('2027-06-01', 'k', ...effects),
    { kind: 'tasks-skipped', on: '2027-06-01', tasks: [{ key: 'k', title: 'T' }] },
    { kind: 'day-pinned', key: 'k', title: 'T', day: '2027-06-01' },
    { kind: 'put-off', on: '2027-06-01', tasks: [{ key: 'k', title: 'T' }] },
    { kind: 'day-unpinned', key: 'k', title: 'T' },
    { kind: 'pile-read', pileId: 'p', on: '2027-06-01', tempC: 55, moisture: 'damp', smell: 'earthy' },
    { kind: 'cold-night-told', evening: '2027-10-02', lowC: -1.5, how: 'expected' },
    { kind: 'away-told', from: '2027-07-10', to: '2027-07-17' },
    { kind: 'soil-squeezed', on: '2027-04-10', soilTexture: 'silt_loam', answer: 'crumbles' },
    { kind: 'disease-found', bedId: 'b', cropId: 'cabbage', disease: 'clubroot', on: '2027-07-10' },
    { kind: 'stand-looked', standId: 's', on: '2027-09-18', covered: 'a-third', weedy: true },
    { kind: 'regrowth-seen', standId: 's', bedId: 'b', coverId: 'oats', on: '2027-05-20', answer: 'sheet' },
    { kind: 'entry-undone', entry: 3 },
  ])('of kind $kind comes back from storage as it went in', (fact) => {
    expect(factSchema.parse(JSON.parse(JSON.stringify(fact)))).toEqual(fact);
  });

  it.each([
    { kind: 'rained', on: '2027-06-01' },
    { kind: 'tasks-skipped', on: '2027-02-29', tasks: [{ key: 'k', title: 'T' }] },
    { kind: 'entry-undone', entry: 0 },
    { kind: 'cold-night-told', evening: '2027-10-02', lowC: -99, how: 'expected' },
    { kind: 'disease-found', bedId: 'b', cropId: 'cabbage', disease: ' ', on: '2027-07-10' },
    { kind: 'pile-read', pileId: 'p', on: '2027-06-01', moisture: 'soggy' },
    { kind: 'stand-looked', standId: 's', on: '2027-09-18', covered: 'half', weedy: true },
    done('2027-06-01', 'k', { makes: 'compost-bought', litres: -1 }),
  ])('is refused when it is none: %j', (fact) => {
    expect(factSchema.safeParse(fact).success).toBe(false);
  });
});
