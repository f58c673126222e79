/**
 * What follows from the place alone, beside the first steps.
 */
import { daylight } from '../../climate/daylight.ts';
import type { DraftPlace } from '../../garden/set-up-draft.ts';
import { zoneAt } from '../../garden/time-zone.ts';
import type { Station } from '../../handbook/stations.ts';
import { US_STATES } from '../../handbook/us-states.ts';
import { type Day, dayParts } from '../../measures/days.ts';
import { handbookPath } from '../addresses/addresses.ts';
import { climateChoices, FAR_KM } from '../climate/climate-choices.ts';
import { optionDetail } from '../climate/climate-words.ts';
import { Whence } from '../frame/why.tsx';
import type { StepRoom } from './step.ts';

/** The place, its hour and its light. */
export const PlaceAside = ({ room }: { room: StepRoom }) => {
  const { place } = room.draft;
  if (place === undefined)
    return <p>Frost, day length, the hour and which half of the year is winter all come from the place.</p>;
  const { longest, shortest } = lightAt(place, room.outlook.today);
  return (
    <dl class="where">
      <dt>Place</dt>
      <dd>{placeWords(place)}</dd>
      {place.foundBy !== undefined && (
        <>
          <dt>Taken from</dt>
          <dd>{place.foundBy}</dd>
        </>
      )}
      <dt>Winter</dt>
      <dd>{place.latitude < 0 ? 'in the middle of the year' : 'over the New Year'}</dd>
      <dt>Time zone</dt>
      <dd>{zoneAt(place) ?? 'not known'}</dd>
      <dt>Longest day</dt>
      <dd>{hoursOfLight(longest)}</dd>
      <dt>Shortest day</dt>
      <dd>{hoursOfLight(shortest)}</dd>
    </dl>
  );
};

/** The nearest stations with their distance and the middle dates of their freezes; nothing before there is a place. */
export const NearFreezes = ({ room }: { room: StepRoom }) => {
  const { place } = room.draft;
  if (place === undefined) return null;
  const { options } = climateChoices(room.stations, place, room.outlook.today);
  const near = options.flatMap((option) => {
    const { near: each } = option;
    return each === undefined || each.distanceKm > FAR_KM ? [] : [{ option, station: each.station }];
  });
  if (near.length === 0) return null;
  return (
    <>
      <h3>Frost at the nearest stations</h3>
      <ul class="plain">
        {near.map(({ option, station }) => (
          <li>
            {stationWords(station)}
            <span class="under">{optionDetail(option, room.units)}</span>
          </li>
        ))}
      </ul>
      <Whence to={handbookPath('climate', 'freezes')}>How freezes are counted</Whence>
    </>
  );
};

/** Days of the solstices, by month and day: give or take one. */
const SOLSTICES = ['06-21', '12-21'] as const;

function lightAt({ latitude, longitude }: DraftPlace, today: Day): { longest: number; shortest: number } {
  const { year } = dayParts(today);
  const hours = SOLSTICES.map((on) => daylight(latitude, longitude, `${year}-${on}`).hours);
  return { longest: Math.max(...hours), shortest: Math.min(...hours) };
}

function hoursOfLight(hours: number): string {
  const minutes = Math.round(hours * 60);
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min of light`;
}

/** A station by its name and its state's. */
export function stationWords({ name, state }: Station): string {
  return `${name}, ${US_STATES[state] ?? state}`;
}

/** "43.07° N, 89.40° W". */
export function placeWords({ latitude, longitude }: Pick<DraftPlace, 'latitude' | 'longitude'>): string {
  const half = (value: number, positive: string, negative: string) =>
    `${Math.abs(value).toFixed(2)}° ${value < 0 ? negative : positive}`;
  return `${half(latitude, 'N', 'S')}, ${half(longitude, 'E', 'W')}`;
}
