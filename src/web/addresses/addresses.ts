/**
 * Where each page is found.
 */
import type { SetUpStep } from '../../garden/set-up-draft.ts';
import type { Day } from '../../measures/days.ts';
import type { OpenSpan } from '../../practices/cover-cropping/open-spans.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { AskedAfter } from '../../steward/ledger/entries-about.ts';

/** This week, or the week a day falls in; of everybody, or of one member of the household. */
export function weekPath(gardenId: string, day?: Day, person?: string): string {
  return `/gardens/${encodeURIComponent(gardenId)}${weekQuery(day, person)}`;
}

/** The sheet of a week, made to be printed. */
export function weekSheetPath(gardenId: string, day?: Day, person?: string): string {
  return `${weekPath(gardenId)}/week-sheet${weekQuery(day, person)}`;
}

function weekQuery(day: Day | undefined, person: string | undefined): string {
  const asked = { ...(day === undefined ? {} : { week: day }), ...(person === undefined ? {} : { person }) };
  const query = String(new URLSearchParams(asked));
  return query === '' ? '' : `?${query}`;
}

/** The page of a task. Slashes and colons of its key stay: no proxy trips over an escaped slash, and it reads well. */
export function taskPath(gardenId: string, key: TaskKey): string {
  return `${weekPath(gardenId)}/tasks/${encodeURIComponent(key).replaceAll('%2F', '/').replaceAll('%3A', ':')}`;
}

/** The reasons of a task's date, on its page. */
export function whyPath(gardenId: string, key: TaskKey): string {
  return `${taskPath(gardenId, key)}#why`;
}

/** The compost yard. */
export function compostPath(gardenId: string): string {
  return `${weekPath(gardenId)}/compost`;
}

/** The page that works out a compost mix. */
export function mixPath(gardenId: string): string {
  return `${compostPath(gardenId)}/mix`;
}

/** The page that works out what a new bed is filled with. */
export function fillPath(gardenId: string): string {
  return `${compostPath(gardenId)}/fill`;
}

/** The weather log; with a day, its form for that day. */
export function weatherPath(gardenId: string, day?: Day): string {
  return `${weekPath(gardenId)}/weather${day === undefined ? '' : `?day=${day}`}`;
}

/** A day of the weather log, to be changed; with `gone`, the page that asks before it is taken out. */
export function loggedDayPath(gardenId: string, row?: { day: Day; kind: string }, gone?: 'gone'): string {
  const query = row === undefined ? '' : `?${new URLSearchParams({ day: row.day, kind: row.kind })}`;
  return `${weatherPath(gardenId)}/day${gone === undefined ? '' : '/gone'}${query}`;
}

/** Where many days go at once; with an offer, the page that shows them. */
export function loggedDaysPath(gardenId: string, offer?: string): string {
  return `${weatherPath(gardenId)}/days${offer === undefined ? '' : `/${offer}`}`;
}

/** The long record behind the garden, and where another is brought in. */
export function longRecordPath(gardenId: string): string {
  return `${weatherPath(gardenId)}/record`;
}

/** A record kept here as a file: the one that stands, or the one before it. */
export function longRecordCsvPath(gardenId: string, which: 'now' | 'former'): string {
  return `${longRecordPath(gardenId)}/${which}.csv`;
}

/** Where a press goes that offers a record kept here: the one before, or the one the climate does not stand on. */
export function offerKeptPath(gardenId: string): string {
  return `${longRecordPath(gardenId)}/offer`;
}

/** What a record would change, and where the press goes that takes it. */
export function offeredRecordPath(gardenId: string, offer: string): string {
  return `${offerKeptPath(gardenId)}/${offer}`;
}

export function feedsPath(gardenId: string): string {
  return `${weekPath(gardenId)}/feeds`;
}

/** Who works in the garden and eats from it. */
export function householdPath(gardenId: string): string {
  return `${weekPath(gardenId)}/household`;
}

/** The page that changes somebody, or that asks before they leave. */
export function memberPath(gardenId: string, name: string, doing: 'change' | 'leave'): string {
  return `${householdPath(gardenId)}/member/${doing}?${new URLSearchParams({ name })}`;
}

/** How the mail of somebody stands, with their next list. */
export function mailPath(gardenId: string, person: string): string {
  return `${weekPath(gardenId)}/household/mail?${new URLSearchParams({ person })}`;
}

/** Somebody's next list as the HTML that goes out. */
export function mailHtmlPath(gardenId: string, person: string): string {
  return mailPath(gardenId, person).replace('/mail?', '/mail/html?');
}

/** Where the press goes that sends a list once more. */
export function againPath(gardenId: string): string {
  return `${weekPath(gardenId)}/household/mail/again`;
}

/** What can be done with one feed, as its pages' addresses name it. */
export type FeedDoing = 'change' | 'new-address' | 'revoke' | 'open-again';

/** The page that asks before something is done with a feed, and the address its form goes to. */
export function feedPath(gardenId: string, feedId: string, doing: FeedDoing): string {
  return `${feedsPath(gardenId)}/${encodeURIComponent(feedId)}/${doing}`;
}

