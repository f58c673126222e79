/**
 * The frame every page stands in.
 */
import { html } from 'hono/html';
import type { PropsWithChildren } from 'hono/jsx';
import type { Problem } from '../garden/problem.ts';
import {
  bedsPath,
  compostPath,
  feedsPath,
  historyPath,
  householdPath,
  reportPath,
  seasonEndPath,
  weatherPath,
  weekPath,
  yearPath,
} from './addresses.ts';
import { stylesheetPath } from './stylesheet.ts';

/** The garden a page is about. */
export interface PageGarden {
  id: string;
  name: string;
}

export interface FrameProps {
  title: string;
  garden?: PageGarden;
  /** Set where the reader may reach nothing but this page: it then leads nowhere else. */
  apart?: boolean;
  here?: 'week' | 'year' | 'beds' | 'season-end' | 'compost' | 'weather' | 'report' | 'history' | 'feeds' | 'household';
}

/** A whole page: heading line with the garden's name, the other pages, then what the page is about. */
export function page({ title, garden, here, apart = false }: FrameProps, content: unknown) {
  return html`<!DOCTYPE html>${(
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{garden === undefined ? `${title} – Loamtide` : `${title} – ${garden.name}`}</title>
        <link rel="icon" href="data:," />
        <link rel="stylesheet" href={stylesheetPath} />
      </head>
      <body>
        <header class="running-head">
          {apart ? (
            <span class="garden-name">{garden?.name ?? 'Loamtide'}</span>
          ) : (
            <a class="garden-name" href={garden === undefined ? '/' : weekPath(garden.id)}>
              {garden?.name ?? 'Loamtide'}
            </a>
          )}
          {garden && !apart && <PageLinks garden={garden} here={here} />}
        </header>
        <main>{content}</main>
      </body>
    </html>
  )}`;
}

const PageLinks = ({ garden, here }: { garden: PageGarden; here: FrameProps['here'] }) => (
  <nav aria-label="Pages">
    <PageLink href={weekPath(garden.id)} isHere={here === 'week'}>
      This week
    </PageLink>
    <PageLink href={yearPath(garden.id)} isHere={here === 'year'}>
      The year
    </PageLink>
    <PageLink href={bedsPath(garden.id)} isHere={here === 'beds'}>
      Beds
    </PageLink>
    <PageLink href={seasonEndPath(garden.id)} isHere={here === 'season-end'}>
      Season end
    </PageLink>
    <PageLink href={compostPath(garden.id)} isHere={here === 'compost'}>
      Compost yard
    </PageLink>
    <PageLink href={weatherPath(garden.id)} isHere={here === 'weather'}>
      Weather log
    </PageLink>
    <PageLink href={reportPath(garden.id)} isHere={here === 'report'}>
      Report
    </PageLink>
    <PageLink href={historyPath(garden.id)} isHere={here === 'history'}>
      History
    </PageLink>
    <PageLink href={feedsPath(garden.id)} isHere={here === 'feeds'}>
      Feeds
    </PageLink>
    <PageLink href={householdPath(garden.id)} isHere={here === 'household'}>
      Household
    </PageLink>
  </nav>
);

const PageLink = ({ href, isHere, children }: PropsWithChildren<{ href: string; isHere: boolean }>) => (
  <a href={href} aria-current={isHere ? 'page' : undefined}>
    {children}
  </a>
);

interface ProblemsProps {
  problems: readonly Problem[];
  heading?: string;
}

/** Places that are the whole of what was asked: naming them tells a reader nothing. */
const WHOLE: ReadonlySet<string> = new Set(['the link', 'the form', 'address']);

/** One thing that was wrong. */
export const ProblemWords = ({ where, what, mend }: Problem) => (
  <>
    {!WHOLE.has(where) && <strong>{where}:</strong>} {what} {mend}
  </>
);

/** Everything that was wrong with a form, at once: what, where and the mend. */
export const Problems = ({ problems, heading = 'Nothing was changed' }: ProblemsProps) =>
  problems.length === 0 ? null : (
    <section class="problems" role="alert">
      <h2>{heading}</h2>
      <ul>
        {problems.map((problem) => (
          <li>
            <ProblemWords {...problem} />
          </li>
        ))}
      </ul>
    </section>
  );
