import { withoutAbsent } from '../../garden/without-absent.ts';
import { command, switchOption } from '../command-line/command.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { dayValue, degreesValue, depthValue } from '../command-line/values.ts';
import { logWeather } from './log-weather.ts';

const depthOption = (flags: string, about: string, value: ReturnType<typeof depthValue>) => ({
  flags,
  about,
  value: value.optional(),
});

export const reportWeather = command({
  name: 'weather',
  about: "Shows what a day's weather would move in the plan; takes it in with --apply.",
  options: {
    on: { flags: '--on <day>', about: 'the day (default: today)', value: dayValue.optional() },
    low: {
      flags: '--low <degrees>',
      about: 'its low with the unit, such as -1C or 30F',
      value: degreesValue('tminC').optional(),
    },
    high: { flags: '--high <degrees>', about: 'its high with the unit', value: degreesValue('tmaxC').optional() },
    rain: depthOption(
      '--rain <depth>',
      'rain with the unit, such as 12mm or 0.5in',
      depthValue('rainMm', '12mm or 0.5in'),
    ),
    newSnow: depthOption('--new-snow <depth>', 'snow that fell', depthValue('newSnowMm', '8cm or 3in')),
    snowLying: depthOption('--snow-lying <depth>', 'snow lying', depthValue('snowDepthMm', '15cm or 6in')),
    watering: depthOption('--watering <depth>', 'water given to the beds', depthValue('wateringMm', '12mm or 0.5in')),
    expected: switchOption('--expected', 'a forecast says so; without this it was seen'),
    apply: switchOption('--apply', 'take it in'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { on, low, high, rain, newSnow, snowLying, watering, expected } = call.options;
    const measured = withoutAbsent({
      tminC: low,
      tmaxC: high,
      rainMm: rain,
      newSnowMm: newSnow,
      snowDepthMm: snowLying,
      wateringMm: watering,
    });
    return logWeather(call, (today) => ({ day: on ?? today, kind: expected ? 'expected' : 'observed', ...measured }));
  },
});
