/**
 * Things a garden was told of, each a sentence with its links: how the page "The garden" lists them.
 */
import type { PropsWithChildren } from 'hono/jsx';

/** A link beside what it is about; `about` is said to whoever hears the page instead of seeing it. */
export interface Doing {
  href: string;
  words: string;
  about?: string;
}

/** Links in a row. */
export const Doings = ({ doings }: { doings: readonly Doing[] }) => (
  <span class="under doings">
    {doings.map(({ href, words, about }) => (
      <>
        <a class="doing" href={href} aria-label={about === undefined ? undefined : `${words}: ${about}`}>
          {words}
        </a>{' '}
      </>
    ))}
  </span>
);

/** One thing: what it is, what more is known of it, and what can be done about it. */
export interface ToldRow {
  words: string;
  more?: readonly string[];
  doings: readonly Doing[];
}

interface ToldListProps {
  rows: readonly ToldRow[];
  /** What stands there while there is none: what to do next, and what for. */
  empty: string;
}

/** Things in a list; or why one would tell of them. */
export const ToldList = ({ rows, empty }: ToldListProps) =>
  rows.length === 0 ? (
    <p>{empty}</p>
  ) : (
    <ul class="list-told">
      {rows.map(({ words, more = [], doings }) => (
        <li>
          <span>
            {words}
            {more.map((line) => (
              <span class="under">{line}</span>
            ))}
          </span>
          <Doings doings={doings} />
        </li>
      ))}
    </ul>
  );

/** A section of the page, with the links that are about all of it at its end. */
export const ToldSection = ({
  id,
  heading,
  doings,
  children,
}: PropsWithChildren<{ id: string; heading: string; doings: readonly Doing[] }>) => (
  <section id={id}>
    <h2>{heading}</h2>
    {children}
    <p class="told-doings">
      <Doings doings={doings} />
    </p>
  </section>
);
