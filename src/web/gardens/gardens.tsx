/**
 * The gardens of the household: those kept, those being set up, those put away; and putting one away.
 */
import { fullDay } from '../../digest/words.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { ListedDraft } from '../../store/drafts.ts';
import type { PutAway } from '../../store/gardens.ts';
import { bringInPath, GARDENS_PATH, giveBackPath, putAwayPath, weekPath } from '../addresses/addresses.ts';
import { type PageGarden, page } from '../frame/layout.tsx';
import { DraftList, WaysToBegin } from '../set-up/set-up.tsx';

/** A garden in the list. */
export interface ListedGarden {
  id: string;
  name: string;
  isDemo: boolean;
  beds: number;
}

interface GardensPageProps {
  gardens: readonly ListedGarden[];
  drafts: readonly ListedDraft[];
  away: readonly PutAway[];
  units: UnitSystem;
}

/** The page of all gardens; the way to a first one where there is none. */
export function gardensPage({ gardens, drafts, away, units }: GardensPageProps) {
  return page(
    { title: 'Gardens', docs: 'set-up#several-gardens' },
    <article class="gardens">
      <h1>Gardens</h1>
      {gardens.length === 0 && (
        <p>
          No garden is here yet. Setting one up takes about five minutes and ends with the address of a calendar; the
          demo garden is an invented one with a year of work in it.
        </p>
      )}
      <ul class="told-list">
        {gardens.map(({ id, name, isDemo, beds }) => (
          <li>
            <a href={weekPath(id)}>{name}</a>
            <span class="under">
              {isDemo && 'the demo garden, invented to look around in; '}
              {beds === 1 ? 'one bed' : `${beds} beds`}
            </span>
            <span class="row-doings">
              <a class="doing" href={putAwayPath(id)}>
                Put away<span class="unseen"> {name}</span>
              </a>
            </span>
          </li>
        ))}
      </ul>
      <DraftList drafts={drafts} />
      <section>
        <h2>Another garden</h2>
        <WaysToBegin hasDemo={gardens.some(({ isDemo }) => isDemo)} />
        <p class="small">
          A garden that was kept elsewhere <a href={bringInPath()}>comes in with its file</a>.
        </p>
      </section>
      {away.length > 0 && (
        <section>
          <h2>Put away</h2>
          <ul class="told-list">
            {away.map(({ id, name, at }) => (
              <li>
                {name}
                <span class="under">since {fullDay(at.slice(0, 10), units)}</span>
                <form method="post" action={giveBackPath(id)}>
                  <button type="submit">
                    Give it back<span class="unseen">: {name}</span>
                  </button>
                </form>
              </li>
            ))}
          </ul>
        </section>
      )}
    </article>,
  );
}

/** Asks before a garden is put away. */
export function putAwayPage(garden: PageGarden, openFeeds: number) {
  return page(
    { title: 'Put a garden away', garden, docs: 'set-up#several-gardens' },
    <article>
      <h1>Put {garden.name} away?</h1>
      <p>
        It is no longer shown, planned or mailed. {feedsWords(openFeeds)} Nothing is erased: on the page of gardens it
        can be given back at any time, just as it is now.
      </p>
      <form method="post" action={putAwayPath(garden.id)}>
        <button type="submit">Put it away</button>
      </form>
      <p>
        <a href={GARDENS_PATH}>Keep it here</a>
      </p>
    </article>,
  );
}

function feedsWords(count: number): string {
  if (count === 0) return 'It has no open feed.';
  const [which, say] = count === 1 ? ['Its feed', 'tells calendars'] : [`Its ${count} feeds`, 'tell calendars'];
  return `${which} ${say} so for a month and then answer no more, until the garden is given back.`;
}
