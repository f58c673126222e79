import type { LocalClock } from '../../digest/words.ts';
import { weekSpan } from '../../digest/words.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { standingInWords, wayInWords } from '../../steward/post/standing-words.ts';
import type { Delivery } from '../../store/deliveries.ts';
import { type Call, command, switchOption } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { textValue } from '../command-line/values.ts';
import { writeJson, writeLines } from '../text/output.ts';

const memberValue = textValue('Name a member of the household who gets lists, such as Ida.').optional();

const options = {
  send: switchOption('--send', 'send what is due now, once each'),
  again: { flags: '--again <member>', about: 'send this member the list of now once more', value: memberValue },
  preview: {
    flags: '--preview <member>',
    about: 'print the next list to this member as the message it goes out as',
    value: memberValue,
  },
  ...ofOneGarden,
  format: formatOption('text', 'json'),
};

export const mail = command({
  name: 'mail',
  about: 'Shows whose weekly list goes out by mail when, what was sent and what is wrong; sends what is due.',
  options,
  async run(call) {
    const { send, again, preview } = call.options;
    const asked = [send && '--send', again && '--again', preview && '--preview'].filter((word) => word !== undefined);
    if (asked.length > 1) {
      throw refusal('Nothing was sent.', asked.join(' and '), 'cannot be given together.', 'Give one of them.');
    }
    // A day stood on instead would be written into the log, and what really falls due then would count as sent.
    if (call.options.today !== undefined && (send || again !== undefined)) {
      throw refusal('Nothing was sent.', '--today', `cannot be given with ${asked.join(' and ')}.`, MEND_TODAY);
    }
    await withHousehold(call, { onlyLook: asked.length === 0 || preview !== undefined }, async ({ steward }) => {
      if (preview !== undefined) await previewed(call, steward, preview);
      else if (again !== undefined)
        await told(call, steward, [await steward.sendAgain(await gardenIn(call, steward), again)]);
      else if (send) {
        const { garden } = call.options;
        const one = garden === undefined ? {} : { gardenId: await chosenGarden(steward, garden) };
        await told(call, steward, await steward.sendDue(one));
      } else await standings(call, steward);
    });
  },
});

const MEND_TODAY = 'Lists go out on the day it is. Leave it out, or look at a list with --preview.';

type MailCall = Call<typeof options>;

const gardenIn = (call: MailCall, steward: Steward) => chosenGarden(steward, call.options.garden);

async function previewed(call: MailCall, steward: Steward, member: string): Promise<void> {
  const { source } = await steward.previewMail(await gardenIn(call, steward), member);
  call.at.stdout.write(source.toString('utf8'));
}

/** Says how each list ended; one that did not go out is a refusal with its mend. */
async function told(
  { at, options: { format } }: MailCall,
  steward: Steward,
  ended: readonly Delivery[],
): Promise<void> {
  if (format === 'json') writeJson(at.stdout, { tried: ended }, 'metric');
  else if (ended.length === 0) writeLines(at.stdout, ['Nothing is due.']);
  else for (const delivery of ended.filter(isSent)) writeLines(at.stdout, [await sentLine(steward, delivery)]);
  const mend = wayInWords(steward.mailWay());
  const wrong = ended
    .filter((delivery) => !isSent(delivery))
    .map(async (delivery) => ({ where: await readerOf(steward, delivery), what: delivery.problem ?? '', mend }));
  if (wrong.length > 0) throw new InputRefused('Not every list went out.', await Promise.all(wrong));
}

async function sentLine(steward: Steward, delivery: Delivery): Promise<string> {
  const { garden } = await steward.view(delivery.gardenId);
  const how = delivery.way === 'outbox' ? 'written into the outbox' : 'sent';
  return `${await readerOf(steward, delivery)}: the list of ${weekSpan(delivery.monday, garden.place.units)}, ${how}.`;
}

/** What the member is called whom a list was sent to. */
async function readerOf(steward: Steward, { gardenId, member }: Delivery): Promise<string> {
  const { garden } = await steward.view(gardenId);
  return membersOf(garden).find(({ id }) => id === member)?.name ?? member;
}

function isSent({ state }: Delivery): boolean {
  return state === 'sent';
}

async function standings(call: MailCall, steward: Steward): Promise<void> {
  const { at, options } = call;
  const id = await gardenIn(call, steward);
  const { garden } = await steward.view(id);
  const clock: LocalClock = { timeZone: garden.place.timeZone, units: garden.place.units };
  const all = await steward.mailStandings(id);
  const way = steward.mailWay();
  if (options.format === 'json') return writeJson(at.stdout, { garden: id, way, members: all }, clock.units);
  writeLines(at.stdout, [wayInWords(way)]);
  if (all.length === 0) writeLines(at.stdout, ['Nobody gets lists by mail yet. The Household page sets it.']);
  for (const standing of all) {
    const { next, sent, wrong } = standingInWords(standing, clock);
    const lines = [next, sent, ...(wrong === undefined ? [] : [wrong])];
    writeLines(at.stdout, ['', `${standing.member} <${standing.mail.to}>`, ...lines.map((line) => `  ${line}`)]);
  }
}
