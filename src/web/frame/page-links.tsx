/**
 * The way to a garden's other pages, at the head of each.
 */
import {
  bedsPath,
  compostPath,
  feedsPath,
  gardenPath,
  historyPath,
  householdPath,
  reportPath,
  seasonEndPath,
  weatherPath,
  weekPath,
  yearPath,
} from '../addresses/addresses.ts';

/** A page that the head leads to. */
interface HeadPage {
  is: string;
  name: string;
  path: (gardenId: string) => string;
}

/** The pages of the garden's year. */
const PAGES = [
  { is: 'week', name: 'This week', path: (gardenId) => weekPath(gardenId) },
  { is: 'year', name: 'The year', path: (gardenId) => yearPath(gardenId) },
  { is: 'beds', name: 'Beds', path: (gardenId) => bedsPath(gardenId) },
  { is: 'compost', name: 'Compost yard', path: compostPath },
  { is: 'weather', name: 'Weather log', path: (gardenId) => weatherPath(gardenId) },
  { is: 'season-end', name: 'Season end', path: seasonEndPath },
  { is: 'feeds', name: 'Feeds', path: feedsPath },
  { is: 'household', name: 'Household', path: householdPath },
] as const satisfies readonly HeadPage[];

/** What is told, and what was: quieter than the pages. */
const TOLD = [
  { is: 'report', name: 'Report', path: (gardenId) => reportPath(gardenId) },
  { is: 'history', name: 'History', path: (gardenId) => historyPath(gardenId) },
  { is: 'garden', name: 'The garden', path: gardenPath },
] as const satisfies readonly HeadPage[];

/** The page a reader is on, where the head leads to it. */
export type Here = (typeof PAGES)[number]['is'] | (typeof TOLD)[number]['is'];

/** Both rows of links. */
export const PageLinks = ({ gardenId, here }: { gardenId: string; here: Here | undefined }) => (
  <>
    <nav aria-label="Told" class="told-links">
      <Links pages={TOLD} gardenId={gardenId} here={here} />
    </nav>
    <nav aria-label="Pages" class="page-links">
      <Links pages={PAGES} gardenId={gardenId} here={here} />
    </nav>
  </>
);

interface LinksProps {
  pages: readonly HeadPage[];
  gardenId: string;
  here: Here | undefined;
}

const Links = ({ pages, gardenId, here }: LinksProps) => (
  <>
    {pages.map(({ is, name, path }) => (
      <a href={path(gardenId)} aria-current={is === here ? 'page' : undefined}>
        {name}
      </a>
    ))}
  </>
);
