/**
 * How long a person would take over pages, from published times of hands and eyes: the keystroke-level model of Card,
 * Moran and Newell ("The keystroke-level model for user performance time with interactive systems", Communications of
 * the ACM 23(7), 1980) for what is pressed and typed, and Brysbaert ("How many words do we read per minute?", Journal of
 * Memory and Language 109, 2019) for what is read. The model is of somebody who makes no mistakes and knows what to
 * answer; that every word on every page is read makes up for some of it.
 */
import type { Locator, Page } from 'playwright-core';

/** One key, by somebody who types no more than most (40 words a minute). Card, Moran and Newell 1980. */
const KEY_S = 0.28;
/** Pointing at something with a mouse. The same. */
const POINT_S = 1.1;
/** Pressing a button that is pointed at: one more key. */
const PRESS_S = KEY_S;
/** A hand from the mouse to the keys, or back. The same. */
const HAND_S = 0.4;
/** Making up one's mind before a step. The same. */
const MIND_S = 1.35;
/** Words of non-fiction that grown-ups read in a minute, silently. Brysbaert 2019. */
const WORDS_A_MINUTE = 238;

/** What is read as one word. */
const WORD = /[\p{L}\p{N}]\S*/gu;

/** A person at a page, whose time is added up. */
export class CountedHands {
  readonly #page: Page;
  readonly #known = new Set<string>();
  handsS = 0;
  readingS = 0;
  steps = 0;

  constructor(page: Page) {
    this.#page = page;
  }

  /** The whole time, minutes. */
  get minutes(): number {
    return (this.handsS + this.readingS) / 60;
  }

  /** Presses a button, and reads the page it leads to. */
  async press(name: string, { reads = true } = {}): Promise<void> {
    await this.#point(this.#page.getByRole('button', { name, exact: true }).first(), (it) => it.click());
    if (reads) await this.read();
  }

  /** Ticks a box or a dot. */
  async tick(box: Locator): Promise<void> {
    await this.#point(box, (it) => it.check());
  }

  /** Types into a field, in place of what stands there. */
  async type(label: string, text: string): Promise<void> {
    await this.#point(this.#page.getByLabel(label, { exact: true }).first(), (it) => it.fill(text));
    this.handsS += 2 * HAND_S + text.length * KEY_S;
  }

  /** Chooses from a list: opens it and presses a line of it. */
  async choose(list: Locator, label: string): Promise<void> {
    await this.#point(list, (it) => it.selectOption({ label }));
    this.handsS += MIND_S + POINT_S + PRESS_S;
  }

  /**
   * Reads what shows of the page without opening anything, or of a part of it: each line once, however often it comes
   * back. Lists to choose from are not read through.
   */
  async read(part = 'main'): Promise<void> {
    const lines = (await this.#page.evaluate(`(${shownLines})(${JSON.stringify(part)})`)) as string[];
    for (const line of lines) {
      if (this.#known.has(line)) continue;
      this.#known.add(line);
      this.readingS += ((line.match(WORD) ?? []).length / WORDS_A_MINUTE) * 60;
    }
  }

  async #point(it: Locator, act: (it: Locator) => Promise<unknown>): Promise<void> {
    await act(it);
    this.steps += 1;
    this.handsS += MIND_S + POINT_S + PRESS_S;
  }
}

/** Runs in the browser: the lines of a part of the page as they show, without those of lists and those for ears alone. */
const shownLines = `(part) => {
  const lines = (text) => text.split('\\n').map((line) => line.trim()).filter((line) => line !== '');
  const of = (selector) => [...document.querySelectorAll(selector)].flatMap((it) => lines(it.innerText));
  const passed = new Set([...of(part + ' select'), ...of(part + ' .unseen')]);
  return of(part).filter((line) => !passed.has(line));
}`;
