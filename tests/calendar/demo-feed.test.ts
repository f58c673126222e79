import { beforeAll, describe, expect, it } from 'vitest';
import { feedUid } from '../../src/calendar/uid.ts';
import { addDays } from '../../src/measures/days.ts';
import { entryText } from '../../src/schedule/entry-text.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import { openStore } from '../../src/store/store.ts';
import { createApp } from '../../src/web/app.tsx';
import { type SeenEvent, seenByIcalJs, seenByNodeIcal } from './read-feed.ts';

const ANCHOR = '2027-09-08';
/** The feed shows the coming twelve months (docs/feeds.md); the plan looks a month further. */
const LAST_DAY = addDays(ANCHOR, 366);

/** The demo garden's plan beside its feed as the server sends it. */
async function served(): Promise<{ plan: Plan; body: string; token: string }> {
  const clock = { now: () => `${ANCHOR}T12:00:00.000Z`, today: ANCHOR };
  const store = await openStore({ file: ':memory:' });
  const steward = createSteward({ store, clock });
  const gardenId = await layDemo({ steward, clock });
  const [feed] = await steward.feeds(gardenId);
  const token = feed?.token ?? '';
  const app = createApp({ steward, settings: { port: 8137, hostNames: [] } });
  const answer = await app.request(`http://127.0.0.1:8137/feed/${token}.ics`, { headers: { Host: '127.0.0.1:8137' } });
  const body = await answer.text();
  const { plan } = await steward.view(gardenId);
  await steward.close();
  return { plan, body, token };
}

/** What an app should see of a plan: day, title and revision by UID. */
function expectedOf(plan: Plan): Map<string, [string, string, number]> {
  return new Map(
    plan.entries
      .filter(({ state, day }) => state === 'open' && day <= LAST_DAY)
      .map((entry) => [
        feedUid(plan.gardenId, entry.lotId),
        [entry.day, entryText(plan, entry, 'us').title, entry.sequence],
      ]),
  );
}

function seen(events: readonly SeenEvent[]): Map<string, [string, string, number]> {
  return new Map(events.map(({ uid, day, title, sequence }) => [uid, [day, title, sequence]]));
}

// Read back by two calendar libraries that know nothing of each other or of this project.
describe("the demo garden's feed over HTTP", () => {
  let feed: Awaited<ReturnType<typeof served>>;
  beforeAll(async () => {
    feed = await served();
  });

  it.each([
    ['ical.js', seenByIcalJs],
    ['node-ical', seenByNodeIcal],
  ])('holds just the entries of the plan, each on its day, as %s reads it', (_, read) => {
    const expected = expectedOf(feed.plan);
    expect(expected.size).toBeGreaterThan(30);
    expect(seen(read(feed.body))).toEqual(expected);
  });

  it('tells nobody its own address', () => {
    expect(feed.token).toHaveLength(43);
    expect(feed.body).not.toContain(feed.token);
  });
});
