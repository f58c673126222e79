import { changePreview } from '../../digest/change-preview.ts';
import { type ChosenInBed, choiceNotes } from '../../digest/choice-words.ts';
import { coversToSow } from '../../digest/cover-sowings.ts';
import { fitTold, gapInWords } from '../../digest/fit-words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Bed } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { readableIn } from '../../measures/quantity.ts';
import { bedGaps, choiceOf, type GapOfBed, gapOn, nextGap } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName, type GapFit } from '../../practices/cover-cropping/fit/fit.ts';
import { seedToBuy } from '../../practices/cover-cropping/fit/seed-to-buy.ts';
import { fitGap } from '../../practices/cover-cropping/fit/sown-fit.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { bedNamed } from '../command-line/bed-named.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import type { Surroundings } from '../command-line/surroundings.ts';
import { dayValue, textValue } from '../command-line/values.ts';
import { writeJson, writeLines } from '../text/output.ts';
import { previewJson, previewLines } from '../text/preview-text.ts';
import { seasonEndJson, seasonEndLines } from '../text/season-end-text.ts';

export const seasonEnd = command({
  name: 'season-end',
  about: 'Shows what could lie in each gap of the beds, best first; with --choose, what a choice would set going.',
  options: {
    bed: { flags: '--bed <name>', about: 'one bed, by its name or id', value: textValue('Name a bed.').optional() },
    choose: {
      flags: '--choose <id>',
      about:
        'a cover, a mix, mulch-leaves or mulch-straw, for the next gap that a cover fits in, or the one --on lies in',
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
        const inBed = chosen(input, beds, options.choose, options.on);
        return choose({ at, steward, gardenId, apply, json: options.format === 'json' }, inBed);
      }
      if (options.on !== undefined || apply)
        throw refusal('Nothing was chosen.', '--choose', 'is missing.', 'Name a cover such as oats with --choose.');
      const gaps = beds.map((bed) => bedGaps(input, bed));
      const seed = seedToBuy(input);
      if (options.format === 'json') writeJson(at.stdout, { garden: gardenId, ...seasonEndJson(gaps, seed) }, units);
      else
        writeLines(
          at.stdout,
          seasonEndLines(gaps, seed, { units, today: view.plan.today, toSow: coversToSow(garden, view.plan) }),
        );
    });
  },
});

/** The choice a word names: for the gap that is next to be decided, or for the one the day that is asked for lies in. */
function chosen(input: PracticeInput, beds: readonly Bed[], word: string, on: string | undefined): ChosenInBed {
  const [bed, ...others] = beds;
  if (bed === undefined || others.length > 0)
    throw refusal('Nothing was chosen.', '--bed', 'is missing.', 'Name the bed it is for with --bed.');
  const all = bedGaps(input, bed);
  const onDay = on === undefined || on < input.today ? undefined : gapOn(all, on);
  const named = namedIn(onDay === undefined ? all.gaps : [onDay], word);
  const [first] = named;
  if (first === undefined) {
    const known = [...new Set(all.gaps.flatMap(({ fits }) => fits.map(({ choice }) => choiceName(choice))))];
    const mend = known.length === 0 ? 'It has no gap in the next two years.' : suggestion(word, known);
    throw refusal('Nothing was chosen.', '--choose', `"${word}" is no choice for ${bed.name}.`, mend);
  }
  const next = nextGap(all);
  const isNext = ({ gap, fit }: InGap): boolean => fit.choice.choice === 'mulch' || gap === next;
  const wanted = on === undefined ? named.find(isNext) : (named.find(canBeHad) ?? first);
  const choice =
    wanted && (on !== undefined || canBeHad(wanted)) ? choiceOf(input, wanted.gap, wanted.fit, on) : undefined;
  if (choice !== undefined) return { choice, gaps: all };
  const { what, mend } = noSowing(input, bed, wanted ?? first, on === undefined ? named.filter(canBeHad) : []);
  throw refusal('Nothing was chosen.', '--choose', what, mend);
}

interface InGap {
  gap: GapOfBed;
  fit: GapFit;
}

function namedIn(gaps: readonly GapOfBed[], word: string): InGap[] {
  return gaps.flatMap((gap) =>
    gap.fits.filter(({ choice }) => choiceName(choice) === word).map((fit): InGap => ({ gap, fit })),
  );
}

function canBeHad({ fit }: InGap): boolean {
  return fit.verdict !== 'unusable';
}

/** Why a cover cannot be had in a gap, with the later gap in which it can. */
function noSowing(
  { garden, today }: PracticeInput,
  bed: Bed,
  { gap, fit }: InGap,
  [later]: readonly InGap[],
): { what: string; mend: string } {
  const read = (text: string): string => readableIn(garden.place.units, text, today);
  const [why] = fitTold(fit).cons;
  const reason = why === undefined ? '' : ` ${read(why)}`;
  const all = `See why with: loamtide season-end --bed ${bed.id}`;
  const { name, sowOn } = fit;
  const here = `${name} does not fit in ${bed.name} ${read(gapInWords(fitGap(gap.span)))}.${reason}`;
  if (later?.fit.sowOn !== undefined)
    return { what: here, mend: `In a later gap it does: add --on ${later.fit.sowOn} to choose it for then.` };
  if (sowOn !== undefined) return { what: here, mend: `To choose it all the same add --on ${sowOn}. ${all}` };
  return { what: `${name} has no time to be sown in ${bed.name} within two years.${reason}`, mend: all };
}

interface Choosing {
  at: Surroundings;
  steward: Steward;
  gardenId: string;
  apply: boolean;
  json: boolean;
}

async function choose({ at, steward, gardenId, apply, json }: Choosing, chosen: ChosenInBed): Promise<void> {
  const { choice } = chosen;
  const view = await steward.view(gardenId);
  const { before, after, garden } = await steward.previewReport(gardenId, choice);
  if (apply) await steward.report(gardenId, choice, BY);
  const preview = changePreview(before, after);
  const notes = choiceNotes(planningInput(view), chosen, garden);
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
