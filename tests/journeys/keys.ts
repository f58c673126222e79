/**
 * A gardener with a keyboard and nothing else: each stop has to be seen, and to come after the one before.
 */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Stops after which what is looked for counts as out of reach. */
const MOST_STOPS = 160;

interface Stop {
  /** What it is called, as a screen reader would say it. */
  words: string;
  /** Whether a line is drawn around it that differs from the paper. */
  isMarked: boolean;
  /** Whether it has room on the screen. */
  isShown: boolean;
  /** Where it stands to the stop before: 1 after it, -1 before it, 0 where that is the same or none. */
  turn: number;
}

/** Tab on to what is called so, or back to it. */
export async function tabTo(page: Page, wanted: string | RegExp, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<string> {
  const passed: string[] = [];
  for (let count = 0; count < MOST_STOPS; count += 1) {
    await page.keyboard.press(way);
    const stop = await page.evaluate<Stop | null>(STOP);
    if (stop === null && passed.length > 0) break;
    if (stop === null) continue;
    const isInOrder = stop.turn !== (way === 'Tab' ? -1 : 1);
    expect({ ...stop, isInOrder }).toMatchObject({ isMarked: true, isShown: true, isInOrder: true });
    if (typeof wanted === 'string' ? stop.words === wanted : wanted.test(stop.words)) return stop.words;
    passed.push(stop.words);
  }
  throw new Error(`No stop called ${wanted}: ${passed.join(' | ')}`);
}

/** Press a key that leads to another page. */
export async function pressOn(page: Page, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  const led = page.waitForNavigation();
  await page.keyboard.press(key);
  await led;
}

/** Tab to a link or a button and press it. */
export async function follow(page: Page, wanted: string | RegExp): Promise<string> {
  const words = await tabTo(page, wanted);
  await pressOn(page);
  return words;
}

/** Runs in the browser, whose types this project does not load. A day's field holds several stops of the keyboard. */
const STOP = `(() => {
  const at = document.activeElement;
  const last = window.lastStop;
  window.lastStop = at === document.body ? null : at;
  if (at === null || at === document.body) return null;
  const own = (label) => [...label.childNodes].filter((node) => !/SELECT|INPUT/.test(node.nodeName));
  const label = at.labels?.[0] && own(at.labels[0]).map((node) => node.textContent).join(' ');
  const words = (at.getAttribute('aria-label') ?? label ?? at.textContent).replace(/\\s+/g, ' ').trim();
  const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(at);
  const line = outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
  const paper = getComputedStyle(document.body).backgroundColor;
  const box = at.getBoundingClientRect();
  const isInSight = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
  const isShown = box.width > 0 && box.height > 0 && isInSight;
  const isMarked = (line && outlineColor !== paper) || boxShadow !== 'none';
  const turn = last instanceof Node && last !== at ? (last.compareDocumentPosition(at) & 2 ? -1 : 1) : 0;
  return { words, isMarked, isShown, turn };
})()`;
