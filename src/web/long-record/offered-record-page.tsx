/**
 * What a long record holds and would change, before it is put behind the garden.
 */
import type { Climate, FreezeEvent, FreezeLimitF } from '../../climate/climate.ts';
import { freezeOdds } from '../../climate/freeze.ts';
import { usualOf } from '../../climate/logged.ts';
import type { Odds } from '../../climate/odds.ts';
import { recordDays } from '../../climate/record-days.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { type Day, daysBetween } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { celsius, type UnitSystem } from '../../measures/units.ts';
import type { RecordPreview } from '../../steward/doings/record-doings.ts';
import { movesBetween } from '../../steward/ledger/moves-between.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { longRecordCsvPath, longRecordPath, offeredRecordPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { movesInWords } from '../changes/kept.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { counted, FileNotes } from '../weather/file-notes.tsx';
import type { OfferedRecord } from './offered-record.ts';
import { RecordHolds } from './record-words.tsx';

interface OfferedProps {
  garden: Garden;
  offer: OfferedRecord;
  /** What the offer goes by in its address. */
  id: string;
  /** The record there is. */
  record: WeatherRecord | undefined;
  /** Absent where it cannot stand behind the garden. */
  preview: RecordPreview | undefined;
  problems: readonly Problem[];
}

/** The page that shows a record and asks. */
export function offeredRecordPage({ garden, offer, id, record, preview, problems }: OfferedProps) {
  const { units } = garden.place;
  const { change, file } = offer;
  const held = recordDays(change.record.days);
  return page(
    { title: 'A record and what it would change', garden, here: 'weather' },
    <article class="weather report undo">
      <h1>What this record would change</h1>
      <p class="about">
        {change.record.origin}
        <span class="under">Nothing is kept yet.</span>
      </p>
      <Problems problems={problems} heading="It cannot stand behind this garden" />
      <h2>What it holds</h2>
      {held && <RecordHolds held={held} units={units} />}
      {file && <FileNotes file={file} />}
      {preview && (
        <>
          <FrostDates climates={preview.climates} today={preview.before.today} units={units} />
          <h2>What it does to the plan</h2>
          <p>{movesInWords(movesBetween(preview.before, preview.after), units)}</p>
          <WhatGivesWay garden={garden} offer={offer} record={record} climate={preview.climates.before} />
          <form method="post" action={offeredRecordPath(garden.id, id)}>
            <button type="submit">Put it behind the garden</button>
          </form>
          <details>
            <summary>Every task that it moves, one by one</summary>
            <PreviewSections plans={preview} garden={garden} />
          </details>
        </>
      )}
      <p>
        <a href={longRecordPath(garden.id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

const EVENTS: readonly { event: FreezeEvent; words: string }[] = [
  { event: 'last-spring', words: 'Last freeze of spring' },
  { event: 'first-autumn', words: 'First freeze of autumn' },
];

const LIMITS: readonly FreezeLimitF[] = [32, 28, 24];

interface FrostProps {
  climates: RecordPreview['climates'];
  today: Day;
  units: UnitSystem;
}

const FrostDates = ({ climates, today, units }: FrostProps) => (
  <>
    <h2>Frost dates, now and with it</h2>
    <table class="figures frost-dates">
      <caption>Each: the day in one, in five and in nine years of ten</caption>
      <thead>
        <tr>
          <th scope="col">At or below</th>
          <th scope="col">Now</th>
          <th scope="col">With it</th>
        </tr>
      </thead>
      {EVENTS.map(({ event, words }) => (
        <tbody>
          <tr>
            <th scope="rowgroup" colspan={3}>
              {words}
            </th>
          </tr>
          {LIMITS.map((limitF) => (
            <tr>
              <th scope="row">{units === 'us' ? `${limitF} °F` : `${tenth(celsius(limitF))} °C`}</th>
              <td>{datesIn(climates.before, { event, limitF, today }, units)}</td>
              <td>{datesIn(climates.after, { event, limitF, today }, units)}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
    {EVENTS.flatMap(({ event, words }) => {
      const far = farOff(climates, { event, limitF: 32, today });
      return far === undefined ? [] : [<p>{farWords(words, far)}</p>];
    })}
    {climates.after.notes.map((note) => (
      <p class="small">{readableIn(units, note)}</p>
    ))}
  </>
);

/**
 * Days between the middle dates of two climates from which they are hardly of one place: of the means of stations one in
 * ten is twelve days off. House default.
 */
const ANOTHER_PLACE_DAYS = 14;

interface FreezeAsked {
  event: FreezeEvent;
  limitF: FreezeLimitF;
  today: Day;
}

/** Days by which the middle date comes later with the record, where that is more than one place accounts for. */
function farOff({ before, after }: RecordPreview['climates'], asked: FreezeAsked): number | undefined {
  const [now, then] = [usualFreezes(before, asked).median, usualFreezes(after, asked).median];
  const days = now === undefined || then === undefined ? 0 : daysBetween(now, then);
  return Math.abs(days) < ANOTHER_PLACE_DAYS ? undefined : days;
}

function farWords(freeze: string, days: number): string {
  return (
    `${freeze}: ${Math.abs(days)} days ${days < 0 ? 'earlier' : 'later'} than now. That is more than places near each other ` +
    'differ by. Was the record kept near the garden, and about as high? Every date would follow it.'
  );
}

/** The early, the middle and the late day of what is usual, without its year. */
function datesIn(climate: Climate, asked: FreezeAsked, units: UnitSystem): string {
  const { early, median, late } = usualFreezes(climate, asked);
  return [early, median, late].map((day) => (day === undefined ? 'no date' : formatDay(day, units))).join(', ');
}

function usualFreezes(climate: Climate, { event, limitF, today }: FreezeAsked): Odds {
  return freezeOdds(usualOf(climate), { event, limitF, season: seasonOf(climate.seasonTurn, today) });
}

interface GivesProps {
  garden: Garden;
  offer: OfferedRecord;
  record: WeatherRecord | undefined;
  climate: Climate;
}

/** What the record takes the place of, and how that comes back. */
const WhatGivesWay = ({ garden, offer: { from, replaced = 0 }, record, climate }: GivesProps) => {
  const stood = garden.climate.kind === 'daily-record';
  return (
    <>
      <h2>What gives way</h2>
      {!stood && (
        <p>
          The climate stands on this until now: {readableIn(garden.place.units, climate.origin)} It would be counted
          from the record instead. That stands in History then, and can be taken back there.
        </p>
      )}
      {replaced > 0 && <p>{counted(replaced, 'day')} of the record there is would be replaced.</p>}
      {record !== undefined && from !== 'now' && (
        <p>
          The record there is, {counted(record.days.length, 'day')}, is kept as it stands and can be put back. Only one
          is: the one before it goes. <a href={longRecordCsvPath(garden.id, 'now')}>Keep it as a CSV file</a> besides,
          if you like.
        </p>
      )}
      {record === undefined && stood && <p>Nothing: no record was kept.</p>}
    </>
  );
};
