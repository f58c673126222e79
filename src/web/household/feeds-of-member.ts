/**
 * Which of a garden's feeds are a member's.
 */
import { isReadBy, memberOfFeed } from '../../calendar/feed-shape.ts';
import type { Member } from '../../garden/household.ts';
import type { Feed } from '../../store/feeds.ts';

/** The open feeds of somebody: of their own work, and of everybody's where it was made for them. */
export function feedsOf(feeds: readonly Feed[], member: Pick<Member, 'id' | 'name'>): Feed[] {
  return feeds.filter(
    ({ revokedAt, shape }) =>
      revokedAt === undefined && (memberOfFeed(shape, [member]) !== undefined || isReadBy(shape, member)),
  );
}
