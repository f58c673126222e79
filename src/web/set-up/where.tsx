/**
 * The first step: where the garden lies.
 */

import { findStations, nearSpellings, type StationAsk } from '../../climate/station-search.ts';
import { nearestStations } from '../../climate/stations.ts';
import type { DraftAbout, DraftPlace, SetUpDraft } from '../../garden/set-up-draft.ts';
import { zoneAt } from '../../garden/time-zone.ts';
import { US_STATES } from '../../handbook/us-states.ts';
import { readPlace } from '../../measures/typed-place.ts';
import { setUpPath } from '../addresses/addresses.ts';
import { FAR_KM, unitsAt } from '../climate/climate-choices.ts';
import { distanceWords, heightWords } from '../climate/climate-words.ts';
import type { FieldProblem } from '../fields/edit-form.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';
import { Fields, OnAndBack, StepForm } from './parts.tsx';
import { NearFreezes, PlaceAside, placeWords, stationWords } from './place-aside.tsx';
import {
  type AskedFields,
  fieldProblem,
  readFields,
  type Step,
  type StepRead,
  type StepRoom,
  type StepShown,
} from './step.ts';

/** Stations listed at once: a thumb's few swipes. House default. */
const LISTED = 20;

const LABELS = { latitude: 'Latitude', longitude: 'Longitude' } as const;

export const where: Step = {
  name: 'where',
  short: 'Where',
  title: 'Where is the garden?',
  content: (room, shown) => (
    <>
      <Search room={room} shown={shown} />
      <section>
        <h2>Or tell its place yourself</h2>
        <p class="small">
          A map on a phone or computer shows both numbers where you press on the garden for a while. Any way of writing
          them will do, also the pair in the first field.
        </p>
        <StepForm room={room} step="where">
          <Fields room={room} shown={shown} asked={asked(room)} />
          <OnAndBack step="where" />
        </StepForm>
      </section>
    </>
  ),
  aside: (room) => (
    <>
      <PlaceAside room={room} />
      <NearFreezes room={room} />
    </>
  ),
  read: (form, room) => (form.text('station') === '' ? typedPlace(form, room) : chosenStation(form, room)),
};

function asked({ draft: { place }, units }: StepRoom): AskedFields {
  return {
    of: 'garden',
    row: place,
    fields: [
      { name: 'latitude', label: LABELS.latitude, as: 'text', required: false, hint: 'Such as 43.07, or 43°4′ N.' },
      { name: 'longitude', label: LABELS.longitude, as: 'text', required: false, hint: 'Such as -89.40, or 89°24′ W.' },
      {
        name: 'elevationM',
        label: 'Height above the sea',
        as: 'height',
        example: 270,
        hint:
          `In ${units === 'us' ? 'feet' : 'metres'} where no unit is written behind it. If you know it: with it the dates of ` +
          'stations higher or lower than the garden are put right.',
      },
    ],
  };
}

function typedPlace(form: Form, room: StepRoom): StepRead {
  const { read, problems } = readFields(form, asked(room), room.units);
  const found = readPlace(form.text('latitude'), form.text('longitude'));
  const wrong = 'wrong' in found ? found.wrong.map((which) => wrongPlace(form, which)) : [];
  if ('wrong' in found || problems.length > 0) return { problems: [...wrong, ...problems] };
  const sign = lostSign(form, found, room);
  if (sign !== undefined) return { problems: [sign] };
  const { elevationM } = read;
  const isSame = found.latitude === room.draft.place?.latitude && found.longitude === room.draft.place.longitude;
  const foundBy = isSame ? room.draft.place?.foundBy : undefined;
  const place: DraftPlace = {
    ...found,
    ...(typeof elevationM === 'number' ? { elevationM } : {}),
    ...(foundBy === undefined ? {} : { foundBy }),
  };
  return { change: (draft) => withPlace(draft, place, room), leads: 'on' };
}

/** Farther than this from every station a place may have lost its minus, km. House default. */
const LOST_KM = 1000;

/** A longitude without a letter that lies far from every station, while its mirror lies near one, is asked about. */
function lostSign(
  form: Form,
  place: Pick<DraftPlace, 'latitude' | 'longitude'>,
  room: StepRoom,
): FieldProblem | undefined {
  const { stations, units } = room;
  const mirrored = { latitude: place.latitude, longitude: -place.longitude };
  const [[here], [there]] = [nearestStations(stations, place, 1), nearestStations(stations, mirrored, 1)];
  if (here === undefined || there === undefined) return undefined;
  if (here.distanceKm <= LOST_KM || there.distanceKm > FAR_KM) return undefined;
  if (/[EW]/i.test(`${form.text('latitude')}${form.text('longitude')}`)) return undefined;
  const [side, other] = place.longitude < 0 ? ['W', 'E'] : ['E', 'W'];
  const size = Math.abs(place.longitude);
  const far = distanceWords(there.distanceKm, units);
  const what = `Is the sign right? ${placeWords(place)} is far from every station; ${placeWords(mirrored)} is ${far} from ${stationWords(there.station)}.`;
  return fieldProblem(
    'longitude',
    LABELS.longitude,
    what,
    `Write ${size} ${other} or ${size} ${side}, as it is meant.`,
  );
}

