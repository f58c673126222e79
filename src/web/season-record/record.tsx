/**
 * The season's record, made to be read and printed: what was done when, bed by bed and pile by pile.
 */

import { memberNames, Names } from '../../digest/record/names.ts';
import type { RecordRow } from '../../digest/record/row.ts';
import { plannedInWords, rowInWords, tellerInWords } from '../../digest/record/row-words.ts';
import type { BedSeason, PileSeason, RecordFile, SeasonSummary } from '../../digest/record/shape.ts';
import {
  coverInWords,
  cropInWords,
  freezesInWords,
  givenInWords,
  pileInWords,
  weatherInWords,
} from '../../digest/record/summary-words.ts';
import { fullDay, hoursText } from '../../digest/words.ts';
import { monthName } from '../../digest/yard-words.ts';
import type { PracticeName } from '../../garden/practice-names.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { seasonName } from '../../practices/seasons.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import {
  bedPath,
  historyPath,
  recordFilePath,
  recordPath,
  reportPath,
  weatherPath,
  weekPath,
} from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { AskedDates, Whence, WhyDateIf } from '../frame/why.tsx';

interface RecordProps {
  view: Pick<GardenView, 'garden' | 'climate' | 'plan'>;
  /** Of the one season shown. */
  record: RecordFile;
  seasons: readonly number[];
  season: number;
}

/** Who reads it: their units, the garden's members and piles by name. */
interface Reader {
  gardenId: string;
  units: UnitSystem;
  members: ReadonlySet<string>;
  pileName: (id: string) => string;
  /** Keys of the tasks that have a page. */
  planned: ReadonlySet<string>;
}

/** The page. */
export function recordPage({ view: { garden, climate, plan }, record, seasons, season }: RecordProps) {
  const { units } = garden.place;
  const reader = readerOf(garden, plan);
  const [summary] = record.seasons;
  const name = seasonName(climate, season);
  return page(
    { title: `Record of ${name}`, garden, here: 'history', docs: 'season-record' },
    <article class="record">
      <h1>Record of {name}</h1>
      {summary !== undefined && (
        <p>
          {garden.name}, {fullDay(summary.from, units)} to {fullDay(summary.to, units)}
          {summary.running && `; as it stands on ${fullDay(record.madeOn, units)}`}.
        </p>
      )}
      <nav aria-label="Seasons" class="record-seasons">
        {seasons.map((each) => (
          <a
            class="record-season"
            href={recordPath(garden.id, each)}
            aria-current={each === season ? 'page' : undefined}
          >
            {seasonName(climate, each)}
          </a>
        ))}
      </nav>
      {summary === undefined || isEmpty(summary, record.rows) ? (
        <Empty gardenId={garden.id} />
      ) : (
        <Season summary={summary} rows={record.rows} reader={reader} />
      )}
      <Untold beds={garden.beds.filter(({ id }) => !summary?.beds.some((bed) => bed.id === id))} />
      <Files gardenId={garden.id} season={season} name={name} />
    </article>,
  );
}

/** Beds with nothing on record: whoever comes from the page of one is told so. */
const Untold = ({ beds }: { beds: readonly Pick<BedSeason, 'id' | 'name'>[] }) =>
  beds.length === 0 ? null : (
    <p class="small">
      Nothing of{' '}
      {beds.map(({ id, name }, at) => (
        <>
          {at > 0 && ', '}
          <span id={`bed-${id}`}>{name}</span>
        </>
      ))}{' '}
      in this season.
    </p>
  );

function readerOf(garden: GardenView['garden'], { tasks }: GardenView['plan']): Reader {
  const names = new Names(garden);
  return {
    ...{ gardenId: garden.id, units: garden.place.units, members: memberNames(garden) },
    pileName: (id) => names.pile(id).aboutName,
    planned: new Set(tasks.map(({ key }) => key)),
  };
}

function isEmpty({ beds, piles, weather }: SeasonSummary, rows: readonly RecordRow[]): boolean {
  return rows.length + beds.length + piles.length === 0 && weather === undefined;
}

const Empty = ({ gardenId }: { gardenId: string }) => (
  <p>
    Nothing is on record of this season. What you <a href={weekPath(gardenId)}>mark done or skip</a>, what you tell
    under <a href={reportPath(gardenId)}>Report</a> and in the <a href={weatherPath(gardenId)}>weather log</a>, and what
    your garden file says has happened, stands here from then on.
  </p>
);

interface SeasonProps {
  summary: SeasonSummary;
  rows: readonly RecordRow[];
  reader: Reader;
}

const Season = ({ summary, rows, reader }: SeasonProps) => {
  const own = (about: RecordRow['about'], id?: string) =>
    rows.filter((row) => row.about === about && (id === undefined || row.aboutId === id));
  const garden = own('garden');
  return (
    <>
      {rows.some(({ origin }) => origin === 'garden-file') && (
        <p class="small">† told by the garden file; the rest was told as it was done.</p>
      )}
      {summary.beds.map((bed) => (
        <Bed bed={bed} rows={own('bed', bed.id)} reader={reader} />
      ))}
      {summary.piles.map((pile) => (
        <Pile pile={pile} rows={own('pile', pile.id)} reader={reader} />
      ))}
      {garden.length > 0 && (
        <section>
          <h2>The garden</h2>
          <Rows rows={garden} reader={reader} />
          <Whence to={historyPath(reader.gardenId)}>What was told of the garden, entry by entry</Whence>
        </section>
      )}
      <Weather summary={summary} reader={reader} />
      <Work work={summary.work} />
    </>
  );
};

