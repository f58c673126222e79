/**
 * How the program is reached, and how its mail leaves: from the settings, and where it is wished by asking.
 */
import { knock } from '../../steward/post/knock.ts';
import { type MailServer, needsSecretLine, serverName } from '../../steward/post/mail-server.ts';
import type { Settings } from '../command-line/settings.ts';
import { type Finding, note, trouble, well } from './finding.ts';

/** How long an address may take to answer, in milliseconds. House default. */
const ANSWER_MS = 10_000;

/** What is found about mail; the server is asked, and handed nothing, where `ask` says so. */
export async function mailFindings(
  { mailServer, mailFrom }: Pick<Settings, 'mailServer' | 'mailFrom'>,
  ask: boolean,
): Promise<Finding[]> {
  const about = 'mail';
  if (mailServer === undefined)
    return [note(about, 'No mail server is set: weekly lists are written as files into the outbox.')];
  const found = [well(about, `Lists are handed in at ${told(mailServer)}.`)];
  if (mailFrom === undefined) {
    found.push(note(about, 'LOAMTIDE_MAIL_FROM is not set: a member whose own settings name no sender gets no list.'));
  }
  if (!ask) return [...found, note(about, 'The server was not asked; --mail asks it, and sends nothing.')];
  const against = await knock(mailServer);
  const answered =
    against === undefined
      ? well(about, 'The server takes the login. Nothing was sent.')
      : trouble(about, against, MEND_MAIL);
  return [...found, answered];
}

const MEND_MAIL = 'Mend LOAMTIDE_SMTP_URL as it says, and look again with --mail.';

function told(server: MailServer): string {
  const login = server.login === undefined ? 'without a login' : 'with a login';
  return `${serverName(server)}, ${login}, ${needsSecretLine(server) ? 'by a secret line only' : 'on this computer'}`;
}

/** What is found about the public address; it is asked, by what the program here answers, where `ask` says so. */
export async function publicFindings(
  { publicUrl, port }: Pick<Settings, 'publicUrl' | 'port'>,
  ask: boolean,
): Promise<Finding[]> {
  const about = 'public address';
  if (publicUrl === undefined) return [note(about, 'None is set: feeds are read on this computer only.')];
  const found = [well(about, `Feeds and links are told under ${publicUrl.href}`)];
  if (publicUrl.protocol === 'http:') {
    found.push(
      note(
        about,
        'It is plain http: whoever listens on the way can read addresses of feeds. Outside the house use https.',
      ),
    );
  }
  if (!ask) return [...found, note(about, 'It was not asked; --public asks it.')];
  return [...found, await asked(publicUrl, new URL(`http://127.0.0.1:${port}`))];
}

/** Whether the program behind a public address is the one that runs here: both tell the number of their run. */
async function asked(publicUrl: URL, here: URL): Promise<Finding> {
  const about = 'public address';
  const own = await runAt(here);
  if (!('run' in own)) {
    const said = `The program does not answer at ${here.href} (${own.against}), so the public address has nothing to be held against.`;
    return trouble(about, said, 'Start it, with LOAMTIDE_PORT set as it is here, and look again.');
  }
  const there = await runAt(publicUrl);
  if (!('run' in there)) {
    const mend =
      'See that the name leads here, that the proxy runs and passes /health on, and that this computer is on the network.';
    return trouble(about, `${publicUrl.href} does not answer as this program does (${there.against}).`, mend);
  }
  if (there.run === own.run) return well(about, `${publicUrl.href} leads to the program that runs here.`);
  return trouble(
    about,
    `${publicUrl.href} leads to another run of Loamtide than the one here.`,
    'Let the proxy pass requests on to this one.',
  );
}

/** The number of the run that answers at an address, or what stood against it. */
async function runAt(address: URL): Promise<{ run: string } | { against: string }> {
  try {
    const answer = await fetch(new URL('/health', address), {
      signal: AbortSignal.timeout(ANSWER_MS),
      redirect: 'manual',
    });
    const told: unknown = await answer.json().catch(() => undefined);
    const run = typeof told === 'object' && told !== null && 'run' in told ? told.run : undefined;
    return typeof run === 'string' ? { run } : { against: `it answered ${answer.status}, not as this program does` };
  } catch (error) {
    const cause = error instanceof Error && error.cause instanceof Error ? error.cause : error;
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : undefined;
    return { against: code ?? (cause instanceof Error ? cause.message : String(cause)) };
  }
}
