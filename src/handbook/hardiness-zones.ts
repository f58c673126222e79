/**
 * The half hardiness zones of the United States map: the mean over 30 years of each winter's coldest night, in 5 °F
 * steps (agro:S49 and agro:S50 for the definition, agro:S52 for the list).
 */
import type { HardinessZone } from './shapes/ground.ts';

/** The 26 half zones, coldest first. */
export const hardinessZones: readonly HardinessZone[] = [
  { zone: '1a', fromF: -60, belowF: -55 },
  { zone: '1b', fromF: -55, belowF: -50 },
  { zone: '2a', fromF: -50, belowF: -45 },
  { zone: '2b', fromF: -45, belowF: -40 },
  { zone: '3a', fromF: -40, belowF: -35 },
  { zone: '3b', fromF: -35, belowF: -30 },
  { zone: '4a', fromF: -30, belowF: -25 },
  { zone: '4b', fromF: -25, belowF: -20 },
  { zone: '5a', fromF: -20, belowF: -15 },
  { zone: '5b', fromF: -15, belowF: -10 },
  { zone: '6a', fromF: -10, belowF: -5 },
  { zone: '6b', fromF: -5, belowF: 0 },
  { zone: '7a', fromF: 0, belowF: 5 },
  { zone: '7b', fromF: 5, belowF: 10 },
  { zone: '8a', fromF: 10, belowF: 15 },
  { zone: '8b', fromF: 15, belowF: 20 },
  { zone: '9a', fromF: 20, belowF: 25 },
  { zone: '9b', fromF: 25, belowF: 30 },
  { zone: '10a', fromF: 30, belowF: 35 },
  { zone: '10b', fromF: 35, belowF: 40 },
  { zone: '11a', fromF: 40, belowF: 45 },
  { zone: '11b', fromF: 45, belowF: 50 },
  { zone: '12a', fromF: 50, belowF: 55 },
  { zone: '12b', fromF: 55, belowF: 60 },
  { zone: '13a', fromF: 60, belowF: 65 },
  { zone: '13b', fromF: 65, belowF: 70 },
];