/** Keys for scripts that tell of piles. */
export function keysPath(gardenId: string): string {
  return `${weekPath(gardenId)}/keys`;
}

/** The page that asks before a key is revoked, and the address its form goes to. */
export function keyRevokePath(gardenId: string, key: string): string {
  return `${keysPath(gardenId)}/${encodeURIComponent(key)}/revoke`;
}

/** The things that can be reported, as their pages' addresses name them. */
export type ReportName = 'cold-night' | 'away' | 'disease' | 'pile' | 'stage';

/** The list of what can be reported, or the page of one of them. */
export function reportPath(gardenId: string, what?: ReportName): string {
  return `${weekPath(gardenId)}/report${what === undefined ? '' : `/${what}`}`;
}

/** What was told, newest first; before an entry, and about a bed or a pile alone, when one is given. */
export function historyPath(gardenId: string, { before, about }: { before?: number; about?: AskedAfter } = {}): string {
  const asked = new URLSearchParams({
    ...(about === undefined ? {} : { about: `${about.type}:${about.id}` }),
    ...(before === undefined ? {} : { before: String(before) }),
  });
  return `${weekPath(gardenId)}/history${asked.size === 0 ? '' : `?${asked}`}`;
}

/** The form that changes something told of a garden, or tells something new; fields may be filled in already. */
export function editPath(gardenId: string, list: string, ref?: string, filled: Record<string, string> = {}): string {
  const query = String(new URLSearchParams(filled));
  return `${weekPath(gardenId)}/edit/${list}/${encodeURIComponent(ref ?? 'new')}${query === '' ? '' : `?${query}`}`;
}

/** The form of a thing with one of its logs open, at an entry. */
export function editLogPath(
  gardenId: string,
  list: string,
  ref: string,
  entry: { log: string; field: string },
): string {
  return `${editPath(gardenId, list, ref, { open: entry.log })}#${entry.field}`;
}

/** The page that asks before something told of a garden is taken out. */
export function deletePath(gardenId: string, list: string, ref: string): string {
  return `${editPath(gardenId, list, ref)}/delete`;
}

/** The record of a season; of the running one when none is given. */
export function recordPath(gardenId: string, season?: number): string {
  return `${weekPath(gardenId)}/record${season === undefined ? '' : `?season=${season}`}`;
}

/** The record of a season as a file, or of every season. */
export function recordFilePath(gardenId: string, format: 'csv' | 'json', season?: number): string {
  return `${weekPath(gardenId)}/record.${format}${season === undefined ? '' : `?season=${season}`}`;
}

/** The page that shows what taking an entry back would do: the newest when none is given. */
export function undoPath(gardenId: string, entry?: number): string {
  return `${weekPath(gardenId)}/undo${entry === undefined ? '' : `?entry=${entry}`}`;
}

/** The sheet for whoever minds the garden, of the time away a day lies in or that comes next. */
export function awaySheetPath(gardenId: string, day?: Day): string {
  return `${weekPath(gardenId)}/away-sheet${day === undefined ? '' : `?day=${day}`}`;
}

/** Eighteen months of every bed, drawn; with the word of a season, that season close up. */
export function yearPath(gardenId: string, season?: string): string {
  return `${weekPath(gardenId)}/year${season === undefined ? '' : `?season=${season}`}`;
}

/** What could lie in every bed's next gap. */
export function seasonEndPath(gardenId: string): string {
  return `${weekPath(gardenId)}/season-end`;
}

/** A bed with its gaps. */
export function bedPath(gardenId: string, bedId: string): string {
  return `${weekPath(gardenId)}/beds/${encodeURIComponent(bedId)}`;
}

/** All that a garden was told, with the way to change it. */
export function gardenPath(gardenId: string): string {
  return `${weekPath(gardenId)}/garden`;
}

/** What feeds the beds. */
export function fertilityPath(gardenId: string): string {
  return `${weekPath(gardenId)}/fertility`;
}

/** A gap of a bed as an address names it: by the crops on either side, so that it means the same tomorrow. */
export function gapWord({ before, next }: OpenSpan): string {
  return `${before?.planting.id ?? 'start'}~${next?.planting.id ?? 'open'}`;
}

/** The page that shows what choosing something for a gap would do. */
export function choosePath(gardenId: string, bedId: string, asked: { gap: string; choice: string }): string {
  return `${bedPath(gardenId, bedId)}/choose?${new URLSearchParams(asked)}`;
}

/** The page that shows what taking a planned cover out would do. */
export function dropPath(gardenId: string, bedId: string, standId: string): string {
  return `${bedPath(gardenId, bedId)}/drop?${new URLSearchParams({ stand: standId })}`;
}

/** What a proposal is asked for, as an address names it. */
export interface ProposalAsked {
  years: number;
  anew: boolean;
}

function askedQuery({ years, anew }: ProposalAsked): string {
  return `?years=${years}${anew ? '&anew=yes' : ''}`;
}

