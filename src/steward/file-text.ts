/**
 * The text of a file somebody hands in, packed or not.
 */
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';

const GZIP_MARK = [0x1f, 0x8b];

/** Largest text taken in, packed or not: a century of daily weather is under 3 MB. House default. */
const MOST_BYTES = 64 * 1024 * 1024;

/** A text, or why there is none. */
export type FileText = { text: string } | { what: string; mend: string };

/**
 * The text of a file's bytes, unpacked where they are gzip.
 *
 * @param mostBytes how long the text may be, unpacked
 */
export async function textOf(bytes: Uint8Array, mostBytes = MOST_BYTES): Promise<FileText> {
  const packed = GZIP_MARK.every((mark, index) => bytes[index] === mark);
  const plain = packed ? await unpacked(bytes, mostBytes) : bytes;
  if (plain === undefined)
    return { what: 'cannot be unpacked.', mend: 'Pack it again with gzip, or give it unpacked.' };
  if (plain === 'too long' || plain.length > mostBytes)
    return { what: `is longer than ${mostBytes / 1024 / 1024} MiB unpacked.`, mend: 'Give a shorter one.' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(plain) };
  } catch {
    return { what: 'is not UTF-8 text.', mend: 'Save it as UTF-8.' };
  }
}

async function unpacked(bytes: Uint8Array, mostBytes: number): Promise<Uint8Array | 'too long' | undefined> {
  return promisify(gunzip)(bytes, { maxOutputLength: mostBytes }).catch((error: unknown) =>
    error instanceof RangeError ? 'too long' : undefined,
  );
}
