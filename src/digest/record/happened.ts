/**
 * What has happened in a garden, by what the garden itself holds: whoever told it.
 */
import type { Bed, Garden, Pile, Planting, SoilTest, Stand } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { fertiliserById } from '../../handbook/fertilisers.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { coverName } from '../../practices/covers.ts';
import { isSeed } from '../../practices/planting/planting-in-bed.ts';
import { COVERED_WORDS } from '../../practices/stand-cover.ts';
import { claims } from './claims.ts';
import { cropName, Names } from './names.ts';
import type { Happening } from './row.ts';
import { FAILED_WORDS, readingNote, regrowthDoing, STAGE_NOTES } from './seen-words.ts';

/**
 * Everything that happened, in no order.
 *
 * @param toldBeds the beds as the garden file tells them: that something grows in a bed shows that it was filled, but not on
 *   which day
 */
export function happenedIn(garden: Garden, toldBeds: readonly Bed[]): Happening[] {
  const names = new Names(garden);
  return [
    ...garden.plantings.flatMap((planting) => ofPlanting(planting, names)),
    ...garden.stands.flatMap((stand) => ofStand(stand, names)),
    ...garden.piles.flatMap((pile) => ofPile(pile, names)),
    ...toldBeds.flatMap((bed) => ofBed(bed, names)),
    ...ofGround(garden, names),
    ...ofGarden(garden, names),
  ];
}

function ofPlanting(planting: Planting, names: Names): Happening[] {
  const { id: itemId, start, indoorsOn, lastHarvest, areaM2 } = planting;
  const it = { ...names.bed(planting.bedId), itemId, what: cropName(planting.cropId) };
  const how = start.how === 'set-out' ? 'set-out' : isSeed({ planting }) ? 'sown' : 'planted';
  const share = areaM2 === undefined ? {} : { areaM2 };
  return [
    ...(indoorsOn ? [{ ...it, claim: claims.raised(itemId), on: indoorsOn, doing: 'started-indoors' } as const] : []),
    ...(start.happened ? [{ ...it, ...share, claim: claims.started(itemId), on: start.day, doing: how } as const] : []),
    ...(lastHarvest?.happened
      ? [{ ...it, claim: claims.ended(itemId), on: lastHarvest.day, doing: 'harvest-ended' } as const]
      : []),
  ];
}

function ofStand(stand: Stand, names: Names): Happening[] {
  const { id: itemId, coverId, sow, cutOn, deadOn } = stand;
  const it = { ...names.bed(stand.bedId), itemId, what: coverName(coverId) };
  const { regrowthCheckedOn, regrowth = [], seen = [], looked = [], resown = [], seed = [] } = stand;
  return [
    ...(sow.happened ? [{ ...it, claim: claims.coverSown(itemId), on: sow.day, doing: 'cover-sown' } as const] : []),
    ...(cutOn ? [{ ...it, claim: claims.coverCut(itemId), on: cutOn, doing: 'cover-cut' } as const] : []),
    ...(deadOn ? [{ ...it, claim: claims.coverDead(itemId), on: deadOn, doing: 'cover-dead' } as const] : []),
    ...resown.map((row) => {
      const claim = claims.resown(itemId, row);
      return { ...it, what: coverName(row.coverId), claim, on: row.on, doing: 'cover-sown-again' } as const;
    }),
    ...seed.map((sown) => {
      const { on, grams, coverId: kind } = sown;
      const claim = claims.seedSown(itemId, sown);
      return { ...it, what: coverName(kind), claim, on, doing: 'seed-sown', grams } as const;
    }),
    ...looked.map((look) => {
      const note = `${COVERED_WORDS[look.covered]} of the ground green${look.weedy ? ', with weeds among it' : ''}`;
      return { ...it, claim: claims.looked(itemId, look), on: look.on, doing: 'cover-looked-at', note } as const;
    }),
    ...seen.map((stage) => {
      const claim = claims.stage(itemId, stage);
      const what = coverName(stage.coverId);
      return { ...it, what, claim, on: stage.on, doing: 'cover-flowering', note: STAGE_NOTES[stage.stage] } as const;
    }),
    ...regrowthCheckedOn.map((on) => {
      const claim = claims.regrowthChecked(itemId, on);
      return { ...it, claim, on, doing: 'regrowth-looked-for', note: 'nothing green' } as const;
    }),
    ...regrowth.map((row) => ({ ...it, claim: claims.regrowth(itemId, row), on: row.on, ...regrowthDoing(row) })),
  ];
}

