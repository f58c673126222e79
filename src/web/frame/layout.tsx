/**
 * The frame every page stands in.
 */
import { html } from 'hono/html';
import type { Problem } from '../../garden/problem.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { GARDENS_PATH, weekPath } from '../addresses/addresses.ts';
import { stylesheetPath } from '../styles/stylesheet.ts';
import { PageFoot } from './page-foot.tsx';
import { type Here, PageLinks } from './page-links.tsx';

/** The garden a page is about. */
export interface PageGarden {
  id: string;
  name: string;
  /** With the units it is read in. */
  place?: { units: UnitSystem };
}

export interface FrameProps {
  title: string;
  garden?: PageGarden;
  /** Set where the reader may reach nothing but this page: it then leads nowhere else. */
  apart?: boolean;
  here?: Here;
  /** The page of the handbook that explains this one, where it is another than its address tells (page-docs.ts). */
  docs?: string;
}

/** A whole page: heading line with the garden's name, the other pages, then what the page is about. */
export function page({ title, garden, here, docs, apart = false }: FrameProps, content: unknown) {
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
        {!apart && (
          <a class="skip" href="#page">
            Skip to the page
          </a>
        )}
        <header class="running-head">
          {apart ? (
            <span class="garden-name">{garden?.name ?? 'Loamtide'}</span>
          ) : (
            <p class="whose">
              <a class="garden-name" href={garden === undefined ? '/' : weekPath(garden.id)}>
                {garden?.name ?? 'Loamtide'}
              </a>{' '}
              {garden === undefined && (
                <a class="to-gardens" href={GARDENS_PATH}>
                  Gardens
                </a>
              )}
            </p>
          )}
          {garden && !apart && <PageLinks gardenId={garden.id} here={here} />}
        </header>
        <main id="page" tabindex={-1}>
          {content}
        </main>
        {!apart && <PageFoot docs={docs} gardenId={garden?.id} gardenUnits={garden?.place?.units} />}
      </body>
    </html>
  )}`;
}

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

/** The number a request goes by in the log, for whoever asks about it; nothing where it has none. */
export const RequestNumber = ({ requestId }: { requestId: string | undefined }) =>
  requestId === undefined ? null : (
    <p class="small">
      To ask about this page, name its number: <strong>{requestId}</strong>
    </p>
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
