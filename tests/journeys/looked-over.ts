/**
 * What is wrong with an open page: by axe-core, and by rules of this project's own.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';

/** WCAG 2.0 to 2.2, levels A and AA, and what axe-core calls best practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Rules whose outcome changes with light and dark alone. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/** The rules themselves, as @axe-core/playwright brings them. It would send this half megabyte anew for every look. */
const axeSource = readFileSync(
  createRequire(createRequire(import.meta.url).resolve('@axe-core/playwright')).resolve('axe-core/axe.min.js'),
  'utf8',
);

/** A page that can be looked over, of a width and in a light. */
export async function pageForLooking(browser: Browser, width: number, light: 'light' | 'dark'): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme: light });
  await page.addInitScript(axeSource);
  return page;
}

/**
 * Every fault of the open page. What is folded is opened, so that what lies in it is looked at too.
 *
 * @param colours whether colours are looked at as well, which takes twice as long as all the rest
 */
export async function faultsOf(page: Page, { colours = true } = {}): Promise<string[]> {
  return page.evaluate<string[]>(`(async () => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
    return [...(${ownFaults})(), ...(await (${axeFaults})(${JSON.stringify(RULES)}, ${JSON.stringify(colours ? [] : COLOUR_RULES)}))];
  })()`);
}

/** Faults that light and dark make. */
export async function colourFaultsOf(page: Page): Promise<string[]> {
  return page.evaluate<string[]>(`(${axeFaults})(${JSON.stringify(COLOUR_RULES)}, [])`);
}

/** Runs in the browser, whose types this project does not load. Faults of every weight count. */
const axeFaults = `async (runOnly, leftOut) => {
  const rules = Object.fromEntries(leftOut.map((rule) => [rule, { enabled: false }]));
  const { violations } = await axe.run(document, { runOnly, rules, resultTypes: ['violations'], preload: false });
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target, html }) => id + ' (' + impact + '): ' + target.join(' ') + ' ' + html.slice(0, 160)));
}`;

/** Nothing that the Content-Security-Policy would forbid: no script anywhere and no style within; and a drawing that says something has a name, and a table with the same figures beside it. */
const ownFaults = `() => {
  const faults = [];
  const told = (what, node) => faults.push(what + ': ' + node.outerHTML.slice(0, 120));
  for (const script of document.querySelectorAll('script')) told('a script', script);
  for (const sheet of document.querySelectorAll('body style')) told('a style sheet within the page', sheet);
  for (const node of document.querySelectorAll('*'))
    for (const { name, value } of node.attributes) {
      if (name.startsWith('on')) told('a script in ' + name, node);
      if (name === 'style') told('a style within the page', node);
      if (/^\\s*javascript:/i.test(value)) told('a script in ' + name, node);
    }
  for (const drawing of document.querySelectorAll('svg')) {
    if (drawing.getAttribute('aria-hidden') === 'true') continue;
    const ids = (drawing.getAttribute('aria-labelledby') ?? '').split(' ').filter((id) => id !== '');
    const words = ids.map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
    const name = drawing.getAttribute('aria-label') ?? words;
    if (drawing.getAttribute('role') !== 'img' || name.trim() === '') told('a drawing without a name', drawing);
    const around = [drawing.closest('figure'), drawing.closest('section'), document.querySelector('.year-tables')];
    const beside = around.some((part) => part?.querySelector('table.figures'));
    if (!beside) told('a drawing without a table beside it', drawing);
  }
  return faults;
}`;
