/**
 * The dates that need no way to why, each with the reason.
 */
import type { Excepted } from './asked-walked.ts';

export const DATES_EXCEPTED: readonly Excepted[] = [
  { on: /week|:gardenId$/, within: /^(?:span\.span<)?h1</, because: 'the heading says which week is shown' },
  { on: /:gardenId$/, within: /^a<p<div\.empty</, because: 'leads to the week it names, where it can be asked' },
  { on: /\/tasks/, within: /^h1</, because: 'the title; the day it names has its way beneath' },
  { on: /\/year$/, within: /^caption<table\.year-chart</, because: 'the stretch that is drawn' },
  {
    on: /\/week-sheet$/,
    within: /^li<ul<section<div\.beside</,
    because: 'made for paper; the screen’s week has the ways',
  },
  { on: /\/record$/, within: /^p<article\.record</, because: 'the season that is shown, and today' },
  {
    on: /\/(?:feeds|keys)$/,
    within: /^span\.under<dd<dl\.feed-list</,
    because: 'the day an address was made or closed here',
  },
  {
    on: /\/household\/mail$/,
    within: /mail-standing|message-head|^pre\.letter</,
    because: 'the hour and the words of a letter',
  },
  {
    on: /\/edit\/|\/weather\/day/,
    within: /^h1</,
    because: 'names the entry that the page itself changes or takes out',
  },
  { on: /\/edit\//, within: /^span<label\.choice</, because: 'a choice of the form, named as it was told' },
  { on: /\/report\/away$/, within: /^h2<section\.preview</, because: 'the days the reader has typed' },
  { on: /\/weather$/, within: /^p\.about</, because: 'the day the reader has typed' },
  {
    on: /\/season\/crop$/,
    within: /section\.problems</,
    because: 'a clash with the day the reader has typed, both named',
  },
  {
    on: /^GET \/set-up/,
    within: /ul\.told-list|dl\.looked-over/,
    because: 'told a step before; no garden is made yet',
  },
];
