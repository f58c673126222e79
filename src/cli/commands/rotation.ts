import { MOST_SEASONS } from '../../practices/rotation-plan/garden-problem.ts';
import { planningInput } from '../../steward/planner.ts';
import { proposeRotation } from '../../steward/rotation-plan/propose.ts';
import { command, switchOption } from '../command.ts';
import { chosenGarden, withHousehold } from '../household.ts';
import { formatOption, ofOneGarden } from '../options.ts';
import { writeJson, writeLines } from '../output.ts';
import { refusal } from '../refusal.ts';
import { rotationJson, rotationLines } from '../rotation-text.ts';
import { numberValue } from '../values.ts';

export const rotation = command({
  name: 'rotation',
  about: 'Proposes which wished crop goes in which bed, for the next season or several.',
  options: {
    years: {
      flags: '--years <number>',
      about: `how many seasons, 1 to ${MOST_SEASONS} (default: 1)`,
      value: numberValue('seasons', 1, 1, MOST_SEASONS).optional(),
    },
    anew: switchOption('--anew', 'leave out what is planned for those seasons already'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      const { garden, plan } = view;
      if (garden.wishes.length === 0)
        throw refusal(
          'Nothing was proposed.',
          'wishes',
          'are missing from the garden file.',
          'Add what you want to grow, such as: wishes: [{ crop: tomato, areaM2: 3 }]',
        );
      const ask = { years: Math.floor(options.years ?? 1), anew: options.anew ?? false };
      const proposal = await proposeRotation(planningInput(view), ask);
      const { units } = garden.place;
      if (options.format === 'json') writeJson(at.stdout, { garden: gardenId, ...rotationJson(proposal) }, units);
      else writeLines(at.stdout, rotationLines(proposal, { units, today: plan.today }));
    }),
});
