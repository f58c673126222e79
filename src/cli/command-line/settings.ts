/**
 * Settings from the environment, read once at start; every bad one is refused at once.
 */
import { z } from 'zod';
import { mailAddress } from '../../garden/household-file.ts';
import { nearestNames } from '../../garden/nearest-name.ts';
import type { Problem } from '../../garden/problem.ts';
import { LOG_LEVELS, LOG_SHAPES, type LogLevel, type LogShape } from '../../log/line.ts';
import { type MailServer, readMailServer } from '../../steward/post/mail-server.ts';
import { ADDRESS_CHARACTERS, feedAddress } from '../../web/addresses/settings.ts';
import { isNetwork } from '../../web/requests/network.ts';
import { valueProblems } from './refusal.ts';
import { choiceValue, listenAddress, portValue, textValue } from './values.ts';

/** What the environment settles for every command. */
export interface Settings {
  dataFolder: string;
  port: number;
  /** The address of this computer that is listened on; a loopback one where it is left out. */
  address?: string;
  /** Proxies that are believed when they say for whom they ask. */
  trustedProxies?: readonly string[];
  /** The address phones and calendar services reach, when there is one. */
  publicUrl?: URL;
  /** Where weekly lists are handed in; without one they are written as files. */
  mailServer?: MailServer;
  /** Who lists come from where a member's own settings do not say. */
  mailFrom?: string;
  /** The folder lists are written to where there is no mail server; one in the data folder where it is left out. */
  outbox?: string;
  /** How the log is written, and the least that is. */
  log: { shape: LogShape; level: LogLevel };
  /** The folder of daily copies, or "off" for none; one in the data folder where it is left out. */
  copies?: string;
}

const DATA_FOLDER = './data';
const PORT = 8137;
const PREFIX = 'LOAMTIDE_';

/** As long as every token is. */
const ANY_TOKEN = 'x'.repeat(43);

const publicAddress = z
  .url({ protocol: /^https?$/, error: 'Give an address such as https://garden.example.org, or leave it out.' })
  .transform((text) => new URL(text))
  .refine(({ pathname, search, hash, username }) => pathname === '/' && search + hash + username === '', {
    error: 'Give the name and port alone, such as https://garden.example.org: the garden is not kept under a path.',
  })
  .refine(
    (publicUrl) => feedAddress({ port: PORT, hostNames: [], publicUrl }, ANY_TOKEN).length <= ADDRESS_CHARACTERS,
    {
      error: `Give a shorter name: the address of a feed may have ${ADDRESS_CHARACTERS} characters, or apps refuse it.`,
    },
  );

const PROXIES_MEND = 'Give addresses with commas between, such as 127.0.0.1 or 172.16.0.0/12, or leave it out.';

const proxies = z
  .string()
  .transform((text) => text.split(',').map((one) => one.trim()))
  .refine((all) => all.every(isNetwork), { error: PROXIES_MEND });

/** An address that may hold a password: whatever is wrong with it, it is not shown again. */
const mailServer = z.string().transform((text, context) => {
  const read = readMailServer(text.trim());
  if (!('mend' in read)) return read;
  context.addIssue({ code: 'custom', message: read.mend });
  return z.NEVER;
});

const environment = z.object({
  LOAMTIDE_DATA: textValue('Name a folder, such as ./data, or leave it out.').optional(),
  LOAMTIDE_PORT: portValue.optional(),
  LOAMTIDE_ADDRESS: listenAddress.optional(),
  LOAMTIDE_TRUSTED_PROXIES: proxies.optional(),
  LOAMTIDE_PUBLIC_URL: publicAddress.optional(),
  LOAMTIDE_SMTP_URL: mailServer.optional(),
  LOAMTIDE_MAIL_FROM: mailAddress.optional(),
  LOAMTIDE_OUTBOX: textValue('Name a folder, such as ./outbox, or leave it out.').optional(),
  LOAMTIDE_LOG: choiceValue(LOG_SHAPES).optional(),
  LOAMTIDE_LOG_LEVEL: choiceValue(LOG_LEVELS).optional(),
  LOAMTIDE_COPIES: textValue('Name a folder that is there, or "off", or leave it out.').optional(),
});

/** The settings of an environment, or everything that is wrong with it. */
export function readSettings(env: Readonly<Record<string, string | undefined>>): Settings | Problem[] {
  const known = Object.keys(environment.shape);
  const misspelt = Object.keys(env)
    .filter((name) => name.startsWith(PREFIX) && !known.includes(name))
    .map((where) => ({ where, what: 'is not a setting this program knows.', mend: nearestSetting(where, known) }));
  const parsed = environment.safeParse(env);
  if (!parsed.success) return [...misspelt, ...valueProblems(parsed.error, shown(env), (name) => name)];
  if (misspelt.length > 0) return misspelt;
  return settingsOf(parsed.data);
}

function settingsOf(given: z.output<typeof environment>): Settings {
  const { LOAMTIDE_DATA, LOAMTIDE_PORT, LOAMTIDE_PUBLIC_URL, LOAMTIDE_SMTP_URL, LOAMTIDE_MAIL_FROM } = given;
  return {
    dataFolder: LOAMTIDE_DATA ?? DATA_FOLDER,
    port: LOAMTIDE_PORT ?? PORT,
    ...(given.LOAMTIDE_ADDRESS === undefined ? {} : { address: given.LOAMTIDE_ADDRESS }),
    ...(given.LOAMTIDE_TRUSTED_PROXIES === undefined ? {} : { trustedProxies: given.LOAMTIDE_TRUSTED_PROXIES }),
    ...(LOAMTIDE_PUBLIC_URL === undefined ? {} : { publicUrl: LOAMTIDE_PUBLIC_URL }),
    ...(LOAMTIDE_SMTP_URL === undefined ? {} : { mailServer: LOAMTIDE_SMTP_URL }),
    ...(LOAMTIDE_MAIL_FROM === undefined ? {} : { mailFrom: LOAMTIDE_MAIL_FROM }),
    log: { shape: given.LOAMTIDE_LOG ?? 'plain', level: given.LOAMTIDE_LOG_LEVEL ?? 'info' },
    ...(given.LOAMTIDE_OUTBOX === undefined ? {} : { outbox: given.LOAMTIDE_OUTBOX }),
    ...(given.LOAMTIDE_COPIES === undefined ? {} : { copies: given.LOAMTIDE_COPIES }),
  };
}

/** The environment as a refusal may show it. */
function shown(env: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string | undefined>> {
  return env.LOAMTIDE_SMTP_URL === undefined ? env : { ...env, LOAMTIDE_SMTP_URL: '(not shown)' };
}

/** All settings begin alike, so that only the one nearest name is of use. */
function nearestSetting(name: string, known: readonly string[]): string {
  const [nearest] = nearestNames(name, known, 1);
  return nearest === undefined ? `Known are: ${known.join(', ')}.` : `Did you mean ${nearest}?`;
}
