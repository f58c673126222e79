/**
 * The page of the handbook that explains a page.
 */
import type { Here } from './page-links.tsx';

/** What explains each page the head leads to; a page behind it may have one of its own. */
const DOCS_OF: Readonly<Record<Here, string>> = {
  week: 'weekly-list',
  year: 'how-a-day-is-chosen',
  beds: 'rotation-plan',
  compost: 'composting',
  weather: 'weather-log',
  'season-end': 'choosing-covers',
  feeds: 'feeds',
  household: 'weekly-list',
  report: 'doing',
  history: 'doing',
};

/** What explains a page that names none of its own; nothing where the head does not lead to its kind. */
export function docsOf(here: Here | undefined): string | undefined {
  return here === undefined ? undefined : DOCS_OF[here];
}
