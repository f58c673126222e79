/**
 * What doing a task made true, as a line of the record.
 */
import type { Effect } from '../../garden/effects.ts';
import type { SoilSqueeze } from '../../garden/garden.ts';
import { withoutAbsent } from '../../garden/without-absent.ts';
import { fertiliserById } from '../../handbook/fertilisers.ts';
import { dated } from '../../measures/quantity.ts';
import { coverName } from '../../practices/covers.ts';
import { claims } from './claims.ts';
import type { Names } from './names.ts';
import type { Happening } from './row.ts';
import { regrowthDoing } from './seen-words.ts';

/** The line of the task itself, to which an effect adds. */
type TaskLine = Omit<Happening, 'claim' | 'doing'> & { taskKind: string };

/** One effect of a task that was done. */
export function ofEffect(effect: Effect, { taskKind, ...it }: TaskLine, names: Names): Happening {
  const { on } = it;
  switch (effect.makes) {
    case 'stand-sown': {
      const { standId, bedId, coverId } = effect;
      const sown = { ...it, ...names.bed(bedId), itemId: standId, what: coverName(coverId) };
      return { ...sown, claim: claims.coverSown(standId), doing: 'cover-sown' };
    }
    case 'stand-resown': {
      const { standId, coverId } = effect;
      const claim = claims.resown(standId, { on, coverId });
      return { ...it, itemId: standId, what: coverName(coverId), claim, doing: 'cover-sown-again' };
    }
    case 'seed-sown': {
      const { standId, coverId, grams } = effect;
      const claim = claims.seedSown(standId, { on, coverId, grams });
      return { ...it, itemId: standId, what: coverName(coverId), grams, claim, doing: 'seed-sown' };
    }
    case 'seed-bought': {
      const { coverId, grams } = effect;
      return { ...it, what: coverName(coverId), grams, claim: claims.seedBought(coverId, on), doing: 'seed-ordered' };
    }
    case 'stand-cut':
      return { ...it, itemId: effect.standId, claim: claims.coverCut(effect.standId), doing: 'cover-cut' };
    case 'stand-dead':
      return { ...it, itemId: effect.standId, claim: claims.coverDead(effect.standId), doing: 'cover-dead' };
    case 'regrowth-checked': {
      const claim = claims.regrowthChecked(effect.standId, on);
      return { ...it, itemId: effect.standId, claim, doing: 'regrowth-looked-for', note: 'nothing green' };
    }
    case 'regrowth-worked': {
      const { standId, what } = effect;
      return { ...it, itemId: standId, claim: claims.regrowth(standId, { on, what }), ...regrowthDoing({ on, what }) };
    }
    case 'planting-started': {
      const doing = taskKind === 'set-out' ? 'set-out' : 'sown';
      return { ...it, itemId: effect.plantingId, claim: claims.started(effect.plantingId), doing };
    }
    case 'planting-raised':
      return { ...it, itemId: effect.plantingId, claim: claims.raised(effect.plantingId), doing: 'started-indoors' };
    case 'bed-cleared':
      return { ...it, itemId: effect.plantingId, claim: claims.ended(effect.plantingId), doing: 'cleared' };
    default:
      return ofYard(effect, it, names);
  }
}

type OfBed =
  | 'stand-sown'
  | 'stand-resown'
  | 'seed-sown'
  | 'seed-bought'
  | 'stand-cut'
  | 'stand-dead'
  | 'regrowth-checked'
  | 'regrowth-worked'
  | 'planting-started'
  | 'planting-raised'
  | 'bed-cleared';

/** What is done with soil, piles and compost. */
function ofYard(effect: Exclude<Effect, { makes: OfBed }>, it: Omit<TaskLine, 'taskKind'>, names: Names): Happening {
  const { on } = it;
  switch (effect.makes) {
    case 'bed-filled':
      return {
        ...it,
        ...names.bed(effect.bedId, it.aboutName),
        claim: claims.filled(effect.bedId),
        doing: 'bed-filled',
      };
    case 'bed-topdressed': {
      const { bedId, litres, pileIds = [] } = effect;
      const from = pileIds.length === 0 ? {} : { piles: pileIds.join(' ') };
      const given = { ...it, ...names.bed(bedId, it.aboutName), what: 'compost', litres, ...from };
      return { ...given, claim: claims.spread({ bedId, on, litres }), doing: 'compost-spread' };
    }
    case 'bed-fed': {
      const { makes: _makes, ...meal } = effect;
      const { bedId, plantingId, fertiliserId, grams } = meal;
      const item = plantingId === undefined ? {} : { itemId: plantingId };
      const what = fertiliserById(fertiliserId).name.toLowerCase();
      const given = { ...it, ...names.bed(bedId, it.aboutName), ...item, what, grams };
      return { ...given, claim: claims.fed(withoutAbsent({ ...meal, on })), doing: 'fed' };
    }
    case 'pile-built':
      return { ...it, ...ofPile(effect), claim: claims.built(effect.pileId), doing: 'pile-built' };
    case 'pile-turned':
      return { ...it, itemId: effect.pileId, claim: claims.turned(effect.pileId, on), doing: 'pile-turned' };
    case 'pile-curing':
      return { ...it, itemId: effect.pileId, claim: claims.curing(effect.pileId, on), doing: 'pile-curing' };
    case 'pile-finished':
      return { ...it, ...ofPile(effect), claim: claims.ready(effect.pileId), doing: 'pile-ready' };
    case 'compost-bought': {
      const { litres } = effect;
      return { ...it, claim: claims.bought({ on, litres }), doing: 'compost-ordered', what: 'compost', litres };
    }
    case 'compost-tested': {
      const note = `beans grew well in what was ordered or delivered on ${dated(effect.boughtOn)}`;
      return { ...it, claim: claims.tested(effect.boughtOn), doing: 'compost-tested', what: 'compost', note };
    }
    case 'soil-sampled':
      return { ...it, claim: claims.sampled({ on, ...bedIn(effect.bedId) }), doing: 'soil-sampled' };
    case 'soil-squeezed':
      return { ...it, ...ofSqueeze({ ...effect, on }, names) };
    default:
      return effect satisfies never;
  }
}

/** A pile with its litres, where somebody told them. */
function ofPile({ pileId, litres }: { pileId: string; litres?: number | undefined }) {
  return withoutAbsent({ itemId: pileId, litres });
}

function bedIn(bedId: string | undefined): { bedId?: string } {
  return bedId === undefined ? {} : { bedId };
}

/** A squeezed handful, told by itself or by the task that asked for it. */
export function ofSqueeze({ on, soilTexture, answer }: SoilSqueeze, names: Names): Happening {
  const claim = claims.squeezed({ on, soilTexture, answer });
  const what = soilTexture.replaceAll('_', ' ');
  return { ...names.garden(), claim, on, doing: 'soil-squeezed', what, note: `it ${answer}` };
}
