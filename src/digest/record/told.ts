/**
 * What a ledger's facts tell of things that happened.
 */
import type { DoneTask, Fact } from '../../garden/facts.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { withoutAbsent } from '../../garden/without-absent.ts';
import type { Day } from '../../measures/days.ts';
import { coverName } from '../../practices/covers.ts';
import { COVERED_WORDS } from '../../practices/stand-cover.ts';
import { claims } from './claims.ts';
import { cropName, type Names } from './names.ts';
import type { Doing, Happening } from './row.ts';
import { FAILED_WORDS, readingNote, regrowthDoing, STAGE_NOTES } from './seen-words.ts';
import { ofEffect, ofSqueeze } from './told-effects.ts';

/** Everything a fact tells that happened; plans, wishes and the plan's own turns tell nothing. */
export function toldBy({ entry, fact }: LedgerEntry, names: Names): Happening[] {
  switch (fact.kind) {
    case 'tasks-done':
      return fact.tasks.flatMap((task) => ofTask(task, { on: fact.on, entry }, names));
    case 'tasks-skipped':
      return fact.tasks.map((task) => ofSkipped(task, fact.on, names));
    case 'put-off':
      return fact.tasks.map(({ key, title }) => {
        const it = { ...names.ofKey(key), claim: claims.putOff(key, fact.on), on: fact.on };
        return { ...it, doing: 'put-off', title, task: key };
      });
    case 'stand-looked': {
      const { standId, on } = fact;
      const note = lookNote(fact);
      const looked = { ...names.bedOf('stands', standId), itemId: standId, on, note };
      return settling(fact.task, [{ ...looked, claim: claims.looked(standId, fact), doing: 'cover-looked-at' }]);
    }
    case 'regrowth-seen': {
      const { standId, bedId, coverId, on, answer } = fact;
      const told = { on, what: 'grew-again', answer } as const;
      const it = { ...names.bed(bedId), itemId: standId, what: coverName(coverId), on };
      return settling(fact.task, [{ ...it, claim: claims.regrowth(standId, told), ...regrowthDoing(told) }]);
    }
    default:
      return seen(fact, names);
  }
}

type Seen = Exclude<Fact, { kind: 'tasks-done' | 'tasks-skipped' | 'put-off' | 'stand-looked' | 'regrowth-seen' }>;

function seen(fact: Seen, names: Names): Happening[] {
  switch (fact.kind) {
    case 'pile-read':
      return ofReading(fact, names);
    case 'compost-not-ready': {
      const { pileId, on, failed } = fact;
      const note = failed.map((failure) => FAILED_WORDS[failure]).join(', ');
      const claim = claims.notReady(pileId, { on, failed });
      return [{ ...names.pile(pileId), itemId: pileId, claim, on, doing: 'pile-not-ready', note }];
    }
    case 'cold-night-told': {
      const { evening: on, lowC: tempC, how } = fact;
      return how === 'measured'
        ? [{ ...names.garden(), claim: claims.coldNight(fact), on, doing: 'cold-night', tempC }]
        : [];
    }
    case 'away-told':
      return [{ ...names.garden(), claim: claims.away(fact), on: fact.from, to: fact.to, doing: 'away' }];
    case 'soil-squeezed':
      return [ofSqueeze(fact, names)];
    case 'disease-found': {
      const { bedId, cropId, disease, on } = fact;
      const it = { ...names.bed(bedId), what: disease, note: `on the ${cropName(cropId)}` };
      return [{ ...it, claim: claims.disease(fact), on, doing: 'disease-found' }];
    }
    case 'stage-seen': {
      const { standId, coverId, on, stage } = fact;
      const it = { ...names.bedOf('stands', standId), itemId: standId, what: coverName(coverId) };
      const claim = claims.stage(standId, { coverId, on, stage });
      return [{ ...it, claim, on, doing: 'cover-flowering', note: STAGE_NOTES[stage] }];
    }
    case 'garden-imported':
    case 'garden-mended':
    case 'day-pinned':
    case 'day-unpinned':
    case 'weather-logged':
    case 'stand-planned':
    case 'stand-dropped':
    case 'mulch-planned':
    case 'plantings-planned':
    case 'crop-wished':
    case 'wish-dropped':
    case 'member-kept':
    case 'member-gone':
    case 'mail-stopped':
    case 'people-told':
    case 'task-assigned':
    case 'entry-undone':
      return [];
    default:
      return fact satisfies never;
  }
}

