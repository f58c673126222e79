import { changePreview } from '../../digest/change-preview.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { STAGES } from '../../garden/stand-file.ts';
import type { Day } from '../../measures/days.ts';
import { growingParts } from '../../practices/stand-cover.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { stageDoubt, stageReport, standsToTellOf } from '../../steward/facts/stage-report.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { bedNamed } from '../command-line/bed-named.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { choiceValue, dayValue, textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';
import { previewLines } from '../text/preview-text.ts';

export const reportStage = command({
  name: 'stage',
  about: 'Shows what buds or flowers seen on a cover would move; takes it in with --apply.',
  options: {
    bed: { flags: '--bed <name>', about: 'the bed, by its name or id', value: textValue('Name a bed of the garden.') },
    stage: { flags: '--stage <stage>', about: 'first-buds or in-bloom', value: choiceValue(STAGES) },
    cover: {
      flags: '--cover <id>',
      about: 'the kind, where several stand there (default: the first)',
      value: textValue('Name a cover, such as cereal_rye.').optional(),
    },
    on: { flags: '--on <day>', about: 'the day it was seen (default: today)', value: dayValue.optional() },
    apply: switchOption('--apply', 'take it in'),
    ...ofOneGarden,
  },
  run: (call) => {
    const { at, options } = call;
    const apply = options.apply ?? false;
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      const { garden, plan } = view;
      const on = options.on ?? plan.today;
      const standing = standingIn(view, bedNamed(garden.beds, options.bed).id, on, options.cover);
      const report = stageReport(view, { ...standing, stage: options.stage, on });
      const doubt = stageDoubt(view, report);
      const { before, after } = await steward.previewReport(gardenId, report);
      if (apply) await steward.report(gardenId, report, BY);
      writeLines(at.stdout, [
        ...wrapped(factInWords(report, garden, plan.today)),
        ...(doubt === undefined ? [] : ['', ...wrapped(doubt)]),
        ...previewLines(changePreview(before, after), garden.place.units),
        ...(apply ? [] : ['', 'Nothing was changed. Add --apply to take it in.']),
      ]);
    });
  },
});

/** The kind that stood in a bed on a day: the one named, or the first of the newest stand. */
function standingIn(view: GardenView, bedId: string, on: Day, wanted: string | undefined) {
  const kinds = standsToTellOf(view)
    .filter(({ bedId: bed, cutOn, deadOn }) => bed === bedId && on <= (cutOn ?? deadOn ?? on))
    .sort((a, b) => (a.sow.day > b.sow.day ? -1 : 1))
    .flatMap((stand) => growingParts(stand).map(({ cover }) => ({ standId: stand.id, coverId: cover.id })));
  const found = wanted === undefined ? kinds[0] : kinds.find(({ coverId }) => coverId === wanted);
  if (found !== undefined) return found;
  const ids = kinds.map(({ coverId }) => coverId);
  throw refusal(
    'Nothing was done.',
    wanted === undefined ? '--bed' : '--cover',
    wanted === undefined ? `No cover stands in this bed on ${on}.` : `"${wanted}" does not stand there.`,
    ids.length === 0 ? 'Name another bed, or the day with --on.' : suggestion(wanted ?? '', ids),
  );
}
