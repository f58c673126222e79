/**
 * Where a problem lies, as a gardener knows it: the garden file's own paths mean nothing to whoever has not written one.
 */

import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';

/** Whose words they are to be, and on which day. */
interface Reader {
  units: UnitSystem;
  outlook: { today: Day };
}

/** The problems of a draft's file, each under the thing it is about, in the words of the forms and the reader's dates. */
export function inPlainPlaces(problems: readonly Problem[], draft: SetUpDraft, reader: Reader): Problem[] {
  return problems.map(({ where, what, mend }) => ({
    where: plainPlace(where, draft),
    what: plainWords(what, reader),
    mend: plainWords(mend, reader),
  }));
}

/** What the garden file's own words are called where there is a form and no file. */
const FORM_WORDS: readonly (readonly [RegExp, string])[] = [
  [/give "frostDates" or "monthlyNormals" instead/, 'take the dates from “My own dates”'],
  [/an earlier plannedFor of (.+?)\.$/, 'an earlier day by which $1 is to be made.'],
  [
    /Crops side by side, or one between the rows of the other,.*areaM2.*$/,
    'Two that share a bed are told once the garden is made, each with its share.',
  ],
  [/the volumeL of the bin is too small/, 'the bin holds more than was told'],
  [/\blastSpring falls\b/, 'the last freeze of spring falls'],
];

function plainWords(text: string, { units, outlook: { today } }: Reader): string {
  const inForm = FORM_WORDS.reduce((words, [file, form]) => words.replace(file, form), readableIn(units, text, today));
  return inForm
    .replace(/\blastSpring (\d{2}-\d{2})/g, (_, on: string) => `The last freeze of spring on ${yearly(on, units)}`)
    .replace(/\bfirstAutumn (\d{2}-\d{2})/g, (_, on: string) => `the first of autumn on ${yearly(on, units)}`)
    .replace(/\b\d{4}-\d{2}-\d{2}\b/g, (day: Day) => fullDay(day, units));
}

/** A day of every year, in the reader's order. */
function yearly(monthDay: string, units: UnitSystem): string {
  return formatDay(`2000-${monthDay}`, units);
}

function plainPlace(where: string, draft: SetUpDraft): string {
  const [, list, index] = /^(\w+)\[(\d+)\]/.exec(where) ?? [];
  const at = Number(index);
  const bedName = (id: string) => draft.beds.find((bed) => bed.id === id)?.name ?? id;
  switch (list) {
    case 'plantings': {
      // What grew in seasons past stands first in the file.
      const row = [...draft.past, ...draft.plantings][at];
      return row === undefined ? where : `${vegetableById(row.crop).name} in ${bedName(row.bed)}`;
    }
    case 'coverStands': {
      const row = draft.stands[at];
      return row === undefined ? where : `${coverName(row.mix ?? row.cover ?? '')} in ${bedName(row.bed)}`;
    }
    case 'beds':
      return draft.beds[at]?.name ?? where;
    case 'bins':
      return draft.bins[at]?.name ?? where;
    case 'piles':
      return `the pile in ${draft.bins.find(({ id }) => id === draft.piles[at]?.bin)?.name ?? 'its bin'}`;
    default:
      return WORDS[where] ?? where;
  }
}

const WORDS: Readonly<Record<string, string>> = {
  'garden.name': 'Name',
  'garden.timeZone': 'Time zone',
  'climate.nearest': 'Frost dates',
  'climate.station': 'Frost dates',
  'climate.frostDates': 'Frost dates',
  'garden.latitude': 'Latitude',
  'garden.longitude': 'Longitude',
};
