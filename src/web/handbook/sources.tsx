/**
 * The bibliography: everything a figure was taken from, and what a figure rests on that was read in no book.
 */
import type { Source } from '../../handbook/shapes/row.ts';
import { capital } from '../../measures/capital.ts';
import { handbookPath } from '../addresses/addresses.ts';
import { type PageGarden, page } from '../frame/layout.tsx';
import type { Docs } from './docs/docs.ts';
import { OTHER_SOURCES, READ_WORDS, SOURCE_PARTS } from './docs/source-kinds.ts';
import { type Leaning, leaningOn } from './leaning.ts';

/** The page of the bibliography. */
export function sourcesPage(sources: readonly Source[], known: Docs, garden?: PageGarden) {
  return page(
    { title: 'The bibliography', ...(garden && { garden }) },
    <article class="handbook sources">
      <nav aria-label="Handbook">
        <a href={handbookPath()}>The handbook</a>
      </nav>
      <h1>The bibliography</h1>
      <p>
        Every book and page that some figure was taken from, and how much of it was read. A figure on the pages of the
        handbook, or on the page of a task, leads here to what it was taken from.
      </p>
      <section>
        <h2>Without a book</h2>
        <dl class="bibliography">
          {Object.entries(OTHER_SOURCES).map(([name, { anchor, words }]) => (
            <div id={anchor}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </section>
      {SOURCE_PARTS.map(({ prefix, heading }) => (
        <section>
          <h2>{heading}</h2>
          <dl class="bibliography">
            {sources
              .filter(({ id }) => id.startsWith(`${prefix}:`))
              .map((source) => (
                <Entry source={source} known={known} />
              ))}
          </dl>
        </section>
      ))}
    </article>,
  );
}

const Entry = ({ source: { id, citation, read }, known }: { source: Source; known: Docs }) => (
  <div id={id}>
    <dt>
      <code>{id}</code>
    </dt>
    <dd>
      {citation}
      <span class="under">{READ_WORDS[read]}.</span>
      <LeansOnIt leaning={leaningOn(id, known)} known={known} />
    </dd>
  </div>
);

/** Names of one kind that are listed before the rest are only counted. House default. */
const LISTED = 12;

const LeansOnIt = ({ leaning: { rules, rows, pages }, known }: { leaning: Leaning; known: Docs }) => (
  <>
    {rules.length > 0 && (
      <span class="under">
        Rules:{' '}
        {rules.map(({ rule, page: on }, at) => (
          <>
            {at > 0 && ', '}
            <a href={handbookPath(on, rule)}>{rule}</a>
          </>
        ))}
        .
      </span>
    )}
    {rows.map(({ table, names }) => (
      <span class="under">
        {capital(table)}: {names.slice(0, LISTED).join(', ')}
        {names.length > LISTED && ` and ${names.length - LISTED} more`}.
      </span>
    ))}
    {pages.length > 0 && (
      <span class="under">
        Named on:{' '}
        {pages.map((name, at) => (
          <>
            {at > 0 && ', '}
            <a href={handbookPath(name)}>{known.pages.get(name)?.title}</a>
          </>
        ))}
        .
      </span>
    )}
  </>
);