/** A reading; one that finds a curing pile hot makes it not ready too, where the garden holds that. */
function ofReading(fact: Extract<Fact, { kind: 'pile-read' }>, names: Names): Happening[] {
  const { kind: _kind, pileId, ...read } = fact;
  const reading = withoutAbsent(read);
  const { on, tempC } = reading;
  const it = { ...names.pile(pileId), itemId: pileId, on };
  const note = readingNote(reading);
  const found = { ...(tempC === undefined ? {} : { tempC }), ...(note === '' ? {} : { note }) };
  const heats = claims.notReady(pileId, { on, failed: ['heats'] });
  return [
    { ...it, claim: claims.reading(pileId, reading), doing: 'pile-read', ...found },
    { ...it, claim: heats, doing: 'pile-not-ready', note: FAILED_WORDS.heats, onlyIfHeld: true },
  ];
}

function lookNote({ covered, weedy }: Extract<Fact, { kind: 'stand-looked' }>): string {
  return `${COVERED_WORDS[covered]} of the ground green${weedy ? ', with weeds among it' : ''}`;
}

type Skipped = Extract<Fact, { kind: 'tasks-skipped' }>['tasks'][number];

function ofSkipped({ key, title, subject, practice, plannedFor }: Skipped, on: Day, names: Names): Happening {
  return {
    ...(subject === undefined ? names.ofKey(key) : names.subject(subject)),
    ...{ claim: claims.skipped(key, on), on, doing: 'skipped', title, task: key, onlyIfHeld: true },
    ...(practice === undefined ? {} : { practice }),
    ...(plannedFor === undefined ? {} : { plannedFor }),
  };
}

/** A task done: a line for each thing it made true, or one for the task where it made nothing that has a line. */
function ofTask(task: DoneTask, { on, entry }: { on: Day; entry: number }, names: Names): Happening[] {
  const { key, taskKind, subject, makes } = task;
  const item = subject.type === 'bed' || subject.type === 'garden' ? {} : { itemId: subject.id };
  const what = 'grows' in subject && subject.grows !== undefined ? { what: subject.grows } : {};
  const it = { ...names.subject(subject), ...item, ...what, on };
  if (makes.length > 0)
    return settling(
      task,
      makes.map((effect) => ofEffect(effect, { ...it, taskKind }, names)),
    );
  return settling(task, [{ ...it, claim: claims.task(key, entry), doing: doingOf(taskKind) }]);
}

/** What work that makes no fact of its own is told as. */
function doingOf(taskKind: string): Doing {
  if (taskKind.startsWith('mulch-')) return 'mulched';
  if (taskKind.startsWith('order-')) return 'ordered';
  return taskKind === 'feed-crop' || taskKind === 'bone-meal' ? 'fed' : 'done';
}

/** Things a task settled: the first carries the task, so that its minutes are counted once. */
function settling(task: DoneTask | undefined, made: readonly Happening[]): Happening[] {
  const [first, ...rest] = made;
  if (task === undefined || first === undefined) return [...made];
  const { key, title, practice, job, effortMinutes, onceMinutes, plannedFor, lastDay } = task;
  const settled = {
    ...{ task: key, title, practice, minutes: effortMinutes },
    ...(onceMinutes === undefined ? {} : { once: { jobId: job.id, minutes: onceMinutes } }),
    ...(plannedFor === undefined ? {} : { plannedFor }),
    ...(lastDay === undefined ? {} : { lastDay }),
  };
  return [{ ...first, ...settled }, ...rest.map((row) => ({ ...row, task: key }))];
}
