import { weekList } from '../../digest/week-list.ts';
import { weekListText } from '../../digest/week-text.ts';
import { command } from '../command.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { formatOption, ofOneGarden } from '../options.ts';
import { writeJson } from '../output.ts';
import { dayValue } from '../values.ts';
import { weekJson } from '../week-json.ts';

export const week = command({
  name: 'week',
  about: "Shows this week's tasks, or those of another week.",
  options: {
    week: { flags: '--week <day>', about: 'the week this day falls in', value: dayValue.optional() },
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const { garden, plan } = await steward.view(await chosenGarden(steward, options.garden));
      const { units } = garden.place;
      const list = weekList(plan, garden, options.week ?? plan.today);
      if (options.format === 'json') writeJson(at.stdout, weekJson(list), units);
      else at.stdout.write(weekListText(list, units));
    }),
});
