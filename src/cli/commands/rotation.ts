import { changePreview } from '../../digest/change-preview.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { MOST_SEASONS } from '../../practices/rotation-plan/garden-problem.ts';
import { emptiedTexts } from '../../steward/bed-plan/proposal-words.ts';
import { LEFT_OUT, type TakenPlan, takenPlan } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { proposeRotation, type RotationProposal } from '../../steward/rotation-plan/propose.ts';
import { planTold } from '../../web/words/chosen-words.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { numberValue } from '../command-line/values.ts';
import { writeJson, writeLines } from '../text/output.ts';
import { previewJson, previewLines } from '../text/preview-text.ts';
import { rotationJson, rotationLines } from '../text/rotation-text.ts';

export const rotation = command({
  name: 'rotation',
  about:
    'Proposes which wished crop goes in which bed, for the next season or several; plans it with --accept --apply.',
  options: {
    years: {
      flags: '--years <number>',
      about: `how many seasons, 1 to ${MOST_SEASONS} (default: 1)`,
      value: numberValue('seasons', 1, 1, MOST_SEASONS).optional(),
    },
    anew: switchOption('--anew', 'leave out what is planned for those seasons already'),
    accept: switchOption('--accept', 'show what taking the plan would do'),
    apply: switchOption('--apply', 'with --accept: take it'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { at, options } = call;
    const { accept = false, apply = false, anew = false, format } = options;
    if (apply && !accept)
      throw refusal('Nothing was planned.', '--apply', 'takes a plan only with --accept.', 'Add --accept.');
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      refuseWithoutWishes(view);
      const input = planningInput(view);
      const proposal = await proposeRotation(input, { years: Math.floor(options.years ?? 1), anew });
      const { units } = view.garden.place;
      const taken = accept
        ? await accepted(steward, view, { proposal, taken: takenPlan(input, proposal, anew) }, apply)
        : undefined;
      if (format === 'json')
        return writeJson(at.stdout, { garden: gardenId, ...rotationJson(proposal), ...taken?.json }, units);
      const lines = rotationLines(proposal, { units, today: view.plan.today });
      writeLines(at.stdout, [...(taken === undefined ? lines : lines.slice(0, -2)), ...(taken?.lines ?? [])]);
    });
  },
});

function refuseWithoutWishes({ garden }: GardenView): void {
  if (garden.wishes.length > 0) return;
  throw refusal(
    'Nothing was proposed.',
    'wishes',
    'are missing from the garden file.',
    'Add what you want to grow, such as: wishes: [{ crop: tomato, areaM2: 3 }]',
  );
}

/** What taking a plan does, told; and taken in where that is asked for. */
async function accepted(
  steward: Steward,
  view: GardenView,
  { proposal, taken }: { proposal: RotationProposal; taken: TakenPlan },
  apply: boolean,
) {
  const { fact, left } = taken;
  const { garden } = view;
  const { units } = garden.place;
  if (fact.plantings.length + fact.dropped.length === 0)
    throw refusal('Nothing was planned.', '--accept', 'would plan nothing.', 'Wish for more, or for other seasons.');
  const told = planTold(fact, (bedId) => garden.beds.find(({ id }) => id === bedId)?.name ?? bedId, units);
  const { before, after } = await steward.previewReport(garden.id, fact);
  if (apply) await steward.report(garden.id, fact, BY);
  const preview = changePreview(before, after);
  const bedName = (bedId: string): string => garden.beds.find(({ id }) => id === bedId)?.name ?? bedId;
  const out = left.map(({ cropId, bedId }) => `${vegetableById(cropId).name} in ${bedName(bedId)}`);
  const end = apply
    ? 'It is planned. Take it back with: loamtide undo'
    : 'Nothing was changed. Add --apply to take it.';
  return {
    json: {
      taken: apply,
      plantings: fact.plantings,
      dropped: fact.dropped,
      coversDropped: fact.coversDropped ?? [],
      ...previewJson(preview),
    },
    lines: [
      '',
      ...listed(apply ? 'Planned:' : 'Would be planned:', told.planned),
      ...listed(apply ? 'Taken out of the plan:' : 'Would be taken out of the plan:', told.left),
      ...emptiedTexts(proposal, taken).flatMap((text) => wrapped(text)),
      ...(out.length === 0 ? [] : wrapped(`Left out: ${out.join('; ')}. For each of these ${LEFT_OUT}.`)),
      ...previewLines(preview, units),
      '',
      end,
    ],
  };
}

function listed(head: string, texts: readonly string[]): string[] {
  return texts.length === 0 ? [] : [head, ...texts.flatMap((text) => wrapped(`- ${text}`, '  ', '    '))];
}
