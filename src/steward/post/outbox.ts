/**
 * The outbox: lists as files that any mail program opens, where there is no mail server to hand them to.
 */
import { createHash, randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Day } from '../../measures/days.ts';

/** Which list a file holds. */
interface OutboxName {
  gardenId: string;
  member: string;
  monday: Day;
}

/** Octets of the hash that keep apart members whose names are spelt alike in a file's name. */
const MARK_OCTETS = 4;

/** "2027-04-19.hollow-lane.ida.1f0c52aa.eml": the same for a week and member, whatever the member is called. */
function outboxFile({ gardenId, member, monday }: OutboxName): string {
  const plain = (text: string): string =>
    text
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '');
  const mark = createHash('sha256')
    .update(JSON.stringify([gardenId, member]))
    .digest('hex')
    .slice(0, 2 * MARK_OCTETS);
  const words = [plain(gardenId).slice(0, 60), plain(member).slice(0, 60)].filter((word) => word !== '');
  return [monday, ...words, mark, 'eml'].join('.');
}

/**
 * Writes a message into the folder, whole or not at all, in place of one of the same name: for its owner alone, since
 * it may hold links that answer for a member. The folder is made where there is none.
 *
 * @returns the file's name in the folder
 */
export async function putInOutbox(folder: string, name: OutboxName, message: Buffer): Promise<string> {
  const file = outboxFile(name);
  const unfinished = join(folder, `${file}.${randomBytes(6).toString('hex')}.unfinished`);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  try {
    const handle = await open(unfinished, 'wx', 0o600);
    try {
      await handle.writeFile(message);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(unfinished, join(folder, file));
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
  return file;
}
