/**
 * What a password is kept as: scrypt (RFC 7914) with a salt of its own, and beside it what it cost, so that the cost can be
 * raised later and older hashes still be read.
 */
import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

/** What one hash costs, by the names of RFC 7914, 2. */
export interface ScryptCost {
  /** Base-2 logarithm of N, the cost in work and memory. */
  logN: number;
  /** Block size. */
  r: number;
  /** Parallelization: how often the work is done over. */
  p: number;
}

/**
 * OWASP Password Storage Cheat Sheet: one of the settings it names as equal to N = 2^17, r = 8, p = 1. This one takes 32 MiB
 * (128 · N · r octets) in place of 128, which a small computer at home can spare.
 */
export const COST: ScryptCost = { logN: 15, r: 8, p: 3 };

/** As RustCrypto and libsodium make it: 128 bits, four times what NIST SP 800-63B, 3.1.1.2 asks for at least. */
const SALT_OCTETS = 16;

/** 256 bits: the strength of the SHA-256 inside. */
const HASH_OCTETS = 32;

/** Dearest hash that is read: what 128 · N · r may come to, in octets. House default: sixteen times the present cost. */
const MOST_OCTETS = 512 * 1024 * 1024;

const KEPT = /^scrypt\$ln=(\d{1,2}),r=(\d{1,2}),p=(\d{1,2})\$([\w-]{16,128})\$([\w-]{43})$/;

const derive = promisify<string, Buffer, number, ScryptOptions, Buffer>(scrypt);

/** "scrypt$ln=15,r=8,p=3$SALT$HASH", salt and hash in base64url. */
export async function passwordHash(password: string, cost: ScryptCost): Promise<string> {
  const salt = randomBytes(SALT_OCTETS);
  const hash = await scryptOf(password, { salt, cost, octets: HASH_OCTETS });
  const { logN, r, p } = cost;
  return `scrypt$ln=${logN},r=${r},p=${p}$${salt.toString('base64url')}$${hash.toString('base64url')}`;
}

/**
 * Whether a password is the one a kept hash was made from. Takes as long for a wrong one as for the right one.
 *
 * @throws {Error} when the kept text is no hash of ours
 */
export async function isPassword(password: string, kept: string): Promise<boolean> {
  const { cost, salt, hash } = readHash(kept);
  return timingSafeEqual(await scryptOf(password, { salt, cost, octets: hash.length }), hash);
}

/** Whether a hash was made at another cost than is asked now. */
export function isOutdated(kept: string, asked: ScryptCost): boolean {
  const { cost } = readHash(kept);
  return cost.logN !== asked.logN || cost.r !== asked.r || cost.p !== asked.p;
}

/** The function itself: RFC 7914, 6. */
export async function scryptOf(
  password: string,
  { salt, cost: { logN, r, p }, octets }: { salt: Buffer; cost: ScryptCost; octets: number },
): Promise<Buffer> {
  const N = 2 ** logN;
  // Node refuses what needs more than it was told; it counts 128 · r · (N + p) and some.
  return derive(password, salt, octets, { N, r, p, maxmem: 128 * r * (N + p + 2) });
}

function readHash(kept: string): { cost: ScryptCost; salt: Buffer; hash: Buffer } {
  const [, logN = '', r = '', p = '', salt = '', hash = ''] = KEPT.exec(kept) ?? [];
  const cost = { logN: Number(logN), r: Number(r), p: Number(p) };
  if (hash === '' || 128 * 2 ** cost.logN * cost.r > MOST_OCTETS) {
    throw new Error('The household password is not kept in a form this program knows. Set it anew: loamtide password');
  }
  return { cost, salt: Buffer.from(salt, 'base64url'), hash: Buffer.from(hash, 'base64url') };
}