/** The beds by seasons; with a proposal in front, where one is asked for. */
export function bedsPath(gardenId: string, asked?: ProposalAsked): string {
  return `${weekPath(gardenId)}/beds${asked === undefined ? '' : askedQuery(asked)}`;
}

/** The page that shows what taking a proposal would do, and the address its form goes to. */
export function takePlanPath(gardenId: string, asked?: ProposalAsked): string {
  return `${weekPath(gardenId)}/take-plan${asked === undefined ? '' : askedQuery(asked)}`;
}

/** Where wishes are sent to. */
export function wishesPath(gardenId: string): string {
  return `${weekPath(gardenId)}/wishes`;
}

/** The crops that could be chosen for a bed and season. */
export function spotPath(gardenId: string, bedId: string, season: number): string {
  return `${bedPath(gardenId, bedId)}/season?season=${season}`;
}

/** The page that shows what choosing a crop would do. */
export function chooseCropPath(gardenId: string, bedId: string, asked?: { season: number; crop: string }): string {
  const query = asked === undefined ? '' : `?season=${asked.season}&crop=${encodeURIComponent(asked.crop)}`;
  return `${bedPath(gardenId, bedId)}/season/crop${query}`;
}

/** The page that shows what taking a planned crop out would do. */
export function dropCropPath(gardenId: string, bedId: string, plantingId?: string): string {
  const query = plantingId === undefined ? '' : `?planting=${encodeURIComponent(plantingId)}`;
  return `${bedPath(gardenId, bedId)}/season/drop${query}`;
}

/** The page that follows work which takes a while. */
export function underWayPath(id: string): string {
  return `/under-way/${id}`;
}

/** The climate of a garden, with how each figure of it is worked out. */
export function climatePath(gardenId: string): string {
  return `${weekPath(gardenId)}/climate`;
}

/** The handbook's contents, or a page of it. */
export function handbookPath(name?: string, anchor?: string): string {
  return `/handbook${name === undefined ? '' : `/${name}`}${anchor === undefined ? '' : `#${anchor}`}`;
}

/** A picture of the handbook. */
export function handbookImagePath(file: string): string {
  return `${handbookPath('images')}/${encodeURIComponent(file)}`;
}

/** The bibliography, at one of its entries where one is named. */
export function sourcePath(sourceId?: string): string {
  return handbookPath('sources', sourceId);
}

/** Every garden of the household. */
export const GARDENS_PATH = '/gardens';

/** Where a garden set up here begins, and a draft of one: at the step it is to be gone on with, or at the one named. */
export function setUpPath(draftId?: string, step?: SetUpStep): string {
  const draft = draftId === undefined ? '' : `/${encodeURIComponent(draftId)}`;
  return `/set-up${draft}${step === undefined ? '' : `/${step}`}`;
}

/** The page that asks before a draft is thrown away. */
export function throwAwayPath(draftId: string): string {
  return `${setUpPath(draftId)}/throw-away`;
}

/** Where the press goes that makes a garden of a draft. */
export function makeGardenPath(draftId: string): string {
  return `${setUpPath(draftId)}/make`;
}

/** This week of a garden just made, with the address of its first feed. */
export function begunPath(gardenId: string, feedId: string): string {
  return `${weekPath(gardenId)}?${new URLSearchParams({ begun: feedId })}`;
}

/** Where the press goes that shows the demo garden. */
export const DEMO_PATH = '/demo';

/** The page that asks before a garden is put away. */
export function putAwayPath(gardenId: string): string {
  return `${weekPath(gardenId)}/put-away`;
}

/** Where the press goes that gives a garden back. */
export function giveBackPath(gardenId: string): string {
  return `${weekPath(gardenId)}/give-back`;
}

/** The garden as a file, and where a changed one is brought in; with the entry that did, that it was. */
export function gardenFilePath(gardenId: string, brought?: number): string {
  return `${weekPath(gardenId)}/garden-file${brought === undefined ? '' : `?brought=${brought}`}`;
}

/** The garden as a file, to be kept. */
export function gardenYamlPath(gardenId: string): string {
  return `${weekPath(gardenId)}/garden-file.yaml`;
}

/** Where a new garden is brought in from its file. */
export function bringInPath(): string {
  return '/bring-in';
}

/** What a file that was handed over would change in a garden, or what a new one is. */
export function incomingFilePath(word: string, gardenId?: string): string {
  return `${gardenId === undefined ? bringInPath() : gardenFilePath(gardenId)}/${word}`;
}

/** Where somebody signs in. */
export const SIGN_IN_PATH = '/sign-in';

/** The same, to come to a page of this program afterwards. */
export function signInPath(to: string): string {
  return to === '/' ? SIGN_IN_PATH : `${SIGN_IN_PATH}?${new URLSearchParams({ to })}`;
}

/** Who can reach the pages, and the way out. */
export const WHO_GETS_IN_PATH = '/who-gets-in';

/** Where this device signs out, and where all do. */
export const SIGN_OUT_PATH = '/sign-out';
export const SIGN_OUT_EVERYWHERE_PATH = '/sign-out/everywhere';
