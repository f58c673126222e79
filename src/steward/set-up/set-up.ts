/**
 * Setting a garden up over a store.
 */
import { randomBytes } from 'node:crypto';
import type { Climate } from '../../climate/climate.ts';
import { firstFree, slug } from '../../garden/ids.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { EMPTY_DRAFT, type SetUpDraft } from '../../garden/set-up-draft.ts';
import { zoneAt } from '../../garden/time-zone.ts';
import type { Day } from '../../measures/days.ts';
import type { KeptDraft } from '../../store/drafts.ts';
import { readStationTable } from '../../store/station-file.ts';
import type { Shelves } from '../../store/store.ts';
import { climateOf } from '../crew/garden-climate.ts';
import type { DraftOutlook, MadeGarden, SetUpDoings } from '../doings/set-up-doings.ts';
import { refuseCrowded } from '../facts/crowded.ts';
import { addFeed } from '../feeds/feeds.ts';
import { type ImportRoom, tryImport } from '../files/imports.ts';
import { dayIn, gardenOf } from '../planning/planner.ts';
import { draftDoubts, refuseTwoNow } from './draft-doubts.ts';
import { climateGround, fileOfDraft, missingSteps } from './draft-file.ts';

/** What the first feed of a garden is called. */
const FEED_LABEL = 'Calendar';

/** Times an id is looked for again when another garden took it meanwhile. */
const TRIES = 5;

/** What a trial garden is called while nobody knows its id. */
const TRIAL_ID = 'trial';

/** Octets of a draft's id: enough that two never meet. */
const ID_OCTETS = 9;

/** What a steward does with drafts. */
export function setUpIn(room: ImportRoom): SetUpDoings {
  const { store, clock } = room;
  const outlooks = new Outlooks(room);
  return {
    drafts: () => store.drafts(),
    draft: (id) => store.draft(id),
    async beginDraft() {
      const now = clock.now();
      const id = randomBytes(ID_OCTETS).toString('hex');
      const kept = { id, createdAt: now, changedAt: now, draft: EMPTY_DRAFT };
      await store.addDraft(kept);
      return kept;
    },
    changeDraft: (id, change) =>
      store.transaction(async (shelves) => {
        const kept = await shelves.draft(id);
        if (kept === undefined || kept.gardenId !== undefined) return undefined;
        const changed = { ...kept, changedAt: clock.now(), draft: change(kept.draft) };
        await shelves.changeDraft(changed);
        return changed;
      }),
    throwAwayDraft: (id) => store.dropDraft(id),
    draftOutlook: (draft) => outlooks.of(draft),
    makeGarden: (draftId, by) => makeGarden(room, draftId, by),
    stations: readStationTable,
  };
}

/** Outlooks held while they are looked at: a step is shown, sent and shown again. House default: a few set-ups at once. */
const OUTLOOKS_HELD = 8;

class Outlooks {
  readonly #room: ImportRoom;
  readonly #held = new Map<string, Promise<DraftOutlook>>();

  constructor(room: ImportRoom) {
    this.#room = room;
  }

