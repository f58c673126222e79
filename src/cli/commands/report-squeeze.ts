import { fullDay } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Garden } from '../../garden/garden.ts';
import { SOIL_TEXTURES } from '../../garden/garden-file.ts';
import { readableIn } from '../../measures/quantity.ts';
import { textureOf } from '../../practices/soil-class.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { command } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { choiceValue, dayValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

export const reportSqueeze = command({
  name: 'squeeze',
  about: 'Tells what a squeezed handful of a soil said: it crumbles, or it smears and is asked again.',
  options: {
    texture: { flags: '--texture <texture>', about: 'the soil, such as silt_loam', value: choiceValue(SOIL_TEXTURES) },
    answer: { flags: '--answer <answer>', about: 'crumbles or smears', value: choiceValue(['crumbles', 'smears']) },
    on: { flags: '--on <day>', about: 'the day it was squeezed (default: today)', value: dayValue.optional() },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const { garden, plan } = await steward.view(gardenId);
      const { today } = plan;
      const { texture: soilTexture, answer } = options;
      refuseForeign(garden, soilTexture);
      const on = options.on ?? today;
      const report = { kind: 'soil-squeezed', on, soilTexture, answer } as const;
      const { tasks } = await steward.report(gardenId, report, BY);
      const { units } = garden.place;
      const next = tasks.find(({ state, makes }) => state === 'open' && makes.some(isSqueezeOf(soilTexture)));
      writeLines(at.stdout, [
        ...wrapped(factInWords(report, garden, today)),
        ...(answer === 'smears' && next !== undefined
          ? wrapped(`${readableIn(units, next.title)}: ${fullDay(next.day, units)}`)
          : []),
      ]);
    }),
});

function isSqueezeOf(soilTexture: string) {
  return (effect: { makes: string; soilTexture?: string }): boolean =>
    effect.makes === 'soil-squeezed' && effect.soilTexture === soilTexture;
}

/** Refuses a soil that no bed of the garden has: its answer would be of no use. */
function refuseForeign(garden: Garden, soilTexture: string): void {
  const here = [...new Set(garden.beds.map((bed) => textureOf(garden, bed)))];
  if (here.some((each) => each === soilTexture)) return;
  const what = `No bed here has the soil "${soilTexture}".`;
  throw refusal('It cannot be taken in.', '--texture', what, `Soils here: ${here.join(', ')}.`);
}
