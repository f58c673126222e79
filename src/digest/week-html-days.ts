/**
 * The days of a weekly list and their entries, as HTML for mail.
 */
import { readableIn } from '../measures/quantity.ts';
import { PRACTICE_WORDS } from '../schedule/entry-text.ts';
import { type EntryNote, entryNotes } from './entry-notes.ts';
import { ANSWER_WORDS, type ListLinks } from './list-links.ts';
import { MAIL_STYLES as S } from './mail-styles.ts';
import { html, type Markup } from './markup.ts';
import type { EntryCautions } from './week-cautions.ts';
import { isToDo, type ListedDay, type ListedEntry } from './week-list.ts';
import { daySum } from './week-sections.ts';
import { hoursText, hourText, type LocalClock, longDay } from './words.ts';

/** What the days are written with. */
export interface DayWriting extends LocalClock {
  cautions: ReadonlyMap<string, EntryCautions>;
  links: ListLinks | undefined;
}

/** A day with its entries. */
export function dayMarkup(listed: ListedDay, writing: DayWriting): Markup {
  const [before = '', number = '', after = ''] = longDay(listed.day, writing.units).split(/(\d+)/);
  const sum = daySum(listed, isToDo);
  return html`<h2 style="${S.day}">${before}<span style="${S.number}">${number}</span>${after}${
    sum === '' ? '' : html` <span style="${S.sum}">(${sum})</span>`
  }</h2>
<ul style="${S.list}">
${listed.entries.map((entry) => entryMarkup(entry, writing))}</ul>
`;
}

function entryMarkup(listed: ListedEntry, writing: DayWriting): Markup {
  const { entry, tasks } = listed;
  const { units, cautions, links } = writing;
  const [hour] = tasks.map((task) => hourText(task, writing));
  const about = [PRACTICE_WORDS[entry.practice], hoursText(entry.effortMinutes), hour, standingOf(listed)];
  const title = readableIn(units, entry.title, entry.day);
  return html`<li style="${S.entry}">
<p style="${S.about}">${about.filter((part) => part !== undefined).join(', ')}</p>
<p style="${entry.state === 'done' ? S.doneTitle : S.entryTitle}"><strong>${title}</strong></p>
${entryNotes(listed, units, cautions.get(entry.lotId)).map(noteMarkup)}${
  links === undefined || !isToDo(listed) ? [] : answersMarkup(listed, title, links)
}</li>
`;
}

/** What no box to tick says in a mail. */
function standingOf(listed: ListedEntry): string | undefined {
  if (listed.entry.state === 'done') return 'done';
  if (listed.entry.state === 'open') return undefined;
  return isToDo(listed) ? 'late' : 'past';
}

function noteMarkup({ kind, text }: EntryNote): Markup {
  return html`<p style="${kind === 'caution' || kind === 'pin' ? S.caution : S.quiet}">${text}</p>
`;
}

function answersMarkup({ tasks: [first] }: ListedEntry, title: string, links: ListLinks): Markup[] {
  if (first === undefined) return [];
  const { key } = first;
  const answers = ANSWER_WORDS.map(
    ([answer, word]) =>
      html`<a href="${links.answer(key, answer)}" style="${S.answer}" aria-label="${word}: ${title}">${word}</a> `,
  );
  return [html`<p style="${S.answers}">${answers}</p>\n`];
}
