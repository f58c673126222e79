import { fillSheet } from '../../digest/fill-sheet.ts';
import { InputRefused } from '../../garden/problem.ts';
import { askedFill } from '../../practices/new-beds/read-fill.ts';
import { command } from '../command-line/command.ts';
import { everywhere, formatOption } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { fillJson, fillLines } from '../text/fill-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

const size = (what: string, example: string) => textValue(`Give ${what} with its unit, such as ${example}.`);

export const fill = command({
  name: 'fill',
  about: 'Works out what a new bed is filled with: topsoil, compost and bed mix, and how long it takes.',
  options: {
    length: {
      flags: '--length <length>',
      about: 'its length, with the unit: 2.4m, 8ft',
      value: size('the length', '2.4m'),
    },
    width: { flags: '--width <length>', about: 'its width: 1.2m, 4ft', value: size('the width', '1.2m') },
    depth: {
      flags: '--depth <length>',
      about: 'how deep it is to be filled: 30cm, 12in',
      value: size('the depth', '30cm'),
    },
    paths: {
      flags: '--paths <area>',
      about: 'paths that topsoil can be scooped from: 2m2, 20ft2, 0 for none (default: one along each long side)',
      value: size('the area', '2m2').optional(),
    },
    compost: {
      flags: '--compost <amount>',
      about: 'compost of your own that no other bed wants: 100L, 4ft3',
      value: size('the compost', '100L').optional(),
    },
    phosphorus: {
      flags: '--phosphorus <ppm>',
      about: 'parts per million of phosphorus that a soil test found',
      value: textValue('Give parts per million, such as 18.').optional(),
    },
    ...everywhere,
    format: formatOption('text', 'json'),
  },
  run: async ({ at, options }) => {
    const { length, width, depth, paths = '', compost = '', phosphorus = '' } = options;
    const read = askedFill({ length, width, depth, paths, compost, phosphorus });
    if ('problems' in read) throw new InputRefused('That bed cannot be worked out.', read.problems.map(asOption));
    const sheet = fillSheet(read.asked);
    if (options.format === 'json') writeJson(at.stdout, fillJson(sheet), read.units);
    else writeLines(at.stdout, fillLines(sheet, read.units));
  },
});

/** A problem under the name of the option it was typed for. */
function asOption<Found extends { where: string }>(problem: Found): Found {
  return { ...problem, where: `--${problem.where.toLowerCase()}` };
}