function wrongPlace(form: Form, which: 'latitude' | 'longitude'): FieldProblem {
  const text = form.text(which);
  const shown = text.slice(0, SHOWN_CHARACTERS);
  const what = text === '' ? 'It is empty.' : `"${shown}" is not a ${which}.`;
  const mend =
    which === 'latitude'
      ? 'Give degrees north from -90 to 90, such as 43.07 or 43°4′ N; south is negative, or has an S.'
      : 'Give degrees east from -180 to 180, such as -89.40 or 89°24′ W; west is negative, or has a W.';
  return fieldProblem(which, LABELS[which], what, mend);
}

function chosenStation(form: Form, room: StepRoom): StepRead {
  const id = form.text('station');
  const station = room.stations.find((each) => each.id === id);
  if (station === undefined) {
    const what = `"${id.slice(0, SHOWN_CHARACTERS)}" is not a station of the table.`;
    return {
      problems: [fieldProblem('words', 'The station', what, 'Look for it once more and choose from the list.')],
    };
  }
  const { latitude, longitude, elevationM } = station;
  const place = { latitude, longitude, elevationM, foundBy: stationWords(station) };
  return { change: (draft) => withPlace(draft, place, room), leads: 'on' };
}

/** The draft somewhere else. What was worked out from the place it had before is worked out and asked anew. */
function withPlace(draft: SetUpDraft, place: DraftPlace, { stations }: StepRoom): SetUpDraft {
  const { place: before, about, climate: _, passed, ...rest } = draft;
  if (before?.latitude === place.latitude && before.longitude === place.longitude) return { ...draft, place };
  const moved = about && before && { ...about, ...usualThere(about, [before, place], stations) };
  const told = moved ?? about;
  return {
    ...rest,
    ...(told === undefined ? {} : { about: told }),
    place,
    passed: passed.filter((step) => step !== 'climate' && step !== 'garden'),
  };
}

/** Zone and units as they usually are at the second place, as far as they were so at the first. */
function usualThere(
  { timeZone, units }: DraftAbout,
  [before, place]: readonly [DraftPlace, DraftPlace],
  stations: StepRoom['stations'],
): Pick<DraftAbout, 'timeZone' | 'units'> {
  return {
    timeZone: timeZone === zoneAt(before) ? (zoneAt(place) ?? timeZone) : timeZone,
    units: units === unitsAt(stations, before) ? unitsAt(stations, place) : units,
  };
}

const Search = ({ room, shown: { query } }: { room: StepRoom; shown: StepShown }) => {
  const [words, state] = [query.text('words'), query.text('state')];
  const isAsked = words !== '' || state !== '';
  const isEmpty = !isAsked && query.names().includes('words');
  const found = findStations(room.stations, { words, state }, LISTED);
  return (
    <section>
      <h2>In the United States: look for a weather station near it</h2>
      <form method="get" action={setUpPath(room.draftId, 'where')} class="report-form">
        <label>
          Town or airport <input type="text" name="words" value={words} maxlength={80} />
        </label>
        <label>
          State{' '}
          <select name="state">
            <option value="">any</option>
            {Object.entries(US_STATES).map(([code, name]) => (
              <option value={code} selected={code === state}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button type="submit">Look for it</button>
      </form>
      {isEmpty && <p role="status">Nothing was asked for: type a word of a name, or choose a state.</p>}
      {isAsked && found.stations.length === 0 && <NearSpellings room={room} ask={{ words, state }} />}
      {isAsked && found.stations.length > 0 && (
        <StepForm room={room} step="where">
          <h3>{foundWords(found.stations.length, found.more)}</h3>
          <ul class="stations-found">
            {found.stations.map((station) => (
              <li>
                <button type="submit" name="station" value={station.id}>
                  {stationWords(station)}
                </button>{' '}
                <span class="small">{heightWords(station.elevationM, room.units)} above the sea</span>
              </li>
            ))}
          </ul>
        </StepForm>
      )}
    </section>
  );
};

/** Where no station is called so: those that are called nearly so, and what else to try. */
const NearSpellings = ({ room, ask }: { room: StepRoom; ask: StationAsk }) => {
  const near = nearSpellings(room.stations, ask);
  const path = (words: string) =>
    `${setUpPath(room.draftId, 'where')}?${new URLSearchParams({ words, state: ask.state }).toString()}`;
  return (
    <div role="status">
      <h3>No station is called so.</h3>
      {near.length > 0 && (
        <p>
          Did you mean{' '}
          {near.map((name, at) => (
            <>
              {at > 0 && ' or '}
              <a href={path(name)}>{name}</a>
            </>
          ))}
          ?
        </p>
      )}
      <p>Not every town has one. Try the next larger town, or choose the state alone and take the nearest.</p>
    </div>
  );
};

function foundWords(count: number, more: number): string {
  if (more > 0) return `The first ${count} of ${count + more}: add a word, or choose the state`;
  return count === 1
    ? 'One station: press it to take its place'
    : `${count} stations: press the one nearest to the garden`;
}
