/**
 * The sentences of frost watch.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import type { Practice } from '../practice.ts';

/** Every rule frost watch gives as a reason. */
export const frostWatchSentences: Practice['sentences'] = {
  'frost-watch.spring-turn': ({ saw }) =>
    `After ${dated(String(saw.day))} a freeze that hurts what is out comes in fewer than ${saw.percent} years of 100, ` +
    'the risk this garden takes.',
  'frost-watch.autumn-turn': ({ saw }) =>
    `By ${dated(String(saw.day))} a freeze that hurts what is out has come in ${saw.percent} years of 100, ` +
    'the risk this garden takes.',
  'frost-watch.spring-odds': (reason) => oddsSentence(reason, 'the last freeze of spring', 'is past by'),
  'frost-watch.autumn-odds': (reason) => oddsSentence(reason, 'the first freeze of autumn', 'has come by'),
  'frost-watch.expected-low': ({ saw }) =>
    `A low of ${quantity(Number(saw.tempC), 'tempC')} is expected for the night of ${dated(String(saw.evening))}` +
    (Number(saw.offsetC) < 0
      ? `; this garden lies in a cold pocket, ${quantity(-Number(saw.offsetC), 'deltaC')} colder.`
      : '.'),
  'frost-watch.snow': ({ saw }) =>
    `Snow lies or is expected about ${dated(String(saw.evening))}: with no low named for that night it is taken for one of ` +
    `${quantity(Number(saw.tempC), 'tempC')}.`,
  'frost-watch.damage': ({ saw, limit }) =>
    `${capital(String(saw.crops))}: hurt from ${quantity(Number(limit), 'tempC')} down.`,
  'frost-watch.margin': ({ limit }) =>
    `Tender crops are seen to from ${quantity(Number(limit), 'deltaC')} above that: on a clear night leaves are colder ` +
    'than the air a forecast names.',
  'frost-watch.most-to-lose': ({ saw }) =>
    `${saw.bed} comes first: it has the most harvest still to come, counted as area times days of picking.`,
  'frost-watch.cover-gain': ({ saw, limit }) =>
    `${capital(String(saw.cover))} is counted on for ${quantity(Number(limit), 'deltaC')}, as trials measured and not ` +
    'as it is sold.',
  'frost-watch.before-sunset': ({ limit }) =>
    `Covers are on ${limit} minutes before sunset, to hold the warmth the soil took up by day.`,
  'frost-watch.uncover': ({ saw, limit }) =>
    `It was covered for the night of ${dated(String(saw.evening))}; above ${quantity(Number(limit), 'tempC')} by day ` +
    'plants suffer under a cover.',
  'frost-watch.measured-low': ({ saw }) =>
    `A low of ${quantity(Number(saw.tempC), 'tempC')} was measured in the night of ${dated(String(saw.evening))}.`,
  'frost-watch.killed': ({ saw, limit }) =>
    `Few live through ${quantity(Number(limit), 'tempC')} without a cover: ${saw.crops}.`,
};

function oddsSentence({ saw, limit }: Reason, freeze: string, comes: string): string {
  const { early, median, late } = saw;
  // Late in the season what is left of the spread is one day: odds of it say nothing.
  if (median !== undefined && early === median && late === median)
    return `At ${quantity(Number(limit), 'tempC')}, ${freeze} has come by ${dated(String(median))} in nearly every year that is left to reckon with.`;
  const parts = [
    ...(saw.early === undefined ? [] : [`${dated(String(saw.early))} in one year of ten`]),
    ...(saw.median === undefined ? [] : [`${dated(String(saw.median))} in half of them`]),
    ...(saw.late === undefined ? [] : [`${dated(String(saw.late))} in nine of ten`]),
  ];
  return `At ${quantity(Number(limit), 'tempC')}, ${freeze} ${comes} ${parts.join(', ')}.`;
}
