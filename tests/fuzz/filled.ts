/**
 * What has to be filled in before a form as it is shown would be taken: without it nothing behind the first refusal is tried.
 */
import { inventedRecord } from '../cli/invented-record.ts';
import { hitherFile, NEW_FILE } from './two-gardens.ts';

/** A record long enough to plan by. */
const RECORD = inventedRecord('2015-01-01', '2026-12-31');

/** Twelve months of monthly means, in the units of the first garden. */
const MONTHS = Object.fromEntries(
  Array.from({ length: 12 }, (_, month) => [
    [`monthlyNormals.${month}.highC`, '50'],
    [`monthlyNormals.${month}.lowC`, '30'],
    [`monthlyNormals.${month}.precipMm`, '3'],
  ]).flat(),
) as Record<string, string>;

/** Own freeze dates: none stand in the form of a garden whose climate comes from elsewhere. */
const FREEZES = {
  'frostDates.lastSpring:month': '05',
  'frostDates.lastSpring:day': '06',
  'frostDates.firstAutumn:month': '10',
  'frostDates.firstAutumn:day': '04',
};

/** Fields by a part of the form's name; the first that fits. */
const FILLED: readonly (readonly [RegExp, Readonly<Record<string, string>>])[] = [
  [/weather\/record /, { file: RECORD, origin: 'Somebody’s notebook' }],
  [/weather\/days /, { rows: 'date,tmin_c,tmax_c\n2027-04-18,2,15', kind: 'observed' }],
  [/garden-file /, { text: JSON.stringify(hitherFile()) }],
  [/edit\/:list\/new bins/, { name: 'Third bay', volumeL: '20' }],
  [/edit\/:list\/new piles/, { bin: 'right', built: '2027-04-10', method: 'cold' }],
  [/edit\/:list\/new compost-bought/, { on: '2027-04-10', litres: '10' }],
  [/edit\/:list\/new gear/, { what: 'heavy-fabric', areaM2: '100' }],
  [/edit\/:list\/new seeds/, { plant: 'crop:beet', packed: '2026' }],
  [/edit\/:list\/new wishes/, { crop: 'beet', beds: '1', year: '2028' }],
  [
    /edit\/:list\/new plantings/,
    { bed: 'wall', crop: 'beet', how: 'sow', day: '2027-08-01', lastHarvest: '2027-10-01' },
  ],
  [/edit\/:list\/new beds-alike/, { count: '3', lengthM: '8', widthM: '4' }],
  [/edit\/:list\/new beds/, { name: 'Fifth', lengthM: '8', widthM: '4' }],
  [/edit\/:list\/new cover-stands/, { bed: 'wall', grows: 'cover:oats', sow: '2027-09-10' }],
  [/edit\/:list\/new mulches/, { bed: 'north', mulch: 'straw', from: '2027-11-01' }],
  [/edit\/:list\/new topdressed/, { bed: 'north', on: '2027-04-10', litres: '2' }],
  [/edit\/:list\/new fed/, { bed: 'north', on: '2027-04-10', fertiliser: 'blood_meal', grams: '9' }],
  [/edit\/:list\/new soil-tests/, { on: '2026-04-10', ph: '6.5' }],
  [/edit\/:list\/new soil-squeezes/, { on: '2027-04-11', soilTexture: 'loam', answer: 'smears' }],
  [/edit\/:list\/new diseases/, { bed: 'wall', crop: 'spinach', disease: 'clubroot', found: '2027-04-10' }],
  [/edit\/:list\/new away/, { from: '2027-08-01', to: '2027-08-10' }],
  [/edit\/:list\/new cold-nights/, { evening: '2027-04-19', lowC: '28', how: 'measured' }],
  [/edit\/:list\/:ref monthly-means/, MONTHS],
  [/edit\/:list\/:ref frost-dates/, FREEZES],
  [/beds\/:bedId\/season\/crop/, { crop: 'carrot' }],
  [/\/keys /, { label: 'second probe' }],
  [/\/feeds /, { label: 'Shed door' }],
  [/\/household \(|\/household {2}/, { name: 'Una' }],
  [/wishes {2}add /, { crop: 'beet', amount: '1', in: 'beds' }],
  [/edit\/:list\/:ref climate .*_row id\)/, { from: 'another', id: 'USW00014837' }],
  [/tasks\/:key\S* +looked /, { covered: 'a-third' }],
  [/grew-again/, { answer: 'cut' }],
  [/not-ready/, { failed: 'smells' }],
  [/report\/pile/, { temp: '130', pile: 'spring-pile' }],
  [/report\/cold-night/, { low: '30' }],
  [/set-up\/:draftId\/:step where/, { latitude: '43.1', longitude: '-89.4' }],
  [/set-up\/:draftId\/:step climate/, { from: 'nearest' }],
  [/bring-in /, { text: NEW_FILE }],
  [/POST \/reading /, { units: 'metric' }],
];

/** What is filled in on a form. */
export function filledFor(name: string): Readonly<Record<string, string>> {
  return FILLED.find(([pattern]) => pattern.test(name))?.[1] ?? {};
}
