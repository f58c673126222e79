/**
 * The text of a file somebody hands in, packed or not.
 */
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';

const GZIP_MARK = [0x1f, 0x8b];

/** Whether bytes begin as gzip does. */
export function isPacked(bytes: Uint8Array): boolean {
  return GZIP_MARK.every((mark, index) => bytes[index] === mark);
}

/** Largest text taken in, packed or not: a century of daily weather is under 3 MB. House default. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** Why a file cannot be read. */
export interface Unread {
  what: string;
  mend: string;
}

/** A text, or why there is none. */
export type FileText = { text: string } | Unread;

export const CANNOT_UNPACK: Unread = {
  what: 'cannot be unpacked.',
  mend: 'Pack it again with gzip, or give it unpacked.',
};
export const NOT_UTF8: Unread = { what: 'is not UTF-8 text.', mend: 'Save it as UTF-8.' };

/**
 * The text of a file's bytes, unpacked where they are gzip.
 *
 * @param mostBytes how long the text may be, unpacked
 */
export async function textOf(bytes: Uint8Array, mostBytes = MOST_BYTES): Promise<FileText> {
  const plain = isPacked(bytes) ? await unpacked(bytes, mostBytes) : bytes;
  if (plain === undefined) return CANNOT_UNPACK;
  if (plain === 'too long' || plain.length > mostBytes)
    return { what: `is longer than ${mostBytes / 1024 / 1024} MiB unpacked.`, mend: 'Give a shorter one.' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(plain) };
  } catch {
    return NOT_UTF8;
  }
}

async function unpacked(bytes: Uint8Array, mostBytes: number): Promise<Uint8Array | 'too long' | undefined> {
  return promisify(gunzip)(bytes, { maxOutputLength: mostBytes }).catch((error: unknown) =>
    error instanceof RangeError ? 'too long' : undefined,
  );
}
