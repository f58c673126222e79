/**
 * Facts laid over a garden as its file tells it.
 */
import { applyFact } from './apply-fact.ts';
import type { CompostBought, Garden, Pile, Stand } from './garden.ts';
import { withPresentOnly } from './household-changes.ts';
import type { LedgerEntry } from './ledger.ts';
import { mended } from './mended.ts';
import { itself, oldestFirst, onOf } from './oldest-first.ts';
import { inOneForm } from './one-form.ts';
import { withThoseGrownIn } from './planned-beds.ts';
import { ToldOnce } from './told-once.ts';

/** A garden as its file tells it, with what was reported laid over it; what both tell counts once. */
export function withFacts(told: Garden, facts: readonly LedgerEntry[]): Garden {
  const fold = new Fold(told);
  for (const entry of facts) fold.take(entry);
  return fold.garden();
}

/** A fold under way. A mend is about all that was told before it, so that is laid together first. */
export class Fold {
  readonly #told: Garden;
  readonly #once = new ToldOnce();
  #base: Garden;
  #reported: LedgerEntry[] = [];
  #isWhole = false;

  constructor(told: Garden) {
    this.#told = told;
    this.#base = told;
  }

  /** Lays one more fact over it. */
  take(entry: LedgerEntry): void {
    const { fact, recordedOn } = entry;
    if (fact.kind === 'garden-mended') {
      const before = this.garden();
      this.#base = withBedsAsTold(mended(before, fact.edits, recordedOn), before, this.#base);
    } else this.#reported.push(entry);
    this.#isWhole = false;
  }

  /** The garden as it stands by now. */
  garden(): Garden {
    if (!this.#isWhole) this.#base = withReported(this.#told, this.#base, this.#reported, this.#once);
    this.#reported = [];
    this.#isWhole = true;
    const beds = withThoseGrownIn(this.#base);
    return beds === this.#base.beds ? this.#base : { ...this.#base, beds };
  }
}

/** A mended garden less the fillings of beds that nobody told: what grows there shows them, for as long as it does. */
function withBedsAsTold(now: Garden, before: Garden, base: Garden): Garden {
  if (before.beds === base.beds) return now;
  const shown = new Map(
    before.beds.flatMap((bed, at) =>
      base.beds[at]?.filledOn === bed.filledOn ? [] : [[bed.id, bed.filledOn] as const],
    ),
  );
  const beds = now.beds.map((bed) => {
    if (!shown.has(bed.id) || bed.filledOn !== shown.get(bed.id)) return bed;
    const { filledOn: _shown, ...told } = bed;
    return told;
  });
  return { ...now, beds };
}

type Whose = { told: Garden; once: ToldOnce };

function withReported(told: Garden, base: Garden, facts: readonly LedgerEntry[], once: ToldOnce): Garden {
  const all = withPresentOnly(facts.reduce(applyFact, base));
  const list = <Key extends keyof Garden>(name: Key) => ({ name, told: told[name], base: base[name], all: all[name] });
  return {
    ...all,
    stands: changed(base.stands, all.stands, (stand, was) => standJoined(stand, was, { told, once })),
    piles: changed(base.piles, all.piles, (pile, was) => pileJoined(pile, was, { told, once })),
    topdressed: once.layers(list('topdressed')),
    fed: once.strewn(list('fed')),
    compostBought:
      all.compostBought === base.compostBought
        ? base.compostBought
        : once.joined(
            { ...list('compostBought'), base: all.compostBought.slice(0, base.compostBought.length) },
            onOf,
            asBought,
          ),
    seeds: once.packets(list('seeds')),
    away: once.joined(list('away'), ({ from }) => from),
    soilTests: once.joined(list('soilTests'), onOf),
    soilSqueezes: once.joined(list('soilSqueezes'), onOf),
    diseases: once.joined(list('diseases'), onOf),
    mulches: all.mulches === base.mulches ? base.mulches : oldestFirst(eachOnce(all.mulches), ({ from }) => from),
    coldNights: once.joined(list('coldNights'), ({ evening }) => evening),
  };
}

/** A delivery by what was bought: whether beans grew well in it is found out later. */
function asBought({ tested: _tested, ...bought }: CompostBought): string {
  return inOneForm(bought);
}

function standJoined(stand: Stand, was: Stand | undefined, { told, once }: Whose): Stand {
  const first = told.stands.find(({ id }) => id === stand.id);
  const log = <Key extends keyof Stand>(key: Key) => ({
    name: `stand ${stand.id} ${key}`,
    told: first?.[key],
    base: was?.[key],
  });
  const { regrowthCheckedOn, regrowth, seen, looked, resown, seed } = stand;
  return {
    ...stand,
    regrowthCheckedOn: once.joined({ ...log('regrowthCheckedOn'), all: regrowthCheckedOn }, itself),
    ...(regrowth === undefined ? {} : { regrowth: once.joined({ ...log('regrowth'), all: regrowth }, onOf) }),
    ...(seen === undefined ? {} : { seen: once.joined({ ...log('seen'), all: seen }, onOf) }),
    ...(looked === undefined ? {} : { looked: once.joined({ ...log('looked'), all: looked }, onOf) }),
    ...(resown === undefined ? {} : { resown: once.joined({ ...log('resown'), all: resown }, onOf) }),
    ...(seed === undefined ? {} : { seed: once.joined({ ...log('seed'), all: seed }, onOf) }),
  };
}

function pileJoined(pile: Pile, was: Pile | undefined, { told, once }: Whose): Pile {
  const first = told.piles.find(({ id }) => id === pile.id);
  const log = <Key extends keyof Pile>(key: Key) => ({
    name: `pile ${pile.id} ${key}`,
    told: first?.[key],
    base: was?.[key],
  });
  const { turns, readings, notReady } = pile;
  return {
    ...pile,
    turns: once.joined({ ...log('turns'), all: turns }, itself),
    readings: once.joined({ ...log('readings'), all: readings }, onOf),
    ...(notReady === undefined ? {} : { notReady: once.joined({ ...log('notReady'), all: notReady }, onOf) }),
  };
}

/** Items with those made anew that facts have touched; the others stay the very same. */
function changed<Item extends { id: string }>(
  told: readonly Item[],
  all: readonly Item[],
  change: (item: Item, toldItem: Item | undefined) => Item,
): readonly Item[] {
  if (all === told) return told;
  const byId = new Map(told.map((item) => [item.id, item]));
  return all.map((item) => (byId.get(item.id) === item ? item : change(item, byId.get(item.id))));
}

function eachOnce<Item>(items: readonly Item[]): Item[] {
  return [...new Map(items.map((item) => [inOneForm(item), item])).values()];
}
