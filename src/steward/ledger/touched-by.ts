/**
 * What a fact is about: the names by which two facts are seen to be about the same thing.
 */
import {
  type ChosenFact,
  isChosen,
  isOfPeople,
  isSeen,
  isWork,
  type SeenFact,
  type WorkFact,
} from '../../garden/fact-kinds.ts';
import type { DoneTask, Fact } from '../../garden/facts.ts';
import type { HouseholdFact } from '../../garden/household-facts.ts';
import { KNOWN_BY } from '../../garden/mended-file.ts';
import type { RowList, StoredEdit } from '../../garden/stored-edit.ts';

/** The beds, plantings, stands, piles, wishes, people and tasks a fact is about. */
export function touchedBy(fact: Fact): Set<string> | 'all' {
  if (isWork(fact)) return new Set(touchedByWork(fact));
  if (isSeen(fact)) return new Set(touchedByLook(fact));
  if (isChosen(fact)) return new Set(touchedByChoice(fact));
  if (isOfPeople(fact)) return new Set(touchedOfPeople(fact));
  switch (fact.kind) {
    case 'garden-imported':
    case 'entry-undone':
      return 'all';
    case 'garden-mended':
      return new Set(fact.edits.flatMap(touchedByEdit));
    case 'away-told':
      return new Set([rowName('away', { ...fact })]);
    default:
      return fact satisfies never;
  }
}

function touchedByWork(fact: WorkFact): string[] {
  switch (fact.kind) {
    case 'tasks-done':
      return fact.tasks.flatMap(({ key, subject, makes }) => [key, subject.id, ...makes.flatMap(idsOf)]);
    case 'tasks-skipped':
    case 'put-off':
      return fact.tasks.map(({ key }) => key);
    case 'day-pinned':
    case 'day-unpinned':
      return [fact.key];
    default:
      return fact satisfies never;
  }
}

function touchedByLook(fact: SeenFact): string[] {
  switch (fact.kind) {
    case 'pile-read':
    case 'compost-not-ready':
      return [fact.pileId];
    case 'disease-found':
      return [fact.bedId];
    case 'stage-seen':
    case 'regrowth-seen':
      return [fact.standId];
    case 'stand-looked':
      return [fact.standId, ...(fact.task ? [fact.task.key] : [])];
    case 'cold-night-told':
      return [rowName('coldNights', { ...fact })];
    case 'soil-squeezed':
      return [rowName('soilSqueezes', { ...fact })];
    case 'weather-logged':
      return fact.days.map(({ day, kind }) => `weather ${day} ${kind}`);
    default:
      return fact satisfies never;
  }
}

function touchedByChoice(fact: ChosenFact): string[] {
  switch (fact.kind) {
    case 'stand-planned':
      return [fact.bedId, fact.standId, ...(fact.instead ?? [])];
    case 'stand-dropped':
      return [fact.bedId, fact.standId];
    case 'mulch-planned':
      return [fact.bedId];
    case 'plantings-planned':
      return [
        ...[...fact.plantings, ...fact.dropped].flatMap(({ id, bedId }) => [id, bedId]),
        ...(fact.coversDropped ?? []).flatMap(({ standId, bedId }) => [standId, bedId]),
      ];
    case 'crop-wished':
    case 'wish-dropped':
      return [wishName(fact.cropId, fact.season)];
    default:
      return fact satisfies never;
  }
}

function touchedOfPeople(fact: HouseholdFact): string[] {
  switch (fact.kind) {
    case 'member-kept': {
      const former = fact.formerName ? [`called ${fact.formerName}`] : [];
      return [`member ${fact.member.id}`, `called ${fact.member.name}`, ...former];
    }
    case 'member-gone':
    case 'mail-stopped':
      return [`member ${fact.id}`, `called ${fact.name}`];
    case 'task-assigned':
      return [...fact.tasks.map(({ key }) => key), ...(fact.to ? [`called ${fact.to}`] : [])];
    case 'people-told':
      return ['the household'];
    default:
      return fact satisfies never;
  }
}

/** What an edit is about: an item with what it is in, or what the row names. */
function touchedByEdit(edit: StoredEdit): string[] {
  switch (edit.how) {
    case 'added':
    case 'gone':
      return [edit.id, ...named(edit.row), ...called(edit.row.name)];
    case 'changed': {
      const names = edit.fields.flatMap(({ key, was, is }) => (key === 'name' ? [...called(was), ...called(is)] : []));
      return [edit.id, ...named(edit.goesBy), ...names];
    }
    case 'row':
      return [edit.was, edit.row].flatMap((row) => (row ? [...named(row), rowName(edit.list, row)] : []));
    case 'part-changed':
    case 'part-replaced':
      return [`the ${edit.part}`];
    case 'days':
    case 'days-gone':
      return edit.days.map(({ day, kind }) => `weather ${day} ${kind}`);
    default:
      return edit satisfies never;
  }
}

function named(row: Readonly<Record<string, unknown>> = {}): string[] {
  return [row.bed, row.bin].filter((id) => typeof id === 'string');
}

/** A name that one bed or bin has at a time. */
function called(name: unknown): string[] {
  return typeof name === 'string' ? [`named ${name}`] : [];
}

/** A row without an id by what it is known by; a wish as the facts of wishes call it. */
function rowName(list: RowList, row: Readonly<Record<string, unknown>>): string {
  if (list === 'wishes') return wishName(String(row.crop), row.year);
  return [list, ...KNOWN_BY[list].map((key) => row[key] ?? '')].join(' ');
}

function wishName(cropId: string, season: unknown = ''): string {
  return `wish ${cropId} ${season}`;
}

function idsOf(effect: DoneTask['makes'][number]): string[] {
  return Object.entries(effect).flatMap(([name, value]) => (name.endsWith('Id') ? [String(value)] : []));
}
