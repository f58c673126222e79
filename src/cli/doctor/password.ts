/**
 * The password of the household: whether there is one, and whether it is needed where the program listens.
 */
import { isLoopbackName } from '../../web/server.ts';
import type { Settings } from '../settings.ts';
import { type Finding, note, trouble, well } from './finding.ts';

const ABOUT = 'password';
const LOOPBACK = '127.0.0.1';

/** What is found about the password; `isSet` is left out where the database cannot be read. */
export function passwordFindings(
  { address = LOOPBACK, publicUrl }: Pick<Settings, 'address' | 'publicUrl'>,
  isSet: boolean | undefined,
): Finding[] {
  const isAlone = isLoopbackName(address);
  if (isSet === undefined) return [note(ABOUT, 'Whether one is set cannot be told while the database cannot be read.')];
  if (isSet) {
    const found = [well(ABOUT, `One is set: the pages at ${address} ask for it, on this computer too.`)];
    if (isAlone) return found;
    const said = `At ${address} the program speaks plain http: whoever listens in on that network can read the password.`;
    return [...found, note(ABOUT, said)];
  }
  if (!isAlone) {
    return [
      trouble(
        ABOUT,
        `None is set, and others could come in at ${address}: the program does not start there without one.`,
        'Set one with "loamtide password", or leave LOAMTIDE_ADDRESS out.',
      ),
    ];
  }
  const alone = `None is set, and none is needed at ${address}: the pages answer this computer alone.`;
  const proxy =
    ' A proxy before it has to hand on the Host header, or the pages are open to whoever reaches the proxy.';
  return [note(ABOUT, publicUrl === undefined ? alone : alone + proxy)];
}
