/**
 * The handbook: its contents, and a page of it.
 */
import { tryGetContext } from 'hono/context-storage';
import { raw } from 'hono/html';
import { handbookPath, sourcePath } from '../addresses/addresses.ts';
import { type PageGarden, page } from '../frame/layout.tsx';
import { readerUnits } from '../requests/reader.ts';
import { handbookParts, neighbours } from './docs/contents.ts';
import type { DocsPage } from './docs/markdown.ts';

type Pages = ReadonlyMap<string, DocsPage>;

interface ContentsAsked {
  /** The garden the reader came from. */
  garden?: PageGarden | undefined;
  /** The page that was asked for and is not there. */
  missing?: string;
}

/** The contents. */
export function handbookContentsPage(pages: Pages, { garden, missing }: ContentsAsked) {
  return page(
    { title: missing === undefined ? 'The handbook' : 'There is no such page', ...(garden && { garden }) },
    <article class="handbook">
      {missing === undefined ? (
        <h1>The handbook</h1>
      ) : (
        <>
          <h1>There is no such page</h1>
          <p role="alert">The handbook has no page “{missing}”. These are its pages.</p>
        </>
      )}
      {handbookParts([...pages.keys()]).map(({ heading, pages: names }) => (
        <section>
          <h2>{heading}</h2>
          <ul class="contents">
            {names
              .flatMap((name) => pages.get(name) ?? [])
              .map((each) => (
                <ContentsLine docs={each} />
              ))}
            {names.includes('handbook') && (
              <li>
                <a href={sourcePath()}>The bibliography</a>
                <span class="under">
                  Every book and page a figure was taken from, how much of it was read, and what leans on it.
                </span>
              </li>
            )}
          </ul>
        </section>
      ))}
    </article>,
  );
}

const ContentsLine = ({ docs: { name, title, about } }: { docs: DocsPage }) => (
  <li>
    <a href={handbookPath(name)}>{title}</a>
    <span class="under">{about}</span>
  </li>
);

/** A page of the docs. */
export function handbookPage(found: DocsPage, pages: Pages, garden?: PageGarden) {
  const { before, after } = neighbours(found.name, [...pages.keys()]);
  return page(
    { title: found.title, ...(garden && { garden }) },
    <article class={`handbook${readsMetric(garden) ? ' reads-metric' : ''}`}>
      <nav aria-label="Handbook">
        <a href={handbookPath()}>The handbook</a>
      </nav>
      {raw(found.html)}
      <nav class="turner" aria-label="Other pages of the handbook">
        <Turn docs={before === undefined ? undefined : pages.get(before)} words="Before" />
        <Turn docs={after === undefined ? undefined : pages.get(after)} words="Next" />
        <a href={handbookPath()}>Contents</a>
      </nav>
    </article>,
  );
}

/** Figures are published in metric units: whoever reads those needs no others beside them. */
function readsMetric(garden: PageGarden | undefined): boolean {
  const c = tryGetContext();
  return (garden?.place?.units ?? (c && readerUnits(c))) === 'metric';
}

const Turn = ({ docs, words }: { docs: DocsPage | undefined; words: string }) =>
  docs === undefined ? null : (
    <a href={handbookPath(docs.name)}>
      {words}: {docs.title}
    </a>
  );
