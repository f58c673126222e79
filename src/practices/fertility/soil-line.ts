/**
 * What the soil itself gives in a season, by the organic matter in it.
 */
import type { Bed } from '../../garden/garden.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import { tenth } from '../../measures/tenth.ts';
import type { PracticeInput } from '../practice.ts';
import { lastTest, UNTESTED_PERCENT } from '../soil-test.ts';
import { certain, type LedgerLine } from './ledger-line.ts';

/** Nitrogen a season for each percent of organic matter, g/m²: 10 lb an acre, a cautious figure (veg:V15). */
const NITROGEN_PER_PERCENT = 1.12;

/** The line of the soil. */
export function soilLine({ garden }: PracticeInput, bed: Bed): LedgerLine {
  // A test of the garden tells nothing of soil that was brought for a new bed.
  const soilTests =
    thereFrom(bed) === undefined ? garden.soilTests : garden.soilTests.filter(({ bedId }) => bedId === bed.id);
  const measured = lastTest({ soilTests }, bed.id, ({ organicMatterPercent }) => organicMatterPercent);
  const percent = measured ?? UNTESTED_PERCENT;
  const given = percent * NITROGEN_PER_PERCENT;
  const saw = { percent, perPercentGPerM2: NITROGEN_PER_PERCENT, usualGPerM2: tenth(given) };
  return {
    side: 'give',
    of: 'soil',
    gPerM2: certain(given),
    reason:
      measured === undefined
        ? { rule: 'ledger.soil-untested', saw, source: 'house default' }
        : { rule: 'ledger.soil-tested', saw, source: 'veg:V15' },
  };
}
