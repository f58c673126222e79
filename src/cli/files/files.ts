/**
 * Files that commands read and write.
 */
import { randomBytes } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { rename, rm, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { linesOfStream } from '../../steward/files/file-lines.ts';
import { MOST_BYTES, textOf } from '../../steward/files/file-text.ts';
import { refusal } from '../command-line/refusal.ts';

/**
 * The text of a file, unpacked where it is gzip.
 *
 * @throws {InputRefused} when it cannot be read as text
 */
export async function readText(cwd: string, name: string): Promise<string> {
  const read = await textOf(await readBytes(cwd, name));
  if ('text' in read) return read.text;
  throw unreadable(name, read.what, read.mend);
}

/**
 * Hands on the lines of a file as they are read, unpacked where it is gzip: a file of any length is read in the same room.
 *
 * @param take is given some lines at a time, and says whether more are wanted
 * @throws {InputRefused} when it cannot be read as text
 */
export async function readLines(cwd: string, name: string, take: (lines: readonly string[]) => boolean): Promise<void> {
  const read = await reading(name, () => linesOfStream(createReadStream(resolve(cwd, name)), take));
  if (read !== undefined) throw unreadable(name, read.what, read.mend);
}

/** The bytes of a file; of one longer than any text taken in, as many as show it. */
async function readBytes(cwd: string, name: string): Promise<Buffer> {
  return reading(name, async () => {
    const chunks: Buffer[] = [];
    for await (const chunk of createReadStream(resolve(cwd, name), { end: MOST_BYTES })) chunks.push(chunk as Buffer);
    return Buffer.concat(chunks);
  });
}

async function reading<Result>(name: string, read: () => Promise<Result>): Promise<Result> {
  try {
    return await read();
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT') throw unreadable(name, 'does not exist.', 'Check the name and the folder.');
    if (code === 'EISDIR') throw unreadable(name, 'is a folder.', 'Name a file in it.');
    if (code === 'EACCES') throw unreadable(name, 'may not be read.', 'Give yourself leave to read it.');
    if (isNoName(code)) throw unreadable(name.slice(0, 200), NO_NAME.what, NO_NAME.mend);
    throw error;
  }
}

/**
 * Writes a file whole or not at all.
 *
 * @throws {InputRefused} when it exists and may not be replaced, or its folder does not exist
 */
export async function writeWhole(cwd: string, name: string, text: string, replace: boolean): Promise<void> {
  const file = resolve(cwd, name);
  if (!replace && existsSync(file)) {
    throw refusal('Nothing was written.', name, 'exists already.', 'Name another file, or add --replace.');
  }
  const unfinished = `${file}.${randomBytes(6).toString('hex')}.unfinished`;
  try {
    await writeFile(unfinished, text, { flag: 'wx' });
    await rename(unfinished, file);
  } catch (error) {
    // Where it could not be made there is none to take away: what is told is why.
    await rm(unfinished, { force: true }).catch(() => undefined);
    throw unwritable(name, codeOf(error)) ?? error;
  }
}

/** Why a file could not be written, where that is the gardener's to mend. */
export function unwritable(name: string, code: string | undefined) {
  const about = 'Nothing was written.';
  if (code === 'ENOENT') return refusal(about, name, 'lies in a folder that does not exist.', 'Make the folder first.');
  if (code === 'EISDIR') return refusal(about, name, 'is a folder.', 'Name a file in it.');
  if (isNoName(code)) return refusal(about, name.slice(0, 200), NO_NAME.what, NO_NAME.mend);
  if (code === 'EACCES' || code === 'EROFS') return refusal(about, name, 'may not be written.', 'Name another folder.');
  return undefined;
}

/** The system's code of an error, such as ENOENT. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}

function unreadable(name: string, what: string, mend: string) {
  return refusal('The file cannot be read.', name, what, mend);
}

const NO_NAME = { what: 'is no name a file can have.', mend: 'Check the name and the folder.' };

/** Whether the system says that there can be no file of a name: too long, or leading through a file or in a ring. */
function isNoName(code: string | undefined): boolean {
  return ['ENAMETOOLONG', 'ENOTDIR', 'ELOOP', 'ERR_INVALID_ARG_VALUE'].includes(code ?? '');
}
