/**
 * What can be reported: things the garden shows, or the forecast does, that the plan has to know.
 */
import { type ReportName, reportPath } from '../addresses/addresses.ts';
import { type PageGarden, page } from '../frame/layout.tsx';

/** Everything that can be reported, in the order it is listed. */
const REPORTS: readonly { what: ReportName; name: string; about: string }[] = [
  {
    what: 'cold-night',
    name: 'A cold night',
    about: 'The low a forecast names, or the low your thermometer showed: what to cover, pick or look at.',
  },
  {
    what: 'away',
    name: 'A time away',
    about:
      'First what it would do: work pulled forward, work that waits, and what would be missed; then the sheet to leave.',
  },
  {
    what: 'pile',
    name: 'A look at a pile',
    about: 'How warm it is, how it feels and smells, pests or slumping: the next turn is worked out from it.',
  },
  {
    what: 'stage',
    name: 'Buds or flowers on a cover',
    about: 'The cut is dated anew from what you see, and remembered for that kind in this garden.',
  },
  {
    what: 'disease',
    name: 'A disease found',
    about: 'On a crop in a bed: what comes out, what stays away for how long, and which piles are held back.',
  },
];

/** The page that lists what can be reported. */
export function reportPage(garden: PageGarden) {
  return page(
    { title: 'Report', garden, here: 'report' },
    <article class="report">
      <h1>Report</h1>
      <p>Tell the plan what it cannot know by itself. Everything told stands in History and can be taken back.</p>
      <dl class="report-list">
        {REPORTS.map(({ what, name, about }) => (
          <>
            <dt>
              <a href={reportPath(garden.id, what)}>{name}</a>
            </dt>
            <dd>{about}</dd>
          </>
        ))}
      </dl>
    </article>,
  );
}
