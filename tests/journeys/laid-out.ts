/**
 * How an open page lies on small screens and on paper.
 */
import type { Page } from 'playwright-core';

/** The narrowest page that must not slide sideways: WCAG 2.2, 1.4.10 Reflow, 320 CSS pixels; and a common phone. */
const WIDTHS = [320, 390] as const;

/** Least height of what is pressed with a thumb: WCAG 2.2, 2.5.5 Target Size (Enhanced), 44 CSS pixels; half a pixel is rounding. */
const TARGET_PX = 43.5;

/** What is wrong with how a page lies; the page is left as it was, 390 pixels wide. */
export async function layoutFaultsOf(page: Page): Promise<string[]> {
  const faults: string[] = [];
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    faults.push(...(await page.evaluate<string[]>(`(${slides})(${width})`)));
  }
  faults.push(...(await page.evaluate<string[]>(`(${smallTargets})(${TARGET_PX})`)));
  await page.emulateMedia({ media: 'print' });
  faults.push(...(await page.evaluate<string[]>(`(${printed})()`)));
  await page.emulateMedia({ media: 'screen' });
  return faults;
}

/** Runs in the browser. What lies in a frame that slides by itself is meant to. */
const slides = `(width) => {
  const whole = document.documentElement.scrollWidth;
  if (whole <= width) return [];
  const wide = [...document.querySelectorAll('main *')].filter((node) => node.getBoundingClientRect().right > width + 1);
  return ['slides sideways at ' + width + ': ' + whole + ' wide, ' + (wide.at(-1)?.outerHTML ?? '').slice(0, 120)];
}`;

/** Runs in the browser. Links within text are as high as their line; those of the head and all buttons are pressed. */
const smallTargets = `(least) =>
  [...document.querySelectorAll('.running-head a, button, select')]
    .map((node) => ({ node, height: node.getBoundingClientRect().height }))
    .filter(({ height }) => height > 0 && height < least)
    .map(({ node, height }) => 'only ' + height.toFixed(1) + ' high: ' + node.outerHTML.slice(0, 120))`;

/** Runs in the browser, as on paper: no way to other pages, no foot, nothing to be passed over. */
const printed = `() =>
  [...document.querySelectorAll('nav, .skip, .page-foot')]
    .filter((node) => node.getClientRects().length > 0)
    .map((node) => 'is printed: ' + node.outerHTML.slice(0, 120))`;
