/**
 * What went wrong between us and a mail server: whether it may pass, and in words with a mend and without secrets.
 */
import { type MailServer, serverName } from './mail-server.ts';

/** nodemailer's kinds of fault of a line that was broken off, and of one on which nothing is said. */
export const LINE_BROKEN = 'ECONNECTION';
export const TOO_SLOW = 'ETIMEDOUT';

/** The parts of a fault that tell what it was. */
interface SmtpFault {
  message: string;
  /** nodemailer's kind of fault, such as EAUTH. */
  kind: string;
  /** The system's own code beneath it, such as ECONNREFUSED. */
  cause: string;
  /** What the server answered, and the number it began with; 0 where it did not answer. */
  answer: string;
  number: number;
  /** The command it answered to, such as "RCPT TO". */
  command: string;
}

/** Reads a fault thrown by the sending. */
export function faultOf(error: unknown): SmtpFault {
  const field = (name: string): unknown =>
    typeof error === 'object' && error !== null ? Object.getOwnPropertyDescriptor(error, name)?.value : undefined;
  const text = (name: string): string => String(field(name) ?? '');
  return {
    message: error instanceof Error ? error.message : String(error),
    kind: text('code'),
    cause: text('originalCode'),
    answer: text('response'),
    number: Number(field('responseCode')) || 0,
    command: text('command'),
  };
}

/**
 * Answers that speak of the login or the line and not of this message: RFC 4954, 6 and RFC 3207, 4. They are mended in the
 * settings, so the list waits.
 */
const ABOUT_THE_LOGIN = [530, 534, 535, 538];

/** Answers to these commands speak of this message and its addresses. */
const ABOUT_THE_MESSAGE = ['MAIL FROM', 'RCPT TO', 'DATA'];

/** RFC 5321, 4.2.1: a 4 is worth another try, a 5 is not. Without an answer it hangs on whether the message was under way. */
export function stateAfter(
  { number, kind, command }: SmtpFault,
  isUnderWay: boolean,
): 'delayed' | 'refused' | 'unknown' {
  if (number === 0) return isUnderWay ? 'unknown' : 'delayed';
  if (number < 500 || kind === 'EAUTH' || ABOUT_THE_LOGIN.includes(number)) return 'delayed';
  return ABOUT_THE_MESSAGE.includes(command) || isUnderWay ? 'refused' : 'delayed';
}

/** What a fault is told with. */
interface FaultTold {
  server: MailServer;
  from: string;
  to: string;
  isUnderWay: boolean;
}

/** A fault in words: what happened, what the server said, and the mend. */
export function faultText(fault: SmtpFault, { server, from, to, isUnderWay }: FaultTold): string {
  const name = `The mail server ${serverName(server)}`;
  const said = fault.answer === '' ? '.' : `; it said "${shortened(fault.answer)}".`;
  const { kind, number, command } = fault;
  if (isUnderWay && number === 0) return BROKEN_OFF;
  if (kind === 'EAUTH' || ABOUT_THE_LOGIN.includes(number)) {
    return `${name} does not take the user and password of LOAMTIDE_SMTP_URL${said} Mend the setting and start again.`;
  }
  if (/CERT|SELF_SIGNED|ALTNAME|ISSUER/.test(fault.cause)) {
    return `${name} could not show who it is (${shortened(fault.message)}). ${MEND_CERTIFICATE}`;
  }
  if (kind === 'ETLS') {
    return `The line to ${serverName(server)} could not be made secret (${shortened(fault.message)}). ${MEND_LINE}`;
  }
  if (number !== 0 && command === 'RCPT TO') return `${name} takes no mail for ${to}${said} ${MEND_ADDRESS}`;
  if (number !== 0 && command === 'MAIL FROM') return `${name} takes no mail from ${from}${said} ${MEND_SENDER}`;
  if (number !== 0) return `${name} did not take the list${said}`;
  if (kind === TOO_SLOW) return `${name} took too long to answer. ${MEND_REACH}`;
  if (kind === LINE_BROKEN && fault.cause === '')
    return `${name} broke the line off before it had the list. ${MEND_LOG}`;
  return `${name} could not be reached (${fault.cause || kind || shortened(fault.message)}). ${MEND_REACH}`;
}

/** What is told of a list that was on its way when something broke off. */
export const BROKEN_OFF =
  'It broke off while the list was handed over, before the mail server said that it has it: it may have arrived or not. ' +
  'It is not sent a second time by itself. Look into the inbox, and send it again where it is not there.';

const MEND_ADDRESS = "Mend the address in the member's mail settings.";
const MEND_SENDER = "Mend LOAMTIDE_MAIL_FROM, or the sender in the member's mail settings.";
const MEND_CERTIFICATE =
  'Name the server as its certificate does, or make the certificate known with NODE_EXTRA_CA_CERTS.';
const MEND_LINE = 'Use smtps:// where the server offers it, or another port.';
const MEND_LOG =
  'It is tried again. Where it goes on, look at the port in LOAMTIDE_SMTP_URL; the log of the server says why.';
const MEND_REACH = 'Look at the name and port in LOAMTIDE_SMTP_URL, and whether this computer is on the network.';

/** Most characters of a server's words that are kept. House default: a line or two. */
const KEPT_CHARACTERS = 200;

/** Somebody else's words as one short line. */
function shortened(text: string): string {
  const line = text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  return line.length > KEPT_CHARACTERS ? `${line.slice(0, KEPT_CHARACTERS)}…` : line;
}

/** A text without the password, in any of the ways it travels. */
export function withoutPassword(text: string, { login }: MailServer): string {
  if (login === undefined) return text;
  const { user, password } = login;
  const coded = (plain: string): string => Buffer.from(plain).toString('base64');
  const spellings = [coded(`\0${user}\0${password}`), coded(password), encodeURIComponent(password), password];
  return spellings.reduce((blotted, secret) => blotted.replaceAll(secret, '[secret]'), text);
}
