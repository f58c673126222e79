import { command, switchOption } from '../command-line/command.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { dayValue, depthValue } from '../command-line/values.ts';
import { logWeather } from './log-weather.ts';

export const snow = command({
  name: 'snow',
  about: 'Shows what snow lying on a day would move in the plan; takes it in with --apply.',
  options: {
    on: { flags: '--on <day>', about: 'the day it lies; a day to come is a forecast', value: dayValue },
    depth: {
      flags: '--depth <depth>',
      about: 'how deep it lies, with the unit, such as 15cm or 6in',
      value: depthValue('snowDepthMm', '15cm or 6in'),
    },
    apply: switchOption('--apply', 'take it in'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { on: day, depth: snowDepthMm } = call.options;
    return logWeather(call, (today) => ({ day, kind: day > today ? 'expected' : 'observed', snowDepthMm }));
  },
});
