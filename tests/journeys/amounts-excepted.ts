/**
 * The amounts that need no way to where they come from, each with the reason.
 */
import type { Excepted } from './asked-walked.ts';

/** Routes whose amounts are asked: tasks, beds, the yard, fertility, season end. */
export const AMOUNTS_ON = /^GET \/gardens\/:gardenId\/(?:tasks|beds|compost|fertility|season-end)/;

export const AMOUNTS_EXCEPTED: readonly Excepted[] = [
  {
    on: /\/beds$/,
    within: /^span\.under<th<tr<tbody<table\.season-table/,
    because: 'the size of a bed, as it was told',
  },
  { on: /\/beds$/, within: /^span<li<ul\.wishes/, because: 'a wish, as it was told' },
  { on: /\/compost$/, within: /^h2<section/, because: 'the size of a bin, as it was told' },
  { on: /\/compost\/mix$/, within: /form\.report-form/, because: 'an example of what may be typed' },
];