  of(draft: SetUpDraft): Promise<DraftOutlook> {
    const { passed: _, pressed: __, ...told } = draft;
    const name = JSON.stringify([dayOf(this.#room, draft), told]);
    const outlook = this.#held.get(name) ?? outlookOf(this.#room, draft);
    this.#held.delete(name);
    this.#held.set(name, outlook);
    // What failed is tried anew when it is next asked for.
    outlook.catch(() => {
      if (this.#held.get(name) === outlook) this.#held.delete(name);
    });
    const [oldest] = this.#held.keys();
    if (oldest !== undefined && this.#held.size > OUTLOOKS_HELD) this.#held.delete(oldest);
    return outlook;
  }
}

async function outlookOf(room: ImportRoom, draft: SetUpDraft): Promise<DraftOutlook> {
  const missing = missingSteps(draft);
  const today = dayOf(room, draft);
  const tried = await tryOut(() => climateOfDraft(draft, today));
  const climate = tried.result;
  if (climate === undefined || missing.length > 0)
    return { today, missing, problems: tried.problems, ...(climate === undefined ? {} : { climate }) };
  const planned = await tryOut(() => trialOf(room, draft, { climate, today }));
  const trial = planned.result ?? {};
  return { today, missing, climate, problems: planned.problems, ...trial };
}

async function tryOut<Result>(work: () => Promise<Result>): Promise<{ result?: Result; problems: readonly Problem[] }> {
  try {
    return { result: await work(), problems: [] };
  } catch (error) {
    if (error instanceof InputRefused) return { problems: error.problems };
    throw error;
  }
}

function dayOf({ clock }: ImportRoom, { place, about }: SetUpDraft): Day {
  const zone = about?.timeZone ?? (place && zoneAt(place)) ?? 'UTC';
  return clock.today ?? dayIn(zone, clock.now());
}

async function climateOfDraft(draft: SetUpDraft, today: Day): Promise<Climate | undefined> {
  const ground = climateGround(draft);
  return ground && climateOf(ground, today, { record: undefined, stations: readStationTable });
}

/** The garden as it would be, with its plan. */
async function trialOf(
  room: ImportRoom,
  draft: SetUpDraft,
  { climate, today }: { climate: Climate; today: Day },
): Promise<Required<Pick<DraftOutlook, 'trial' | 'doubts'>>> {
  const file = fileOfDraft(draft, { climate, today, id: TRIAL_ID });
  const fact = { kind: 'garden-imported' as const, file, prefer: 'file' as const };
  const ledger: LedgerEntry[] = [{ entry: 1, recordedAt: room.clock.now(), recordedOn: today, by: TRIAL_ID, fact }];
  const garden = gardenOf(TRIAL_ID, ledger);
  refuseCrowded(file, garden, climate);
  refuseTwoNow(draft, file, { garden, climate }, today);
  const trial = { ...(await room.planner.tryOut(TRIAL_ID, ledger, { published: undefined, version: 0 })), ledger };
  return { trial, doubts: draftDoubts(draft, file, trial) };
}

async function makeGarden(room: ImportRoom, draftId: string, by: string): Promise<MadeGarden> {
  for (let tried = 0; tried < TRIES; tried += 1) {
    const kept = await room.store.draft(draftId);
    if (kept === undefined) throw refusal('The set-up', 'is not kept here any more.', 'Begin a new one.');
    const made = kept.gardenId === undefined ? await makeFrom(room, kept, by) : kept.gardenId;
    if (made !== undefined) return madeOf(room, made);
  }
  throw new Error('The set-up, or the name of its garden, kept changing. Nothing was kept. Try again.');
}

/** The garden made, or nothing where its id was taken, or the draft itself taken or changed, meanwhile. */
async function makeFrom(room: ImportRoom, { id: draftId, draft }: KeptDraft, by: string): Promise<string | undefined> {
  const { store, clock } = room;
  const today = dayOf(room, draft);
  const climate = await climateOfDraft(draft, today);
  const [missing] = missingSteps(draft);
  if (climate === undefined || missing !== undefined)
    throw refusal('The set-up', 'is not told to its end.', 'Go on with the steps that are still open.');
  const id = firstFree(slug(draft.about?.name ?? ''), await idsTaken(store));
  const tried = await tryImport(room, { file: fileOfDraft(draft, { climate, today, id }), prefer: 'file' }, by);
  const made = await store.transaction(async (shelves) => {
    const now = await shelves.draft(draftId);
    if (JSON.stringify(now?.draft) !== JSON.stringify(draft)) return undefined;
    if ((await idsTaken(shelves)).has(id) || !(await shelves.claimDraft(draftId, id))) return undefined;
    await tried.keep(shelves);
    await addFeed({ store: shelves, clock }, id, { label: FEED_LABEL });
    return id;
  });
  if (made !== undefined) await room.planner.adopt(made, tried, await store.factsVersion(made));
  return made;
}

/** Ids no new garden may have. */
export async function idsTaken(shelves: Pick<Shelves, 'gardenIds' | 'gardensPutAway'>): Promise<Set<string>> {
  return new Set([...(await shelves.gardenIds()), ...(await shelves.gardensPutAway()).map(({ id }) => id)]);
}

async function madeOf({ store }: ImportRoom, gardenId: string): Promise<MadeGarden> {
  const [first] = await store.feeds(gardenId);
  return { gardenId, feedId: first?.id ?? '' };
}

function refusal(where: string, what: string, mend: string): InputRefused {
  return new InputRefused('The garden was not made.', [{ where, what, mend }]);
}
