/**
 * How far a pile's log has come toward a hot record, in words.
 */
import type { Bin, Pile } from '../garden/garden.ts';
import { quantity } from '../measures/quantity.ts';
import { CLOSED_RECORD_HOURS, HOT_RECORD, hotRecord, RECORD_RATIO } from '../practices/composting/hot-record.ts';
import { mixOf } from '../practices/composting/mix/mix.ts';
import { HEATS_FROM_LITRES, mayHoldManure, portionsOf } from '../practices/composting/pile-life.ts';

/** The label of a pile's heat; nothing while no day of it counts. May hold marked amounts. */
export function hotRecordWords(pile: Pile, bin: Bin): string | undefined {
  const { days, turns, hours, unfit, passed, heat: met } = hotRecord(pile, bin);
  if (days === 0 && hours === 0) return undefined;
  const heat = `${quantity(HOT_RECORD.fromC, 'tempC')} or more`;
  const counted = `${count(days, 'day')} at ${heat}, ${count(turns, 'turn')} among them, about ${Math.floor(hours)} hours between hot readings`;
  const rule =
    bin.closed === true && bin.volumeL >= HEATS_FROM_LITRES
      ? `${HOT_RECORD.days} days and ${HOT_RECORD.turns} turns, or in a closed bin ${CLOSED_RECORD_HOURS} hours on end`
      : `${HOT_RECORD.days} days and ${HOT_RECORD.turns} turns`;
  const manure = mayHoldManure(pile);
  const made = manure ? passed : met;
  const begun =
    manure && unfit !== undefined ? `It counts as raw manure however hot it was: ${unfit}. ` : begunWords(pile);
  return `${made === undefined ? 'Toward a hot record' : 'A hot record'} (${rule}): ${counted}. ${begun}A label for your log, not a licence.`;
}

function count(of: number, what: string): string {
  return `${of} ${what}${of === 1 ? '' : 's'}`;
}

/** The ratio it began at, beside the one the rule for farms wants. */
function begunWords(pile: Pile): string {
  const ratio = mixOf(portionsOf(pile)).carbonToNitrogen?.usual;
  if (ratio === undefined) return '';
  const { low, high } = RECORD_RATIO;
  const inside = ratio >= low && ratio <= high ? 'inside' : 'outside';
  return `It was begun at about ${Math.round(ratio)} of carbon to 1 of nitrogen, ${inside} the ${low} to ${high} that certified farms are held to. `;
}
