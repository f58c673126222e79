/**
 * Files that commands read and write.
 */
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { textOf } from '../steward/file-text.ts';
import { refusal } from './refusal.ts';

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

async function readBytes(cwd: string, name: string): Promise<Buffer> {
  try {
    return await readFile(resolve(cwd, name));
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT') throw unreadable(name, 'does not exist.', 'Check the name and the folder.');
    if (code === 'EISDIR') throw unreadable(name, 'is a folder.', 'Name a file in it.');
    if (code === 'EACCES') throw unreadable(name, 'may not be read.', 'Give yourself leave to read it.');
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
    await rm(unfinished, { force: true });
    throw unwritable(name, codeOf(error)) ?? error;
  }
}

/** Why a file could not be written, where that is the gardener's to mend. */
export function unwritable(name: string, code: string | undefined) {
  const about = 'Nothing was written.';
  if (code === 'ENOENT') return refusal(about, name, 'lies in a folder that does not exist.', 'Make the folder first.');
  if (code === 'EISDIR') return refusal(about, name, 'is a folder.', 'Name a file in it.');
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
