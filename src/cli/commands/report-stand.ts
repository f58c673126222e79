import { changePreview } from '../../digest/change-preview.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Garden } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { COVERED } from '../../garden/stand-file.ts';
import { lookReport } from '../../steward/facts/look-report.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { choiceValue, dayValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';
import { previewLines } from '../text/preview-text.ts';

export const reportStand = command({
  name: 'stand',
  about: 'Tells how much of the ground a young cover covers, and whether weeds are among it; shows what follows.',
  argument: { flags: '<stand>', about: 'the stand by its id, or the bed it grows in' },
  options: {
    covered: { flags: '--covered <share>', about: COVERED.join(', '), value: choiceValue(COVERED) },
    weedy: switchOption('--weedy', 'weeds came up among it in number'),
    on: { flags: '--on <day>', about: 'the day it was looked at (default: today)', value: dayValue.optional() },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument = '' } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      const { garden, plan } = view;
      const { covered, weedy = false, on = plan.today } = options;
      const report = lookReport(view, { standId: standNamed(garden, argument), on, covered, weedy });
      const { before, after } = await steward.previewReport(gardenId, report);
      await steward.report(gardenId, report, BY);
      writeLines(at.stdout, [
        ...wrapped(factInWords(report, garden, plan.today)),
        ...previewLines(changePreview(before, after), garden.place.units),
      ]);
    }),
});

/** A stand by its id, or the one sown last in a bed. */
function standNamed({ stands, beds }: Garden, wanted: string): string {
  const word = wanted.toLowerCase();
  const bed = beds.find(({ id, name }) => id === word || name.toLowerCase() === word);
  const inBed = stands.filter(({ bedId, sow }) => bedId === bed?.id && sow.happened);
  const found = stands.find(({ id }) => id === wanted) ?? inBed.sort((a, b) => (a.sow.day < b.sow.day ? 1 : -1))[0];
  if (found !== undefined) return found.id;
  const sown = stands.filter(({ sow }) => sow.happened);
  const names = sown.flatMap(({ id, bedId }) => [id, ...beds.flatMap((each) => (each.id === bedId ? each.name : []))]);
  const what = bed === undefined ? `"${wanted}" is no stand and no bed here.` : `No cover was sown in ${bed.name} yet.`;
  throw refusal('Nothing was told.', 'the stand', what, suggestion(wanted, names));
}
