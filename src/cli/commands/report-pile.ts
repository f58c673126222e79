import type { Fact } from '../../garden/facts.ts';
import { clock } from '../../garden/file-values.ts';
import type { Pile } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { MATURITY_FAILURES } from '../../garden/pile-file.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import { readDegrees } from '../../measures/typed-temperature.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Plan, PlannedTask } from '../../schedule/plan.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { choicesValue, choiceValue, dayValue, textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

export const reportPile = command({
  name: 'pile',
  about:
    'Tells how warm a pile is, how it feels and smells, and whether pests are at it or it has slumped; or that its compost is not ready.',
  options: {
    pile: {
      flags: '--pile <id>',
      about: 'the pile, by its id or its bin',
      value: textValue('Name a pile or its bin.'),
    },
    temp: {
      flags: '--temp <degrees>',
      about: 'in the middle, with its unit, such as 58C or 136F',
      value: textValue('Give degrees with their unit, such as 58C.').optional(),
    },
    moisture: {
      flags: '--moisture <feel>',
      about: 'how a handful feels: dry, damp or wet',
      value: choiceValue(['dry', 'damp', 'wet']).optional(),
    },
    smell: {
      flags: '--smell <smell>',
      about: 'earthy, ammonia or sour',
      value: choiceValue(['earthy', 'ammonia', 'sour']).optional(),
    },
    pests: switchOption('--pests', 'flies, rats or mice are at it'),
    slumped: switchOption('--slumped', 'it has sunk together'),
    notReady: {
      flags: '--not-ready <signs>',
      about: 'its compost was looked at and is not ready: heats, smells, coarse, or several with commas between',
      value: choicesValue(MATURITY_FAILURES).optional(),
    },
    on: { flags: '--on <day>', about: 'the day it was looked at (default: today)', value: dayValue.optional() },
    at: { flags: '--at <hour>', about: 'the hour of it, such as 14:30', value: clock.optional() },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const { garden, plan } = await steward.view(gardenId);
      const { moisture, smell, pests, slumped } = options;
      const tempC = options.temp === undefined ? undefined : coreIn(options.temp);
      const seen = {
        ...(tempC === undefined ? {} : { tempC }),
        ...(moisture === undefined ? {} : { moisture }),
        ...(smell === undefined ? {} : { smell }),
        ...(pests ? { pests } : {}),
        ...(slumped ? { slumped } : {}),
        ...(tempC === undefined || options.at === undefined ? {} : { at: options.at }),
      };
      if (Object.keys(seen).length === 0 && options.notReady === undefined)
        throw refusal(
          'Nothing was told.',
          'the pile',
          'Nothing of it is named.',
          'Give --temp, --moisture, --smell, --pests, --slumped or --not-ready.',
        );
      const on = options.on ?? plan.today;
      const pileId = pileNamed(garden, options.pile).id;
      const facts: Told[] = [];
      if (Object.keys(seen).length > 0) facts.push({ kind: 'pile-read', pileId, on, ...seen });
      if (options.notReady !== undefined)
        facts.push({ kind: 'compost-not-ready', pileId, on, failed: options.notReady });
      for (const fact of facts) {
        if (fact.kind === 'pile-read') await steward.readPile(gardenId, { pileId, on, ...seen }, BY);
        else await steward.report(gardenId, fact, BY);
        writeLines(at.stdout, [factInWords(fact, garden, plan.today)]);
      }
      writeLines(
        at.stdout,
        movedWords(plan, (await steward.view(gardenId)).plan, { pileId, units: garden.place.units }),
      );
    }),
});

/** The pile's next job, where what was told made it another or moved it. */
function movedWords(before: Plan, after: Plan, { pileId, units }: { pileId: string; units: UnitSystem }): string[] {
  const [was, is] = [nextOf(before, pileId), nextOf(after, pileId)];
  if (is === undefined || (is.key === was?.key && is.title === was.title && is.day === was.day)) return [];
  const title = readableIn(units, is.title, after.today);
  return [`Next: ${title}, ${formatDay(is.day, units, after.today)}`];
}

function nextOf({ tasks }: Plan, pileId: string): PlannedTask | undefined {
  return tasks
    .filter(({ subject, state }) => subject.type === 'pile' && subject.id === pileId && state === 'open')
    .sort((a, b) => (a.day < b.day ? -1 : 1))[0];
}

/** What one call may tell. */
type Told = Extract<Fact, { kind: 'pile-read' | 'compost-not-ready' }>;

/** Core temperatures a pile can have, °C. */
const CORE_C = { least: -30, most: 95 } as const;

function coreIn(text: string): number {
  const tempC = readDegrees(text);
  if (tempC !== undefined && tempC >= CORE_C.least && tempC <= CORE_C.most) return Math.round(tempC * 10) / 10;
  throw refusal(
    'Nothing was told.',
    '--temp',
    `"${text}" is no core of a pile.`,
    'Give degrees with their unit, such as 58C or 136F.',
  );
}

/** A pile by its id, or the newest in a bin. */
function pileNamed(
  { piles, bins }: { piles: readonly Pile[]; bins: readonly { id: string; name: string }[] },
  wanted: string,
): Pile {
  const word = wanted.toLowerCase();
  const bin = bins.find(({ id, name }) => id === word || name.toLowerCase() === word);
  const inBin = piles.filter(({ binId, built }) => binId === bin?.id && built.happened);
  const pile = piles.find(({ id }) => id === wanted) ?? inBin.sort((a, b) => (a.built.day < b.built.day ? 1 : -1))[0];
  if (pile !== undefined) return pile;
  const names = [...bins.map(({ name }) => name), ...piles.map(({ id }) => id)];
  throw refusal(
    'Nothing was told.',
    '--pile',
    `"${wanted}" is no pile, and no bin with one.`,
    suggestion(wanted, names),
  );
}
