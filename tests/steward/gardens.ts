/**
 * Small invented gardens, one in the north and one in the south, with something for every practice to do.
 */
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';

/** What a test may say otherwise: whole sections of the file. */
export type Sections = Readonly<Record<string, unknown>>;

/** The day the northern garden is first brought in: covers growing, a pile working, beds waiting. */
export const NORTH_TODAY = '2027-04-20';

/** The day the southern garden is first brought in: the same time of its year. */
export const SOUTH_TODAY = '2027-10-20';

/** A garden in the north of the United States. */
export function northernFile(sections: Sections = {}): GardenFile {
  return checkGardenFile({
    garden: {
      id: 'hollow-lane',
      name: 'Hollow Lane',
      latitude: 44.5,
      longitude: -88.1,
      elevationM: 210,
      timeZone: 'America/Chicago',
      units: 'us',
      workDays: ['wed', 'sat'],
    },
    climate: { frostDates: { lastSpring: '05-10', firstAutumn: '09-28' } },
    beds: ['north', 'middle', 'south', 'wall'].map((id) => ({ id, name: `${id} bed`, lengthM: 3, widthM: 1.2 })),
    plantings: [
      { id: 'beans', bed: 'north', crop: 'snap-bean', sow: '2027-06-01' },
      { id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-05-29' },
      { id: 'carrots', bed: 'south', crop: 'carrot', sow: '2027-06-15', lastHarvest: '2027-09-20' },
      { id: 'spinach', bed: 'wall', crop: 'spinach', sow: '2026-09-01', lastHarvest: '2027-04-24' },
    ],
    coverStands: [
      { id: 'rye', bed: 'north', cover: 'cereal_rye', sow: '2026-09-20' },
      { id: 'vetch', bed: 'middle', mix: 'rye-vetch', sow: '2026-09-10' },
      { id: 'oats', bed: 'wall', cover: 'oats', sow: '2027-08-20' },
    ],
    bins: [
      { id: 'left', name: 'Left bay', volumeL: 760 },
      { id: 'right', name: 'Right bay', volumeL: 760 },
    ],
    piles: [pile('spring-pile', 'left', '2027-04-06', ['2027-04-13']), pile('summer-pile', 'right', '2027-07-10', [])],
    topdressing: { depthMm: 13, season: 'autumn' },
    ...sections,
  });
}

/** A garden in the south of New Zealand, half a year away from the northern one. */
export function southernFile(sections: Sections = {}): GardenFile {
  return checkGardenFile({
    garden: {
      id: 'far-terrace',
      name: 'Far Terrace',
      latitude: -45.9,
      longitude: 170.3,
      timeZone: 'Pacific/Auckland',
      workDays: ['wed', 'sat'],
    },
    climate: { frostDates: { lastSpring: '11-01', firstAutumn: '04-10' } },
    beds: ['upper', 'lower'].map((id) => ({ id, name: `${id} bed`, lengthM: 3, widthM: 1.2 })),
    plantings: [
      { id: 'beans', bed: 'upper', crop: 'snap-bean', sow: '2027-11-25' },
      { id: 'leeks', bed: 'lower', crop: 'leek', setOut: '2027-11-20', lastHarvest: '2028-02-29' },
    ],
    coverStands: [
      { id: 'rye', bed: 'upper', cover: 'cereal_rye', sow: '2027-03-25' },
      { id: 'oats', bed: 'lower', cover: 'oats', sow: '2028-02-29' },
    ],
    bins: [{ id: 'bay', name: 'The bay', volumeL: 760 }],
    piles: [pile('spring-pile', 'bay', '2027-10-06', ['2027-10-13'])],
    topdressing: { depthMm: 13, season: 'spring' },
    ...sections,
  });
}

function pile(id: string, bin: string, built: string, turns: readonly string[]) {
  const ingredients = [
    { material: 'leaves_dry_loose', litres: 400 },
    { material: 'grass_clippings_fresh_loose', litres: 200 },
  ];
  return { id, bin, built, method: 'hot', ingredients, turns };
}
