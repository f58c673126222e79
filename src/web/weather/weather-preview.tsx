/**
 * What a day's weather would move, before it is logged.
 */
import type { Garden } from '../../garden/garden.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { ReportPreview } from '../../steward/doings/steward.ts';
import { weatherPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { figuresInWords, LOGGED_FIELDS, type WeatherEntered } from '../fields/logged-fields.ts';
import { page } from '../frame/layout.tsx';
import { factInWords } from '../words/ledger-words.ts';

interface WeatherPreviewProps {
  garden: Garden;
  row: LoggedDay;
  entered: WeatherEntered;
  preview: ReportPreview;
  /** What of it cannot be reckoned here. */
  note: string | undefined;
}

/** The page that shows what a day's weather would move, and asks. */
export function weatherPreviewPage({ garden, row, entered, preview: { before, after }, note }: WeatherPreviewProps) {
  const replaced = replacedBy(garden, row);
  return page(
    { title: 'What it would move', garden, here: 'weather' },
    <article class="report undo">
      <h1>What it would move</h1>
      <p class="about">
        {factInWords({ kind: 'weather-logged', days: [row] }, garden, before.today)}
        <span class="under">Nothing is kept yet.</span>
      </p>
      {replaced !== '' && <p>It takes the place of what was logged of that day: {replaced}.</p>}
      <PreviewSections plans={{ before, after }} garden={garden} />
      {note && <p>{note}</p>}
      <form method="post" action={weatherPath(garden.id)}>
        {Object.entries(entered).map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
        <button type="submit">Take it in</button>
        <p class="small">It stands in History then, and can be taken back as one.</p>
      </form>
      <p>
        <a href={weatherPath(garden.id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

/** What a row would take the place of, in words; empty where it is new. */
function replacedBy({ weather, place: { units } }: Garden, row: LoggedDay): string {
  const known = weather.find(({ day, kind }) => day === row.day && kind === row.kind);
  if (known === undefined) return '';
  const replaced: LoggedDay = { day: row.day, kind: row.kind };
  for (const { measured } of LOGGED_FIELDS) {
    const was = known[measured];
    if (row[measured] !== undefined && was !== undefined) replaced[measured] = was;
  }
  return figuresInWords(replaced, units);
}