const Bed = ({ bed, rows, reader }: { bed: BedSeason; rows: readonly RecordRow[]; reader: Reader }) => {
  const { units } = reader;
  const given = givenInWords(bed, units);
  return (
    <section id={`bed-${bed.id}`}>
      <h2>{bed.gone ? bed.name : <a href={bedPath(reader.gardenId, bed.id)}>{bed.name}</a>}</h2>
      {bed.gone && <p class="small">It is in the garden file no longer.</p>}
      <dl class="where">
        <Told term="Grew" lines={bed.crops.map((crop) => cropInWords(crop, units))} />
        <Told term="Covers" lines={bed.covers.map((cover) => coverInWords(cover, units))} />
        <Told term="Given" lines={given === undefined ? [] : [given]} />
      </dl>
      <Rows rows={rows} reader={reader} />
      <Whence to={`${bedPath(reader.gardenId, bed.id)}#told`}>What was told of this bed, to be changed</Whence>
    </section>
  );
};

const Told = ({ term, lines }: { term: string; lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <>
      <dt>{term}</dt>
      <dd>
        {lines.map((line) => (
          <span class="record-line">{line}</span>
        ))}
      </dd>
    </>
  );

const Pile = ({ pile, rows, reader }: { pile: PileSeason; rows: readonly RecordRow[]; reader: Reader }) => (
  <section id={`pile-${pile.id}`}>
    <h2>
      {pile.name}: {pile.built === undefined ? 'a pile' : `pile of ${fullDay(pile.built, reader.units)}`}
    </h2>
    {pile.gone && <p class="small">It is in the garden file no longer.</p>}
    <p>{pileInWords(pile, reader.units).join(' ')}</p>
    <Rows rows={rows} reader={reader} />
    <Whence to={historyPath(reader.gardenId, pile.gone ? {} : { about: { type: 'pile', id: pile.id } })}>
      What was told of this pile, entry by entry
    </Whence>
  </section>
);

const Rows = ({ rows, reader }: { rows: readonly RecordRow[]; reader: Reader }) =>
  rows.length === 0 ? null : (
    <ol class="record-rows">
      {rows.map((row) => (
        <Row row={row} reader={reader} />
      ))}
    </ol>
  );

const Row = ({ row, reader: { gardenId, units, members, pileName, planned } }: { row: RecordRow; reader: Reader }) => {
  const under = [plannedInWords(row, units), tellerInWords(row, units, members)].filter((words) => words !== undefined);
  return (
    <li class="record-row">
      <time class="record-day" datetime={row.on}>
        <WhyDateIf gardenId={gardenId} of={row.task !== undefined && planned.has(row.task) ? row.task : undefined}>
          {fullDay(row.on, units)}
        </WhyDateIf>
      </time>
      <span>
        {rowInWords(row, units, pileName)}
        {row.origin === 'garden-file' && <FromFile />}
        {under.length > 0 && <span class="under">{under.join('; ')}</span>}
      </span>
    </li>
  );
};

/** That a line is the garden file's: said once above, and marked on each line. */
const FromFile = () => (
  <span role="img" class="from-file" aria-label="from the garden file">
    {'\u00a0†'}
  </span>
);

const Weather = ({ summary, reader: { gardenId, units } }: { summary: SeasonSummary; reader: Reader }) => {
  const lines = [...weatherInWords(summary, units), ...freezesInWords(summary, units)];
  return lines.length === 0 ? null : (
    <section>
      <h2>Weather, as it was logged</h2>
      <p>
        {lines.map((line, at) => (
          <>
            {at > 0 && ' '}
            <AskedDates text={line} to={weatherPath(gardenId)} />
          </>
        ))}
      </p>
    </section>
  );
};

const Work = ({ work }: { work: SeasonSummary['work'] }) =>
  work.minutes === 0 ? null : (
    <section class="record-work">
      <h2>Work done</h2>
      <p>{hoursText(work.minutes)} in all, by what each task is reckoned to take.</p>
      <Hours caption="By practice" rows={work.byPractice} nameOf={(of) => PRACTICE_WORDS[of as PracticeName] ?? of} />
      <Hours caption="By month" rows={work.byMonth} nameOf={(of) => monthName(`${of}-01`)} />
      <Hours caption="By member, where a name stands at it" rows={work.byMember} nameOf={(of) => of} />
    </section>
  );

interface HoursProps {
  caption: string;
  rows: SeasonSummary['work']['byMonth'];
  nameOf: (of: string) => string;
}

const Hours = ({ caption, rows, nameOf }: HoursProps) =>
  rows.length === 0 ? null : (
    <table class="figures">
      <caption>{caption}</caption>
      <tbody>
        {rows.map(({ of, minutes }) => (
          <tr>
            <th scope="row">{nameOf(of)}</th>
            <td>{hoursText(minutes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );

const Files = ({ gardenId, season, name }: { gardenId: string; season: number; name: string }) => (
  <section class="record-files">
    <h2>As a file</h2>
    <p>
      {name}: <a href={recordFilePath(gardenId, 'csv', season)}>CSV</a>,{' '}
      <a href={recordFilePath(gardenId, 'json', season)}>JSON</a>. Every season:{' '}
      <a href={recordFilePath(gardenId, 'csv')}>CSV</a>, <a href={recordFilePath(gardenId, 'json')}>JSON</a>. Amounts in
      them are SI.
    </p>
    <p>
      <a href={historyPath(gardenId)}>History, with what can be taken back</a>
    </p>
  </section>
);
