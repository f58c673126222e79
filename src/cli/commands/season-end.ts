import { changePreview } from '../../digest/change-preview.ts';
import { choiceNotes } from '../../digest/choice-words.ts';
import { fitTold } from '../../digest/fit-words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Bed } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { readableIn } from '../../measures/quantity.ts';
import { bedGaps, choiceOf, gapOn } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName, type GapFit } from '../../practices/cover-cropping/fit/fit.ts';
import { seedToBuy } from '../../practices/cover-cropping/fit/seed-to-buy.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { planningInput } from '../../steward/planner.ts';
import type { CoverChoice, Steward } from '../../steward/steward.ts';
import { factInWords } from '../../web/ledger-words.ts';
import { bedNamed } from '../bed-named.ts';
import { command, switchOption } from '../command.ts';
import { BY, chosenGarden, withHousehold } from '../household.ts';
import { formatOption, ofOneGarden } from '../options.ts';
import { writeJson, writeLines } from '../output.ts';
import { previewJson, previewLines } from '../preview-text.ts';
import { refusal } from '../refusal.ts';
import { seasonEndJson, seasonEndLines } from '../season-end-text.ts';
import type { Surroundings } from '../surroundings.ts';
import { dayValue, textValue } from '../values.ts';

export const seasonEnd = command({
  name: 'season-end',
  about: 'Shows what could lie in each gap of the beds, best first; with --choose, what a choice would set going.',
  options: {
    bed: { flags: '--bed <name>', about: 'one bed, by its name or id', value: textValue('Name a bed.').optional() },
    choose: {
      flags: '--choose <id>',
      about: 'a cover, a mix, mulch-leaves or mulch-straw, for the first gap it can be had in, or the one --on lies in',
      value: textValue('Name a cover such as oats, or mulch-leaves.').optional(),
    },
    on: {
      flags: '--on <day>',
      about: 'the day to sow it or to lay the mulch (default: the best day)',
      value: dayValue.optional(),
    },
    apply: switchOption('--apply', 'take the choice in'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { at, options } = call;
    const apply = options.apply ?? false;
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const view = await steward.view(gardenId);
      const input = planningInput(view);
      const { garden } = view;
      const { units } = garden.place;
      const beds = options.bed === undefined ? garden.beds : [bedNamed(garden.beds, options.bed)];
      if (options.choose !== undefined) {
        const choice = chosen(input, beds, options.choose, options.on);
        return choose({ at, steward, gardenId, apply, json: options.format === 'json' }, choice);
      }
      if (options.on !== undefined || apply)
        throw refusal('Nothing was chosen.', '--choose', 'is missing.', 'Name a cover such as oats with --choose.');
      const gaps = beds.map((bed) => bedGaps(input, bed));
      const seed = seedToBuy(input);
      if (options.format === 'json') writeJson(at.stdout, { garden: gardenId, ...seasonEndJson(gaps, seed) }, units);
      else writeLines(at.stdout, seasonEndLines(gaps, seed, { units, today: view.plan.today }));
    });
  },
});

/** The choice a word names, for the first gap of a bed in which it can be had. */
function chosen(input: PracticeInput, beds: readonly Bed[], word: string, on: string | undefined): CoverChoice {
  const [bed, ...others] = beds;
  if (bed === undefined || others.length > 0)
    throw refusal('Nothing was chosen.', '--bed', 'is missing.', 'Name the bed it is for with --bed.');
  const all = bedGaps(input, bed);
  const onDay = on === undefined || on < input.today ? undefined : gapOn(all, on);
  const gaps = onDay === undefined ? all.gaps : [onDay];
  const named = gaps.flatMap((gap) =>
    gap.fits.filter((fit) => choiceName(fit.choice) === word).map((fit) => ({ gap, fit })),
  );
  const [first] = named;
  if (first === undefined) {
    const known = [...new Set(gaps.flatMap(({ fits }) => fits.map(({ choice }) => choiceName(choice))))];
    const mend = known.length === 0 ? 'It has no gap in the next two years.' : suggestion(word, known);
    throw refusal('Nothing was chosen.', '--choose', `"${word}" is no choice for ${bed.name}.`, mend);
  }
  const usable = named.find(({ fit }) => fit.verdict !== 'unusable') ?? first;
  const choice = choiceOf(input, usable.gap, usable.fit, on);
  if (choice === undefined)
    throw refusal(
      'Nothing was chosen.',
      '--choose',
      noSowing(input, bed, usable.fit),
      `See why with: loamtide season-end --bed ${bed.id}`,
    );
  return choice;
}

function noSowing({ garden, today }: PracticeInput, bed: Bed, fit: GapFit): string {
  const [why] = fitTold(fit).cons;
  const reason = why === undefined ? '' : ` ${readableIn(garden.place.units, why, today)}`;
  return `${fit.name} has no sowing day in ${bed.name}.${reason}`;
}

interface Choosing {
  at: Surroundings;
  steward: Steward;
  gardenId: string;
  apply: boolean;
  json: boolean;
}

async function choose({ at, steward, gardenId, apply, json }: Choosing, choice: CoverChoice): Promise<void> {
  const view = await steward.view(gardenId);
  const { before, after, garden } = await steward.previewReport(gardenId, choice);
  if (apply) await steward.report(gardenId, choice, BY);
  const preview = changePreview(before, after);
  const notes = choiceNotes(planningInput(view), choice, garden);
  const { units } = garden.place;
  if (json) {
    writeJson(at.stdout, { garden: gardenId, applied: apply, choice, ...notes, ...previewJson(preview) }, units);
    return;
  }
  const { today } = before;
  const read = (text: string): string => readableIn(units, text, '');
  writeLines(at.stdout, [
    ...wrapped(factInWords(choice, garden, today)),
    ...notes.told.flatMap((text) => wrapped(read(text))),
    ...(notes.verdict === undefined ? [] : ['', `${notes.verdict}:`]),
    ...notes.against.flatMap((text) => wrapped(`- ${read(text)}`, '  ', '    ')),
    ...previewLines(preview, units),
    ...(apply ? [] : ['', 'Nothing was changed. Add --apply to take it in.']),
  ]);
}
