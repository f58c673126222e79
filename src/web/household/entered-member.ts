/**
 * The form about somebody of the household: what stands in its fields, and what they come to.
 */
import type { Member, MemberMail } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import {
  ADDRESS_CHARACTERS,
  EVERYBODY,
  isOneLine,
  MAIL_TASKS,
  MEMBER_NAME_CHARACTERS,
  mailAddress,
} from '../../garden/household-file.ts';
import { newMemberId } from '../../garden/member-ids.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { PRACTICE_NAMES } from '../../garden/practice-names.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Weekday } from '../../measures/days.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';

/** The fields as they are shown and come back. */
export interface EnteredMember {
  name: string;
  practices: readonly string[];
  beds: readonly string[];
  /** Empty where they get no mail. */
  mailTo: string;
  mailFrom: string;
  weekday: string;
  hour: string;
  tasks: string;
}

/** What the fields are called on the page. */
export const MEMBER_FIELDS: Readonly<Record<keyof EnteredMember, string>> = {
  name: 'Name',
  practices: 'Which work they see to',
  beds: 'On which beds',
  mailTo: 'Weekly list by mail to',
  mailFrom: 'From another address than usual',
  weekday: 'Sent on',
  hour: 'Hour',
  tasks: 'It holds',
};

/** When a list goes out where nobody has chosen yet: Friday at six, before the weekend's work. House default. */
const USUAL_MAIL = { weekday: '5', hour: '18', tasks: 'own' };

/** The fields of somebody as they are; of somebody new, empty. */
export function enteredOf(member?: Member): EnteredMember {
  const { name = '', practices = [], beds = [], mail } = member ?? {};
  const { to: mailTo = '', from: mailFrom = '', tasks = USUAL_MAIL.tasks } = mail ?? {};
  const when = mail === undefined ? USUAL_MAIL : { weekday: String(mail.weekday), hour: String(mail.hour) };
  return { name, practices, beds, mailTo, mailFrom, weekday: when.weekday, hour: when.hour, tasks };
}

/** The fields of a form that was sent. */
export function enteredIn(form: Form): EnteredMember {
  return {
    name: form.text('name'),
    practices: form.list('practices'),
    beds: form.list('beds'),
    mailTo: form.text('mailTo'),
    mailFrom: form.text('mailFrom'),
    weekday: form.text('weekday'),
    hour: form.text('hour'),
    tasks: form.text('tasks'),
  };
}

/**
 * The member that was entered, or everything that is wrong at once.
 *
 * @param before somebody who is there; without them, somebody new
 */
export function memberEntered(
  entered: EnteredMember,
  { garden, ledger }: Pick<GardenView, 'garden' | 'ledger'>,
  before?: Member,
): { member: Member } | { problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const refuse = (field: keyof EnteredMember, what: string, mend: string): void => {
    problems.push({ where: MEMBER_FIELDS[field], what, mend });
  };
  const names = membersOf(garden)
    .filter((member) => member !== before)
    .map(({ name }) => name);
  refuseName(entered.name, names, refuse);
  const bedIds = garden.beds.map(({ id }) => id);
  const practices = chosen('practices', entered.practices, PRACTICE_NAMES, refuse);
  const beds = chosen('beds', entered.beds, bedIds, refuse);
  const mail = mailEntered(entered, refuse);
  if (problems.length > 0) return { problems };
  return {
    member: {
      id: before?.id ?? newMemberId(ledger, entered.name),
      name: entered.name,
      ...(practices === undefined ? {} : { practices }),
      ...(beds === undefined ? {} : { beds }),
      ...(mail === undefined ? {} : { mail }),
    },
  };
}

type Refuse = (field: keyof EnteredMember, what: string, mend: string) => void;

function refuseName(name: string, others: readonly string[], refuse: Refuse): void {
  const same = others.find((other) => other.toLowerCase() === name.toLowerCase());
  if (name === '') refuse('name', 'It is empty.', 'Give a name, such as Ida.');
  if (name.length > MEMBER_NAME_CHARACTERS)
    refuse('name', `It has ${name.length} characters.`, `Give a name of up to ${MEMBER_NAME_CHARACTERS}.`);
  if (!isOneLine(name)) refuse('name', 'It is more than one line.', 'Give a name on one line, such as Ida.');
  if (name === EVERYBODY) refuse('name', `"${name}" stands for everybody.`, 'Give another name, such as Ida.');
  if (same !== undefined) refuse('name', `"${same}" is in the household already.`, 'Give each a name of their own.');
}

/** The names ticked, in the order they are known in; nothing where it is all of them. */
function chosen<Name extends string>(
  field: 'practices' | 'beds',
  ticked: readonly string[],
  known: readonly Name[],
  refuse: Refuse,
): Name[] | undefined {
  for (const name of ticked.filter((one) => !known.some((each) => each === one)))
    refuse(field, `"${name.slice(0, SHOWN_CHARACTERS)}" is not known here.`, suggestion(name, known));
  const theirs = known.filter((name) => ticked.includes(name));
  return theirs.length === 0 || theirs.length === known.length ? undefined : theirs;
}

/** The mail that was asked for; none without an address it goes to. */
function mailEntered(entered: EnteredMember, refuse: Refuse): MemberMail | undefined {
  const { mailTo, mailFrom } = entered;
  if (mailTo === '') {
    if (mailFrom !== '') {
      const mend = 'Give the address the list goes to, or empty this one.';
      refuse('mailFrom', 'There is no address to send to.', mend);
    }
    return undefined;
  }
  refuseAddress('mailTo', mailTo, refuse);
  if (mailFrom !== '') refuseAddress('mailFrom', mailFrom, refuse);
  const weekday = wholeFrom('weekday', entered.weekday, { least: 1, most: 7, what: 'a day of the week' }, refuse);
  const hour = wholeFrom('hour', entered.hour, { least: 0, most: 23, what: 'a whole hour, 0 to 23' }, refuse);
  const tasks = MAIL_TASKS.find((word) => word === entered.tasks);
  if (tasks === undefined) refuse('tasks', 'Nothing is chosen.', 'Choose their own work or everybody’s.');
  if (weekday === undefined || hour === undefined || tasks === undefined) return undefined;
  const sender = mailFrom === '' ? {} : { from: mailFrom };
  return { to: mailTo, ...sender, weekday: weekday as Weekday, hour, tasks };
}

function refuseAddress(field: 'mailTo' | 'mailFrom', text: string, refuse: Refuse): void {
  if (mailAddress.safeParse(text).success) return;
  const mend = 'Give one address and nothing else, such as ida@example.org.';
  const shown = text.length > ADDRESS_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
  refuse(field, `"${shown}" is not a mail address.`, mend);
}

function wholeFrom(
  field: 'weekday' | 'hour',
  text: string,
  { least, most, what }: { least: number; most: number; what: string },
  refuse: Refuse,
): number | undefined {
  const value = /^\d{1,2}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  const shown = text === '' ? 'It is empty.' : `"${text.slice(0, SHOWN_CHARACTERS)}" cannot be used.`;
  refuse(field, shown, `Choose ${what}.`);
  return undefined;
}
