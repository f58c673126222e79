import { afterCutTold } from '../../digest/after-cut-words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Fact } from '../../garden/facts.ts';
import type { Garden, Stand } from '../../garden/garden.ts';
import { REGROWTH_ANSWERS } from '../../garden/stand-file.ts';
import type { Day } from '../../measures/days.ts';
import type { Plan } from '../../schedule/plan.ts';
import { regrowthReport } from '../../steward/facts/regrowth-report.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { bedNamed } from '../command-line/bed-named.ts';
import { command } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { choiceValue, dayValue, textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

export const reportRegrowth = command({
  name: 'regrowth',
  about: 'Answers the look for regrowth after a cover was cut: nothing is green, or it is cut again or sheeted.',
  options: {
    bed: { flags: '--bed <name>', about: 'the bed, by its name or id', value: textValue('Name a bed of the garden.') },
    answer: {
      flags: '--answer <answer>',
      about: 'clean (nothing is green); or it grew again: cut (it is cut again) or sheet (it goes under a sheet)',
      value: choiceValue(['clean', ...REGROWTH_ANSWERS]),
    },
    on: { flags: '--on <day>', about: 'the day it was looked at (default: today)', value: dayValue.optional() },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      const { garden, plan } = view;
      const stand = cutIn(garden, bedNamed(garden.beds, options.bed));
      const on = options.on ?? plan.today;
      const { answer } = options;
      if (answer === 'clean') await steward.markDone(gardenId, [openLook(plan, stand, options.bed)], on, BY);
      else await steward.report(gardenId, regrowthReport(view, stand, { on, answer }), BY);
      const after = await steward.view(gardenId);
      const told = after.ledger.at(-1)?.fact;
      writeLines(at.stdout, [...(told ? inWords(told, garden, plan.today) : []), ...standsNow(after.garden, stand.id)]);
    }),
});

function inWords(fact: Fact, garden: Garden, today: Day): string[] {
  return wrapped(factInWords(fact, garden, today));
}

function standsNow(garden: Garden, standId: string): string[] {
  const stand = garden.stands.find(({ id }) => id === standId);
  return wrapped((stand && afterCutTold(garden, stand)) ?? '');
}

/** The stand of a bed that was cut last. */
function cutIn({ stands }: Garden, { id, name }: { id: string; name: string }): Stand {
  const cut = stands.filter(({ bedId, cutOn }) => bedId === id && cutOn !== undefined);
  const [last] = cut.sort((a, b) => ((a.cutOn ?? '') > (b.cutOn ?? '') ? -1 : 1));
  if (last !== undefined) return last;
  throw refusal(
    'Nothing was told.',
    '--bed',
    `No cover was cut in ${name}.`,
    'Mark it cut first, or name another bed.',
  );
}

function openLook({ tasks }: Plan, { id }: Stand, bed: string): string {
  const look = tasks.find(
    ({ kind, subject, state }) =>
      kind === 'check-regrowth' && subject.id === id && (state === 'open' || state === 'lapsed'),
  );
  if (look !== undefined) return look.key;
  throw refusal(
    'Nothing was told.',
    '--answer',
    `No look for regrowth is open in ${bed}.`,
    'Its cover is over already, or is to be cut or lies under a sheet: see the bed.',
  );
}
