import { expect, it } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import { northernFile } from './gardens.ts';
import { household, later } from './household.ts';

it('a feed that was closed while its member was renamed and given other work is theirs when it is opened again', async () => {
  const { steward, garden, clock } = await household(
    northernFile({ household: { members: [{ id: 'ada', name: 'Ada' }] } }),
  );
  const feed = await steward.addFeed(garden, 'Ada', { ...PLAIN_SHAPE, person: 'Ada' });
  const before = (await steward.feedBody(feed.token))?.body.match(/BEGIN:VEVENT/g)?.length;
  expect(before).toBeGreaterThan(0);
  await steward.revokeFeed(garden, feed.id);
  later(clock);
  const member = { id: 'ada', name: 'Ada Love', practices: ['composting' as const] };
  await steward.report(garden, { kind: 'member-kept', member, formerName: 'Ada' }, 'ada');
  await steward.reopenFeed(garden, feed.id);
  later(clock);
  const [now] = await steward.feeds(garden);
  expect([now?.shape.person, now?.shapeRevision]).toEqual(['Ada Love', 1]);
  const after = (await steward.feedBody(feed.token))?.body.match(/BEGIN:VEVENT/g)?.length;
  expect(after).toBeGreaterThan(0);
});
