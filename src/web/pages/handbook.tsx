/**
 * The handbook: its contents, and a page of it.
 */
import { raw } from 'hono/html';
import { handbookPath, sourcePath } from '../addresses.ts';
import { handbookParts, neighbours } from '../handbook/contents.ts';
import type { DocsPage } from '../handbook/markdown.ts';
import { page } from '../layout.tsx';

type Pages = ReadonlyMap<string, DocsPage>;

/** The contents; `missing` is the page that was asked for and is not there. */
export function handbookContentsPage(pages: Pages, missing?: string) {
  return page(
    { title: missing === undefined ? 'The handbook' : 'There is no such page' },
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
export function handbookPage(found: DocsPage, pages: Pages) {
  const { before, after } = neighbours(found.name, [...pages.keys()]);
  return page(
    { title: found.title },
    <article class="handbook">
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

const Turn = ({ docs, words }: { docs: DocsPage | undefined; words: string }) =>
  docs === undefined ? null : (
    <a href={handbookPath(docs.name)}>
      {words}: {docs.title}
    </a>
  );
