/**
 * The invented household's three piles, each at another point of its life on the anchor day.
 */
import { addDays, type Day } from '../src/measures/days.ts';

/** Three bays of a cubic metre. */
export const demoBins = ['Left bay', 'Middle bay', 'Right bay'].map((name) => ({ name, volumeL: 1000 }));

const INGREDIENTS = [
  { material: 'leaves_dry_loose', litres: 420 },
  { material: 'straw_oat', litres: 140 },
  { material: 'kitchen_vegetable_scraps', litres: 190 },
  { material: 'coffee_grounds', litres: 90 },
];

/** A hot pile three and a half weeks old, a cold one nearing its year, and one that cures. */
export function demoPiles(anchor: Day) {
  const before = (days: number): Day => addDays(anchor, -days);
  return [
    {
      bin: 'Left bay',
      built: before(24),
      method: 'hot',
      ingredients: INGREDIENTS,
      readings: [
        { on: before(21), tempC: 51, moisture: 'damp', smell: 'earthy' },
        { on: before(18), tempC: 62, moisture: 'damp', smell: 'earthy' },
        { on: before(13), tempC: 57, moisture: 'dry', smell: 'earthy' },
        { on: before(10), tempC: 59, moisture: 'damp', smell: 'earthy' },
        { on: before(7), tempC: 44, moisture: 'damp', smell: 'earthy' },
        { on: before(2), tempC: 55, moisture: 'damp', smell: 'earthy' },
      ],
      turns: [before(17), before(11), before(5)],
    },
    {
      bin: 'Middle bay',
      built: before(352),
      method: 'cold',
      ingredients: [
        { material: 'leaves_dry_loose', litres: 500 },
        { material: 'garden_green_trimmings', litres: 240 },
      ],
      readings: [{ on: before(60), tempC: 14, moisture: 'damp', smell: 'earthy' }],
    },
    {
      bin: 'Right bay',
      built: before(131),
      method: 'hot',
      ingredients: INGREDIENTS,
      readings: [
        { on: before(124), tempC: 63, moisture: 'damp', smell: 'earthy' },
        { on: before(26), tempC: 34, moisture: 'damp', smell: 'earthy' },
      ],
      turns: [123, 116, 109, 102, 95, 81, 67, 32].map(before),
      curingSince: before(16),
      finishedLitres: 340,
    },
  ];
}