function ofPile(pile: Pile, names: Names): Happening[] {
  const { id: itemId, built, readings, turns, notReady = [], curingSince, finishedOn, finishedLitres } = pile;
  const it = { ...names.pile(itemId), itemId };
  const litres = pile.ingredients.reduce((sum, portion) => sum + portion.litres, 0);
  const inIt = pile.ingredients.map(
    (portion) => `${quantity(portion.litres, 'L')} of ${materialName(portion.materialId)}`,
  );
  const made = { ...(litres > 0 ? { litres } : {}), ...(inIt.length > 0 ? { note: inIt.join('; ') } : {}) };
  return [
    ...(built.happened
      ? [{ ...it, claim: claims.built(itemId), on: built.day, doing: 'pile-built', ...made } as const]
      : []),
    ...readings.map((reading) => {
      const { on, tempC } = reading;
      const heat = tempC === undefined ? {} : { tempC };
      const note = readingNote(reading);
      const told = note === '' ? {} : { note };
      return { ...it, claim: claims.reading(itemId, reading), on, doing: 'pile-read', ...heat, ...told } as const;
    }),
    ...turns.map((on) => ({ ...it, claim: claims.turned(itemId, on), on, doing: 'pile-turned' }) as const),
    ...notReady.map(({ on, failed }) => {
      const note = failed.map((failure) => FAILED_WORDS[failure]).join(', ');
      return { ...it, claim: claims.notReady(itemId, { on, failed }), on, doing: 'pile-not-ready', note } as const;
    }),
    ...(curingSince
      ? [{ ...it, claim: claims.curing(itemId, curingSince), on: curingSince, doing: 'pile-curing' } as const]
      : []),
    ...(finishedOn
      ? [
          {
            ...it,
            ...{ claim: claims.ready(itemId), on: finishedOn, doing: 'pile-ready' as const },
            ...(finishedLitres === undefined
              ? {}
              : { note: `${quantity(finishedLitres, 'L')} there when it was measured` }),
          },
        ]
      : []),
  ];
}

function ofBed({ id, filledOn }: Bed, names: Names): Happening[] {
  return filledOn === undefined
    ? []
    : [{ ...names.bed(id), claim: claims.filled(id), on: filledOn, doing: 'bed-filled' }];
}

/** What was given to the ground, found in it or on it. */
function ofGround({ topdressed, fed, soilTests, soilSqueezes, diseases }: Garden, names: Names): Happening[] {
  return [
    ...topdressed.map((layer) => {
      const { bedId, on, litres, pileIds = [], materialId } = layer;
      const what = materialId === undefined ? 'compost' : materialName(materialId);
      const doing = materialId === undefined ? 'compost-spread' : 'material-spread';
      const from = pileIds.length === 0 ? {} : { piles: pileIds.join(' ') };
      return { ...names.bed(bedId), claim: claims.spread(layer), on, doing, what, litres, ...from } as const;
    }),
    ...fed.map((meal) => {
      const { bedId, on, grams, fertiliserId, plantingId } = meal;
      const what = fertiliserById(fertiliserId).name.toLowerCase();
      const item = plantingId === undefined ? {} : { itemId: plantingId };
      return { ...names.bed(bedId), ...item, claim: claims.fed(meal), on, doing: 'fed', what, grams } as const;
    }),
    ...soilTests
      .filter((test) => !isAnswered(test, soilTests))
      .map((test) => {
        const about = test.bedId === undefined ? names.garden() : names.bed(test.bedId);
        const found = foundInSoil(test);
        const note = found === '' ? {} : { note: found };
        return { ...about, claim: claims.sampled(test), on: test.on, doing: 'soil-sampled', ...note } as const;
      }),
    ...soilSqueezes.map((squeeze) => {
      const { on, soilTexture, answer } = squeeze;
      const what = soilTexture.replaceAll('_', ' ');
      return {
        ...names.garden(),
        claim: claims.squeezed(squeeze),
        on,
        doing: 'soil-squeezed',
        what,
        note: `it ${answer}`,
      } as const;
    }),
    ...diseases.map((found) => {
      const { bedId, on, disease, cropId } = found;
      const note = `on the ${cropName(cropId)}`;
      return {
        ...names.bed(bedId),
        claim: claims.disease(found),
        on,
        doing: 'disease-found',
        what: disease,
        note,
      } as const;
    }),
  ];
}

/** Whether the laboratory's answer to a sample stands in another row: the sample is then told once, with its answer. */
function isAnswered(test: SoilTest, all: readonly SoilTest[]): boolean {
  if (foundInSoil(test) !== '') return false;
  return all.some((other) => other.on === test.on && other.bedId === test.bedId && foundInSoil(other) !== '');
}

function foundInSoil({ ph, phosphorusPpm, organicMatterPercent }: SoilTest): string {
  return [
    ph === undefined ? undefined : `pH ${ph}`,
    phosphorusPpm === undefined ? undefined : `${phosphorusPpm} ppm of phosphorus`,
    organicMatterPercent === undefined ? undefined : `${organicMatterPercent} % organic matter`,
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

function ofGarden({ compostBought, away, coldNights }: Garden, names: Names): Happening[] {
  const it = names.garden();
  return [
    ...compostBought.flatMap((load): Happening[] => {
      const { on, litres, ordered, tested } = load;
      const doing = ordered ? 'compost-ordered' : 'compost-delivered';
      const got: Happening = { ...it, claim: claims.bought(load), on, doing, what: 'compost', litres };
      if (tested === undefined) return [got];
      const note = `beans grew well in what was ${ordered ? 'ordered' : 'delivered'} on ${dated(on)}`;
      return [got, { ...it, claim: claims.tested(on), on: tested, doing: 'compost-tested', what: 'compost', note }];
    }),
    ...away.map(({ from, to }) => ({ ...it, claim: claims.away({ from, to }), on: from, to, doing: 'away' }) as const),
    ...coldNights
      .filter(({ how }) => how === 'measured')
      .map((night) => {
        const { evening, lowC } = night;
        return { ...it, claim: claims.coldNight(night), on: evening, doing: 'cold-night', tempC: lowC } as const;
      }),
  ];
}

function materialName(materialId: string): string {
  return feedstockById(materialId).name.toLowerCase();
}
