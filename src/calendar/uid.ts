/**
 * Names of events that last: the same entry has the same UID in every rendering, on every machine, and nobody can read
 * a garden out of it (RFC 7986, 5.3).
 */
import { createHash } from 'node:crypto';
import type { Day } from '../measures/days.ts';

/** A UUID drawn at random once; it keeps Loamtide's names apart from everyone else's. */
const LOAMTIDE_NAMESPACE = '4a7d069c-fd08-40fe-b676-ff61166aa520';

/** UID of a calendar entry, from the garden's id and the entry's `lotId`: the same in every feed that shows it. */
export function feedUid(gardenId: string, lotId: string): string {
  return uidOf([gardenId, lotId]);
}

/** UID of a whole day's entry. Two feeds may gather different work on one day, so that each has names of its own. */
export function dayUid(gardenId: string, feedId: string, day: Day): string {
  return uidOf([gardenId, feedId, day]);
}

/** UID of an event written as a to-do: one name may not stand for two kinds of component (RFC 4791, 4.1). */
export function todoUid(eventUid: string): string {
  return uidOf(['to-do', '', '', eventUid]);
}

function uidOf(parts: readonly string[]): string {
  return `${nameUuid(LOAMTIDE_NAMESPACE, JSON.stringify(parts))}@loamtide`;
}

/** UID of the one event of a feed address that was closed. Three names, so that it is no entry's. */
export function closedUid(gardenId: string, feedId: string): string {
  return `${nameUuid(LOAMTIDE_NAMESPACE, JSON.stringify([gardenId, 'closed', feedId]))}@loamtide`;
}

/** Version 5 UUID of a name within a namespace UUID (RFC 9562, 5.5). */
export function nameUuid(namespace: string, name: string): string {
  const digest = createHash('sha1')
    .update(Buffer.from(namespace.replaceAll('-', ''), 'hex'))
    .update(name)
    .digest();
  digest.writeUInt8((digest.readUInt8(6) & 0x0f) | 0x50, 6);
  digest.writeUInt8((digest.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = digest.toString('hex', 0, 16);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
