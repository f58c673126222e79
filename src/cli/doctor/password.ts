/**
 * The password of the household: whether there is one, and whether it is needed where the program listens.
 */
import { isLoopbackName } from '../../web/server.ts';
import { LOOPBACK } from '../command-line/options.ts';
import type { Settings } from '../command-line/settings.ts';
import { type Finding, note, trouble, well } from './finding.ts';

const ABOUT = 'password';
/** Where the pages are answered, by the settings and by what serve is given beside them. */
type Listening = Pick<Settings, 'address' | 'publicUrl'> & { host?: string | undefined };

/** What is found about the password; `isSet` is left out where the database cannot be read. */
export function passwordFindings(listening: Listening, isSet: boolean | undefined): Finding[] {
  const found = passwordAt(listening.host ?? listening.address ?? LOOPBACK, listening.publicUrl, isSet);
  // What another program is given on its command line is not seen from here.
  return listening.host === undefined && isSet === false ? [...found, note(ABOUT, GIVE_HOST)] : found;
}

const GIVE_HOST = 'Is serve started with --host? That is not seen from here: look again with the same --host.';

function passwordAt(address: string, publicUrl: URL | undefined, isSet: boolean | undefined): Finding[] {
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
        'Set one with "loamtide password", or leave LOAMTIDE_ADDRESS and --host out.',
      ),
    ];
  }
  const alone = `None is set, and none is needed at ${address}: the pages answer this computer alone.`;
  const proxy =
    ' A proxy before it has to hand on the Host header, or the pages are open to whoever reaches the proxy.';
  return [note(ABOUT, publicUrl === undefined ? alone : alone + proxy)];
}
