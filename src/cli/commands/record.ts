import { seasonOf } from '../../climate/season.ts';
import { recordCsv } from '../../digest/record/csv.ts';
import { recordJson } from '../../digest/record/json.ts';
import {
  type RecordAsked,
  type RecordFrom,
  recordedAbout,
  seasonNamed,
  seasonRecord,
  seasonsOnRecord,
} from '../../digest/record/season-record.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { seasonName } from '../../practices/seasons.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { recordLines } from '../text/record-text.ts';

export const record = command({
  name: 'record',
  about: "The season's record: what was done when, per bed and pile, as text, CSV or JSON.",
  options: {
    season: {
      flags: '--season <season>',
      about: 'by the year it begins in, such as 2027, or "all" (default: the running one)',
      value: textValue('Name a season, such as 2027, or all.').optional(),
    },
    bed: {
      flags: '--bed <name>',
      about: 'one bed, by its name or id',
      value: textValue('Name a bed.').optional(),
    },
    pile: {
      flags: '--pile <name>',
      about: 'the piles of a bin, by its name, or one pile by its id',
      value: textValue('Name a pile or its bin.').optional(),
    },
    ...ofOneGarden,
    format: formatOption('text', 'csv', 'json'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const view = await steward.view(await chosenGarden(steward, options.garden));
      const from = { ...view, today: view.plan.today };
      const found = seasonRecord(from, asked(from, options));
      if (options.format === 'csv') at.stdout.write(recordCsv(found.rows));
      else if (options.format === 'json') at.stdout.write(recordJson(found));
      else at.stdout.write(`${recordLines(found, view.garden).join('\n')}\n`);
    }),
});

interface Wanted {
  season?: string | undefined;
  bed?: string | undefined;
  pile?: string | undefined;
}

/** @throws {InputRefused} with everything that names nothing on record */
function asked(from: RecordFrom, { season: word, bed, pile }: Wanted): RecordAsked {
  const known = seasonsOnRecord(from);
  const problems: Problem[] = [];
  const season = word === undefined ? seasonOf(from.climate.seasonTurn, from.today) : seasonNamed(from, word, known);
  if (word !== 'all' && season === undefined) {
    const mend = `Seasons on record: ${known.map((each) => seasonName(from.climate, each)).join(', ')}, or all.`;
    problems.push({ where: '--season', what: `Nothing is on record of a season "${word}".`, mend });
  }
  if (bed !== undefined && pile !== undefined)
    problems.push({ where: '--pile', what: 'A bed is named as well.', mend: 'Name a bed or a pile, not both.' });
  const about = aboutNamed(from, { bed, pile });
  if (about !== undefined && about.ids.length === 0) problems.push(about.problem);
  if (problems.length > 0) throw new InputRefused('Nothing was done.', problems);
  return {
    ...(word === 'all' || season === undefined ? {} : { season }),
    ...(about === undefined ? {} : { about: { type: about.type, ids: about.ids } }),
  };
}

/** The bed or the piles that are named: those that went from the garden file are on record too. */
function aboutNamed(from: RecordFrom, { bed, pile }: Pick<Wanted, 'bed' | 'pile'>) {
  const wanted = bed ?? pile;
  if (wanted === undefined) return undefined;
  const type = bed === undefined ? 'pile' : 'bed';
  const known = recordedAbout(from, type);
  const word = wanted.toLowerCase();
  const byId = known.filter(({ id }) => id === wanted);
  const found = byId.length > 0 ? byId : known.filter(({ name }) => name.toLowerCase() === word);
  const what = `"${wanted}" is no ${type} of this garden.`;
  const mend = suggestion(
    wanted,
    known.map(({ name }) => name),
  );
  return { type, ids: found.map(({ id }) => id), problem: { where: `--${type}`, what, mend } } as const;
}
