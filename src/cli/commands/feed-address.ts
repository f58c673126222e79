/**
 * Feed addresses as commands show them.
 */
import { feedAddress } from '../../web/addresses/settings.ts';
import type { Settings } from '../command-line/settings.ts';

/** The address of a feed: the public one where there is one, else one that works on this computer only. */
export function addressOf({ port, publicUrl }: Settings, token: string): string {
  return feedAddress({ port, hostNames: [], ...(publicUrl === undefined ? {} : { publicUrl }) }, token);
}

/** Who can reach such an address. */
export function reachNote({ port, publicUrl }: Settings): string {
  return publicUrl === undefined
    ? `Only this computer reaches it, while "loamtide serve" runs at port ${port}; at another port, put that one in the ` +
        'address. For phones set LOAMTIDE_PUBLIC_URL.'
    : 'Whoever has this address can read the plan: pass it on as you would a door key.';
}
