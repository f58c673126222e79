/**
 * Building a pile.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import type { TaskDraft } from '../draft.ts';
import { draftOfPile, forkingMinutes, OPENING_CAUTIONS } from './pile-draft.ts';
import { builtLitres } from './pile-life.ts';

/** Thickest stick that rots in a season, mm (half an inch, common practice). */
const THICKEST_STICK_MM = 12.7;

/** Build a pile the plan asks for. */
export function buildDraft(pile: Pile, bin: Bin): TaskDraft {
  const day = pile.built.day;
  const [browns, greens] = (['brown', 'green'] as const).map((kind) => litresOf(pile, kind));
  return {
    ...draftOfPile(pile, bin),
    key: `pile-build/pile:${pile.id}`,
    kind: 'build-pile',
    job: { id: 'build-pile', title: 'Build a pile' },
    weight: 'work',
    title: `Build the pile in ${bin.name}`,
    steps: [
      ...pile.ingredients.map(
        ({ materialId, litres }) => `${feedstockById(materialId).name}: ${quantity(litres, 'L')}.`,
      ),
      `In all ${quantity(browns ?? 0, 'L')} of browns to ${quantity(greens ?? 0, 'L')} of greens; two parts browns to one of greens by volume is the rule of the trade.`,
      `Coarse stuff at the bottom, then thin layers. Nothing thicker than ${quantity(THICKEST_STICK_MM, 'mm')}.`,
      'Wet each layer until a squeezed handful is damp and gives a drop or two at most.',
    ],
    cautions: [
      ...OPENING_CAUTIONS.slice(0, 1),
      ...pile.ingredients.flatMap(({ materialId }) => feedstockById(materialId).cautions),
    ],
    window: { earliest: addDays(day, -3), preferred: day, latest: addDays(day, 7) },
    ifMissed: 'still do',
    missedNote: 'Every week later is a week later that the compost is ready.',
    effortMinutes: forkingMinutes(builtLitres(pile), 2),
    confidence: 'recorded',
    reasons: [{ rule: 'pile-build.planned', saw: { day }, source: "the garden's own plan" as const }],
    makes: [{ makes: 'pile-built' as const, pileId: pile.id }],
  };
}

function litresOf(pile: Pile, kind: 'brown' | 'green'): number {
  return pile.ingredients
    .filter(({ materialId }) => feedstockById(materialId).class === kind)
    .reduce((sum, { litres }) => sum + litres, 0);
}
