import { weekListHtml } from '../../digest/week-html.ts';
import { weekList } from '../../digest/week-list.ts';
import { weekListText } from '../../digest/week-text.ts';
import type { Garden } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { dayValue, textValue } from '../command-line/values.ts';
import { writeJson } from '../text/output.ts';
import { weekJson } from '../text/week-json.ts';

export const week = command({
  name: 'week',
  about: "Shows this week's tasks, or those of another week.",
  options: {
    week: { flags: '--week <day>', about: 'the week this day falls in', value: dayValue.optional() },
    person: {
      flags: '--person <name>',
      about: "one member's own (default: everybody's)",
      value: textValue('Name a member of the household.').optional(),
    },
    ...ofOneGarden,
    format: formatOption('text', 'html', 'json'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const { garden, plan } = await steward.view(await chosenGarden(steward, options.garden));
      const { units } = garden.place;
      const reader = options.person === undefined ? {} : { person: nameIn(garden, options.person) };
      const list = weekList(plan, garden, options.week ?? plan.today, reader);
      if (options.format === 'json') writeJson(at.stdout, weekJson(list), units);
      else at.stdout.write(options.format === 'html' ? weekListHtml(list, units) : weekListText(list, units));
    }),
});

/** The name of a member as the garden has it, typed in any case. */
function nameIn({ household }: Pick<Garden, 'household'>, wanted: string): string {
  const names = (household?.members ?? []).map(({ name }) => name);
  const found =
    names.find((name) => name === wanted) ?? names.find((name) => name.toLowerCase() === wanted.toLowerCase());
  if (found !== undefined) return found;
  const mend = names.length === 0 ? 'Name members in the garden file first.' : suggestion(wanted, names);
  throw refusal('Nothing is shown.', '--person', `Nobody called "${wanted}" is in the household.`, mend);
}
