/**
 * The weekly list as a mail that shows its own letters: one HTML document with nothing fetched from anywhere.
 *
 * Every colour stands on light and dark paper alike, and every line reads right with all styles taken away: mail programs
 * strip what they please.
 */
import type { UnitSystem } from '../measures/units.ts';
import type { ListLinks } from './list-links.ts';
import { MAIL_STYLES as S } from './mail-styles.ts';
import { html, type Markup } from './markup.ts';
import { cautionsOf } from './week-cautions.ts';
import { type DayWriting, dayMarkup } from './week-html-days.ts';
import type { WeekList } from './week-list.ts';
import { awayLine, emptyLine, hoursLine, type WeekSection, weekSections } from './week-sections.ts';
import { titleLine } from './week-text.ts';
import { weekSpan } from './words.ts';

/** The list as a whole HTML document, in the reader's units. Answers and the end of the mail stand in it only by their links. */
export function weekListHtml(list: WeekList, units: UnitSystem, links?: ListLinks): string {
  const writing: DayWriting = { units, timeZone: list.timeZone, cautions: cautionsOf(list), links };
  const span = weekSpan(list.monday, units);
  const lines = [hoursLine(list), ...list.away.map((away) => awayLine(away, units)), emptyLine(list, units)];
  const document = html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="supported-color-schemes" content="light dark">
<title>${titleLine(list)}: week of ${span}</title>
</head>
<body style="${S.body}">
<div style="${S.page}">
<p style="${S.garden}">${titleLine(list)}</p>
<h1 style="${S.title}">Week of ${span}</h1>
${lines.filter((line) => line !== '').map((line) => html`<p style="${S.quiet}">${line}</p>\n`)}
${list.days.map((day) => dayMarkup(day, writing))}
${weekSections(list, units).map(sectionMarkup)}
${links === undefined ? [] : [stopMarkup(links)]}
</div>
</body>
</html>
`;
  return document.text;
}

function sectionMarkup({ heading, lines }: WeekSection): Markup {
  return html`<h2 style="${S.heading}">${heading}</h2>
<ul style="${S.list}">
${lines.map((line) => html`<li style="${S.line}">${line}</li>\n`)}</ul>
`;
}

function stopMarkup({ stop }: ListLinks): Markup {
  return html`<p style="${S.foot}">This list is sent once a week. <a href="${stop}" style="${S.link}">Stop this mail</a></p>
`;
}
