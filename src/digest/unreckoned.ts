/**
 * What a day's weather does that a climate cannot reckon, so that nobody takes an empty preview for firm ground.
 */
import type { Climate } from '../climate/climate.ts';
import type { LoggedDay } from '../garden/weather.ts';

const UNRECKONED =
  'This climate has no daily record of rain: how long snow lies and the soil stays wet is not reckoned. Snow puts the ' +
  'test of spring a few days off, rain does not. Squeeze a handful before you work the soil.';

/** The sentence where weather that wets the ground is told to a climate without rain in its seasons; else nothing. */
export function unreckonedNote({ seasons }: Climate, days: readonly LoggedDay[]): string | undefined {
  const wets = days.some(
    ({ rainMm, newSnowMm, snowDepthMm }) => (rainMm ?? 0) + (newSnowMm ?? 0) + (snowDepthMm ?? 0) > 0,
  );
  const reckoned = seasons.some(({ rainMm }) => rainMm.some((mm) => mm !== undefined));
  return wets && !reckoned ? UNRECKONED : undefined;
}
