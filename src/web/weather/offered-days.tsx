/**
 * Many days of the log, and what they would move, before they are logged.
 */
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { WeatherFile } from '../../garden/weather-rows.ts';
import type { ReportPreview } from '../../steward/doings/steward.ts';
import { loggedDaysPath, weatherPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { FileNotes } from './file-notes.tsx';
import { LogTable } from './log-table.tsx';

/** Days that may come to be logged. */
export interface OfferedDays {
  gardenId: string;
  /** What they came in. */
  name: string;
  days: readonly LoggedDay[];
  /** What they were read from, with all that cannot be used. */
  file: WeatherFile;
}

interface OfferedDaysProps {
  garden: Garden;
  offer: OfferedDays;
  id: string;
  preview: ReportPreview | undefined;
  /** What of it cannot be reckoned here. */
  note: string | undefined;
  problems: readonly Problem[];
}

/** The page that shows the days and asks. */
export function offeredDaysPage({ garden, offer, id, preview, note, problems }: OfferedDaysProps) {
  const { units } = garden.place;
  const { days, name, file } = offer;
  const [first, last] = [days[0]?.day ?? '', days.at(-1)?.day ?? ''];
  const known = new Set(garden.weather.map(({ day, kind }) => `${day} ${kind}`));
  const replaced = days.filter(({ day, kind }) => known.has(`${day} ${kind}`)).length;
  const count = days.length === 1 ? '1 day' : `${days.length} days`;
  const span = first === last ? fullDay(first, units) : `${fullDay(first, units)} to ${fullDay(last, units)}`;
  return page(
    { title: 'What these days would move', garden, here: 'weather' },
    <article class="weather report undo">
      <h1>What these days would move</h1>
      <p class="about">
        {count} from {name}, {days[0]?.kind === 'expected' ? 'expected' : 'seen'}: {span}.
        <span class="under">Nothing is kept yet.</span>
      </p>
      <Problems problems={problems} />
      {replaced > 0 && (
        <p>
          {replaced === 1 ? '1 day has' : `${replaced} days have`} been logged before: what stands here takes its place,
          figure by figure.
        </p>
      )}
      <FileNotes file={file} />
      {preview && (
        <>
          <PreviewSections plans={preview} garden={garden} />
          {note && <p>{note}</p>}
          <form method="post" action={loggedDaysPath(garden.id, id)}>
            <button type="submit">Log {count}</button>
            <p class="small">They stand in History then as one entry, and can be taken back as one.</p>
          </form>
        </>
      )}
      <p>
        <a href={weatherPath(garden.id)}>Leave everything as it is</a>
      </p>
      <details>
        <summary>The days as they were read</summary>
        <LogTable caption="Read" rows={days.map((row) => [row.day, row])} garden={garden} dated />
      </details>
    </article>,
  );
}
