/**
 * The styles of a mail, one by one, for they stand inside its elements. No colour of paper or ink is set: the reader's own
 * light or dark is kept, and quiet words are the same ink, thinner.
 */

/** Black so thinned stands 9 to 1 against white, and white 10 to 1 against black; WCAG 2.2 (1.4.3) asks for 4.5. */
const QUIET = 'opacity:0.72';
const HAIRLINE = '1px solid #999';

export const MAIL_STYLES = {
  body: "margin:0;padding:0;font-family:Charter,'Iowan Old Style',Palatino,Georgia,serif;font-size:17px;line-height:1.4",
  page: 'max-width:34em;margin:0 auto;padding:18px 16px 32px',
  garden: `margin:0;${QUIET};font-size:15px`,
  title: 'margin:2px 0 10px;font-size:25px;line-height:1.15;font-weight:600',
  day: `margin:22px 0 0;padding:6px 0 0;border-top:${HAIRLINE};font-size:17px;font-weight:400`,
  number: 'font-size:34px;line-height:1.1',
  sum: `${QUIET};font-size:15px`,
  heading: `margin:24px 0 4px;padding:8px 0 0;border-top:${HAIRLINE};font-size:17px;font-weight:600;font-style:italic`,
  list: 'margin:0;padding:0;list-style:none',
  line: 'margin:0;padding:4px 0',
  entry: 'margin:0;padding:8px 0 6px',
  about: `margin:0;${QUIET};font-size:15px`,
  entryTitle: 'margin:0;font-size:18px;line-height:1.3',
  doneTitle: 'margin:0;font-size:18px;line-height:1.3;text-decoration:line-through',
  quiet: `margin:2px 0 0;${QUIET};font-size:15px`,
  caution: 'margin:2px 0 0;font-size:15px',
  answers: 'margin:2px 0 0',
  // a thumb needs 44 px: the word and its padding come to that
  answer: 'display:inline-block;padding:11px 18px 11px 0;color:inherit;text-decoration:underline',
  foot: `margin:28px 0 0;padding:8px 0 0;border-top:${HAIRLINE};${QUIET};font-size:15px`,
  link: 'color:inherit;text-decoration:underline',
} as const;
