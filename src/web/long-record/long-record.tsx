/**
 * The long record: what the climate is counted from, and the form that brings another in.
 */
import type { Climate } from '../../climate/climate.ts';
import type { RecordDays } from '../../climate/record-days.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import {
  climatePath,
  historyPath,
  longRecordCsvPath,
  longRecordPath,
  offerKeptPath,
  weatherPath,
} from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { Whence } from '../frame/why.tsx';
import { RecordHolds } from './record-words.tsx';

/** A record kept here. */
export interface KeptRecord {
  origin: string;
  held: RecordDays | undefined;
}

interface LongRecordProps {
  view: GardenView;
  record: KeptRecord | undefined;
  former: KeptRecord | undefined;
  /** Whether one was put behind the garden just now. */
  kept?: boolean;
  /** What was entered and what was wrong with it, when the form comes back. */
  entered?: { origin: string; how: string };
  problems?: readonly Problem[];
}

/** The page of the long record. */
export function longRecordPage({ view, record, former, kept = false, entered, problems = [] }: LongRecordProps) {
  const { garden, climate } = view;
  const { units } = garden.place;
  const stands = garden.climate.kind === 'daily-record';
  return page(
    { title: 'The long record', garden, here: 'weather' },
    <article class="weather">
      <h1>The long record</h1>
      {kept && (
        <p class="kept" role="status">
          Kept: the climate is counted from this record now.{' '}
          {former === undefined ? (
            <a href={historyPath(garden.id)}>Taking it back is in History</a>
          ) : (
            <a href="#former">Put the one before back</a>
          )}
        </p>
      )}
      <Problems problems={problems} />
      <Standing climate={climate} stands={stands} record={record} gardenId={garden.id} units={units} />
      {record !== undefined && (
        <p>
          <a href={longRecordCsvPath(garden.id, 'now')}>This record as a CSV file</a>
        </p>
      )}
      {record !== undefined && !stands && (
        <OfferKept gardenId={garden.id} which="now" words="See what it would change" />
      )}
      <BringIn gardenId={garden.id} hasRecord={record !== undefined} entered={entered} />
      {former !== undefined && <Former gardenId={garden.id} former={former} units={units} />}
      <p>
        <a href={weatherPath(garden.id)}>Back to the weather log</a>
      </p>
    </article>,
  );
}

interface StandingProps {
  climate: Climate;
  stands: boolean;
  record: KeptRecord | undefined;
  gardenId: string;
  units: UnitSystem;
}

const Standing = ({ climate, stands, record, gardenId, units }: StandingProps) => (
  <section>
    <h2>What the climate stands on</h2>
    <p>{readableIn(units, climate.origin)}</p>
    {climate.notes.map((note) => (
      <p class="small">{readableIn(units, note)}</p>
    ))}
    {record !== undefined && !stands && (
      <>
        <h2>A record that is kept and not used</h2>
        <p>{record.origin}</p>
      </>
    )}
    {record === undefined && (
      <p>
        No daily record is behind this garden. With one of ten years or more, from a station near you or your own, frost
        dates are counted year by year, and snow, frost in the ground and water in the soil are reckoned.
      </p>
    )}
    {record?.held && <RecordHolds held={record.held} units={units} />}
    <Whence to={climatePath(gardenId)}>The climate that is counted from it, figure by figure</Whence>
  </section>
);

const OfferKept = ({ gardenId, which, words }: { gardenId: string; which: 'now' | 'former'; words: string }) => (
  <form method="post" action={offerKeptPath(gardenId)}>
    <input type="hidden" name="which" value={which} />
    <button type="submit">{words}</button>
  </form>
);

interface BringInProps {
  gardenId: string;
  hasRecord: boolean;
  entered: { origin: string; how: string } | undefined;
}

const BringIn = ({ gardenId, hasRecord, entered = { origin: '', how: 'over' } }: BringInProps) => (
  <section>
    <h2>Bring a record in</h2>
    <form method="post" action={longRecordPath(gardenId)} enctype="multipart/form-data">
      <label>
        The file <input type="file" name="file" required />
      </label>
      <p class="small">
        GHCN-Daily, which NOAA hands out for each station as <code>.dly</code> or as CSV by station; or your own CSV
        with a first line such as <code>date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm</code>, in degrees Celsius and
        millimetres. Either may be packed as <code>.gz</code>. Up to 20 MB.
      </p>
      <label>
        Where it was measured, if the file’s name does not say so{' '}
        <input type="text" name="origin" value={entered.origin} maxlength={200} autocomplete="off" />
      </label>
      {hasRecord && (
        <fieldset>
          <legend>And the record there is?</legend>
          <label class="choice">
            <input type="radio" name="how" value="over" checked={entered.how !== 'instead'} /> Lay the file over it: its
            days are added, and take the place of the same days
          </label>
          <label class="choice">
            <input type="radio" name="how" value="instead" checked={entered.how === 'instead'} /> Put the file in place
            of it
          </label>
        </fieldset>
      )}
      <button type="submit">Show what it holds and would change</button>
      <p class="small">Nothing is kept until you say so.</p>
    </form>
  </section>
);

const Former = ({ gardenId, former, units }: { gardenId: string; former: KeptRecord; units: UnitSystem }) => (
  <section id="former">
    <h2>The record before this one</h2>
    <p>{former.origin}</p>
    {former.held && <RecordHolds held={former.held} units={units} />}
    <p>
      <a href={longRecordCsvPath(gardenId, 'former')}>It as a CSV file</a>
    </p>
    <OfferKept gardenId={gardenId} which="former" words="Show what putting it back would change" />
    <p class="small">Only the last record before the present one is kept.</p>
  </section>
);
