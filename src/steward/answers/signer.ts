/**
 * What signs the links of a garden's mail, and says whether a link was signed by it.
 */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Store } from '../../store/store.ts';
import type { Clock } from '../planning/planner.ts';

/** What a link is for. Each is signed apart, so that a link for one is worth nothing for the other. */
export type LinkUse = 'answer' | 'stop';

/** Signs with a key that it does not hand out. */
export interface Signer {
  sign(use: LinkUse, said: Buffer): Buffer;
  /** Whether a mark is the one {@link sign} gives; takes as long for a wrong one as for the right one. */
  signed(use: LinkUse, said: Buffer, mark: Buffer): boolean;
}

/** 256 bits: as long as what SHA-256 gives, which RFC 2104, 3 asks a key to be at least. */
const KEY_OCTETS = 32;

/** All that SHA-256 gives: a token is then longer than anything else the program prints, and blotted out where it is. */
export const MARK_OCTETS = 32;

/** A signer with a key. */
export function signerWith(key: Buffer): Signer {
  const sign = (use: LinkUse, said: Buffer): Buffer =>
    createHmac('sha256', key).update(`loamtide ${use} link\n`).update(said).digest();
  return {
    sign,
    signed: (use, said, mark) => mark.length === MARK_OCTETS && timingSafeEqual(sign(use, said), mark),
  };
}

/** A signer whose key nobody has: by it no link was ever signed. */
export function strangeSigner(): Signer {
  return signerWith(randomBytes(KEY_OCTETS));
}

/** The signer of the links a garden has sent. Where it has sent none, or is not there, one by which none was ever signed. */
export async function signerOfSent(store: Store, gardenId: string): Promise<Signer> {
  const key = await store.signingKey(gardenId);
  return key === undefined ? strangeSigner() : signerWith(Buffer.from(key, 'base64url'));
}

/** A garden's signer. Its key is made when first it is needed, and stays. */
export async function signerFor(room: { store: Store; clock: Clock }, gardenId: string): Promise<Signer> {
  const { store, clock } = room;
  const known = await store.signingKey(gardenId);
  if (known !== undefined) return signerWith(Buffer.from(known, 'base64url'));
  return store.transaction(async (shelves) => {
    // Another program on the same data may have made it meanwhile.
    const theirs = await shelves.signingKey(gardenId);
    const key = theirs ?? randomBytes(KEY_OCTETS).toString('base64url');
    if (theirs === undefined) await shelves.keepSigningKey(gardenId, key, clock.now());
    return signerWith(Buffer.from(key, 'base64url'));
  });
}
