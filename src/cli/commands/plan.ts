import { overloadSentences } from '../../digest/overload-words.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { Plan } from '../../schedule/plan.ts';
import { feedTextOf } from '../../steward/feeds/feed-text.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { dayValue } from '../command-line/values.ts';
import { writeJson, writeLines } from '../text/output.ts';
import { planLines } from '../text/plan-text.ts';
import { taskJson } from '../text/task-json.ts';

/** Days shown from the first day on, when no last day is named: twelve months, a leap day included. */
const DAYS_SHOWN = 366;

export const plan = command({
  name: 'plan',
  about: 'Shows the dated tasks of the coming twelve months, or of a span of days.',
  options: {
    from: { flags: '--from <day>', about: 'first day (default: today)', value: dayValue.optional() },
    to: { flags: '--to <day>', about: 'last day (default: twelve months on)', value: dayValue.optional() },
    ...ofOneGarden,
    format: formatOption('text', 'json', 'ics'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const view = await steward.view(await chosenGarden(steward, options.garden));
      const { garden } = view;
      const { today } = view.plan;
      const span = spanOf(options.from ?? today, options.to);
      const shown = within(view.plan, span);
      if (options.format === 'ics') at.stdout.write(feedTextOf({ ...view, plan: shown }).body);
      else if (options.format === 'json') {
        const overloads = view.plan.overloads ?? [];
        const told = overloads.map((each) => ({ ...each, sentences: overloadSentences(each, view.plan, garden) }));
        const tasks = shown.tasks.map(taskJson);
        writeJson(at.stdout, { garden: garden.id, today, tasks, overloads: told }, garden.place.units);
      } else writeLines(at.stdout, planLines(garden, shown, span));
    }),
});

interface Span {
  from: Day;
  to: Day;
}

function spanOf(from: Day, wanted: Day | undefined): Span {
  const to = wanted ?? addDays(from, DAYS_SHOWN);
  if (from <= to) return { from, to };
  throw refusal(
    'Nothing was done.',
    '--to',
    `"${to}" lies before ${from}.`,
    'Give a last day that is not before the first.',
  );
}

/** The part of a plan that falls on some days. */
function within(plan: Plan, { from, to }: Span): Plan {
  const inside = ({ day }: { day: Day }): boolean => day >= from && day <= to;
  return { ...plan, tasks: plan.tasks.filter(inside), entries: plan.entries.filter(inside) };
}
