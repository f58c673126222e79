/**
 * Beginning the pile that a layer to come hangs on.
 */
import { BROWNS_TO_GREENS } from '../../handbook/feedstocks.ts';
import { addDays } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { START_UP_MINUTES, TURN_MINUTES_PER_M3 } from '../effort.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import type { Shortage } from './shortage.ts';
import { newPileLitres } from './ways-out.ts';

/** Days before the last day on which a pile is best begun, and from which it is asked for. House default. */
const BEGIN_DAYS = { first: 35, usual: 14 } as const;

/** The pile that would close a season's gap; nothing where none begun since the garden was brought in would. */
export function beginDraft(input: PracticeInput, { newPile }: Findings, shortage: Shortage): TaskDraft | undefined {
  const { garden, climate } = input;
  const { season, lacking, litres, day } = shortage;
  const startBy = newPile?.startBy(day);
  if (garden.bins.length === 0 || newPile === undefined || startBy === undefined || startBy < garden.startedOn)
    return undefined;
  const pileL = newPileLitres(newPile, lacking, garden.bins);
  const full = pileL < newPile.litresFor(lacking);
  const browns = Math.round((pileL * BROWNS_TO_GREENS) / (BROWNS_TO_GREENS + 1));
  return {
    key: `compost-begin/garden/${season}`,
    practice: 'topdressing',
    kind: 'begin-pile',
    job: { id: 'begin-pile', title: 'Begin a pile' },
    subject: gardenSubject(garden),
    weight: 'deadline',
    title: `Begin a pile for the layers of ${dated(day)}`,
    steps: [
      `Wanted by ${dated(day)}: ${quantity(litres, 'L')} of compost more than the bins will give. Gather ${quantity(pileL, 'L')} of raw stuff for it, about ${quantity(browns, 'L')} of browns and ${quantity(pileL - browns, 'L')} of greens.`,
      ...(full ? ['That fills the bins and does not make all of it: order the rest, or spread thinner.'] : []),
      `Build it all at once by ${dated(startBy)}, turn it every week, and write it down on the Compost yard page: then it counts.`,
      'Not enough stuff, or no room? Mark it skipped: the compost is then ordered instead.',
    ],
    cautions: [
      'Dry leaves and straw raise dust and mould spores: wet them, wear a mask, and lift with bent knees.',
      'Hay, straw and manure of unknown history can carry weedkiller that outlives the pile: grow beans in some of it first.',
      'Raw manure: wear gloves, wash your hands, and gather and keep it by your local rules.',
    ],
    supplies: [{ what: 'raw stuff for a pile', amount: { value: pileL, unit: 'L' } }],
    window: {
      earliest: addDays(startBy, -BEGIN_DAYS.first),
      preferred: addDays(startBy, -BEGIN_DAYS.usual),
      latest: startBy,
    },
    ifMissed: 'drop',
    missedNote: 'It is too late now for a pile to serve these layers: order compost for them instead.',
    effortMinutes: START_UP_MINUTES + Math.ceil((pileL / 1000) * 2 * TURN_MINUTES_PER_M3),
    needs: [],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      {
        rule: 'compost-begin.in-time',
        saw: { litres, raw: pileL, day },
        limit: startBy,
        source: 'compost:S26',
      },
    ],
    makes: [],
  };
}
