/**
 * Which of a garden's feeds are a member's.
 */
import type { Feed } from '../store/feeds.ts';

/** The open feeds of somebody: of their own work, and of everybody's where it was made for them. */
export function feedsOf(feeds: readonly Feed[], name: string): Feed[] {
  return feeds.filter(
    ({ revokedAt, shape }) => revokedAt === undefined && (shape.person === name || shape.reader === name),
  );
}
