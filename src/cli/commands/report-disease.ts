import { diseasePreview } from '../../digest/disease-preview.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { bedNamed } from '../command-line/bed-named.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { dayValue, textValue } from '../command-line/values.ts';
import { section } from '../text/moves-text.ts';
import { writeLines } from '../text/output.ts';

export const reportDisease = command({
  name: 'disease',
  about: 'Shows what a disease found in a bed would set going; takes it in with --apply.',
  options: {
    bed: { flags: '--bed <name>', about: 'the bed, by its name or id', value: textValue('Name a bed of the garden.') },
    crop: { flags: '--crop <id>', about: 'the crop it was found on', value: textValue('Name a crop, such as tomato.') },
    disease: {
      flags: '--disease <name>',
      about: 'what it is called',
      value: textValue('Name the disease, such as clubroot.'),
    },
    on: { flags: '--on <day>', about: 'the day it was found (default: today)', value: dayValue.optional() },
    apply: switchOption('--apply', 'take it in'),
    ...ofOneGarden,
  },
  run: (call) => {
    const { at, options } = call;
    const apply = options.apply ?? false;
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const { garden, plan } = await steward.view(gardenId);
      const found = {
        bedId: bedNamed(garden.beds, options.bed).id,
        cropId: cropOf(options.crop),
        disease: options.disease,
        on: options.on ?? plan.today,
      };
      const report = { kind: 'disease-found', ...found } as const;
      const preview = await steward.previewReport(gardenId, report);
      if (apply) await steward.report(gardenId, report, BY);
      writeLines(at.stdout, [
        ...wrapped(factInWords(report, garden, plan.today)),
        ...diseasePreview(preview, found).flatMap(({ heading, lines }) =>
          section(
            `${heading}:`,
            lines.map(({ text }) => text),
          ),
        ),
        ...(apply ? [] : ['', 'Nothing was changed. Add --apply to take it in.']),
      ]);
    });
  },
});

function cropOf(wanted: string): string {
  const word = wanted.toLowerCase();
  const crop = vegetables.find(({ id, name }) => id === word || name.toLowerCase() === word);
  if (crop !== undefined) return crop.id;
  const ids = vegetables.map(({ id }) => id);
  throw refusal('Nothing was done.', '--crop', `"${wanted}" is not a known crop.`, suggestion(wanted, ids));
}
