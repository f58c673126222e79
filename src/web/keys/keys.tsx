/**
 * Keys for scripts that tell of piles.
 */
import { LABEL_CHARACTERS } from '../../calendar/typed-shape.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Instant } from '../../measures/days.ts';
import { dayIn } from '../../steward/planning/planner.ts';
import type { ReadingKey } from '../../store/reading-keys.ts';
import { feedsPath, keyRevokePath, keysPath } from '../addresses/addresses.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { Problems, page } from '../frame/layout.tsx';

interface KeysProps {
  garden: Garden;
  /** Every key, revoked ones included. */
  keys: readonly ReadingKey[];
  entered?: string;
  problems?: readonly Problem[];
}

/** The page of a garden's keys. */
export function keysPage({ garden, keys, entered = '', problems = [] }: KeysProps) {
  const day = (at: Instant) => fullDay(dayIn(garden.place.timeZone, at), garden.place.units);
  return page(
    { title: 'Keys for scripts', garden, here: 'feeds' },
    <article class="feeds">
      <h1>Keys for scripts</h1>
      <p>
        A thermometer with a script behind it can tell the heat of a pile by itself. It shows that it may by a key,
        which is good for that and for nothing else. You need none to write readings down on the pages.
      </p>
      <Problems problems={problems} />
      {keys.length === 0 ? (
        <p>There is no key.</p>
      ) : (
        <dl class="feed-list">
          {keys.map(({ id, label, createdAt, revokedAt }) => (
            <>
              <dt>{label}</dt>
              <dd>
                <span class="under">
                  made on {day(createdAt)}
                  {revokedAt !== undefined && `; revoked on ${day(revokedAt)}`}
                </span>
                {revokedAt === undefined && (
                  <span class="under">
                    <a class="doing" href={keyRevokePath(garden.id, id)}>
                      Revoke
                    </a>
                  </span>
                )}
              </dd>
            </>
          ))}
        </dl>
      )}
      <section>
        <h2>A new key</h2>
        <form method="post" action={keysPath(garden.id)}>
          <label>
            What it is for <input type="text" name="label" value={entered} maxlength={LABEL_CHARACTERS} required />
          </label>
          <button type="submit">Make a key</button>
        </form>
        <p class="small">It is shown once, on the page that follows.</p>
      </section>
      <p>
        <a href={feedsPath(garden.id)}>Back to the feeds</a>
      </p>
    </article>,
  );
}

interface NewKeyProps {
  garden: Garden;
  label: string;
  key: string;
  settings: WebSettings;
}

/** A key, this once, with how it is used. */
export function newKeyPage({ garden, label, key, settings: { port } }: NewKeyProps) {
  const pile = garden.piles.at(-1)?.id ?? 'PILE';
  return page(
    { title: 'A new key', garden, here: 'feeds' },
    <article class="feeds">
      <h1>The key “{label}”</h1>
      <p>
        <code class="address">{key}</code>
      </p>
      <p>Copy it now: it is not kept in a form that can be shown again. A reading is sent with</p>
      <p>
        <code class="address">
          curl -X POST http://127.0.0.1:{port}/api/piles/{pile}/readings -H "Authorization: Bearer {key}" -H
          "Content-Type: application/json" -d '{'{"tempC": 58}'}'
        </code>
      </p>
      <p>
        <a href={keysPath(garden.id)}>It is copied</a>
      </p>
    </article>,
  );
}

/** Asks before a key is revoked. */
export function revokeKeyPage(garden: Garden, { id, label }: ReadingKey) {
  return page(
    { title: 'Revoke a key', garden, here: 'feeds' },
    <article>
      <h1>Revoke the key “{label}”?</h1>
      <p>
        What a script sends with it is refused from then on. The readings it told stay. A key cannot be opened again: a
        script that is to go on needs a new one.
      </p>
      <form method="post" action={keyRevokePath(garden.id, id)}>
        <button type="submit">Revoke it</button>
      </form>
      <p>
        <a href={keysPath(garden.id)}>Keep it</a>
      </p>
    </article>,
  );
}
