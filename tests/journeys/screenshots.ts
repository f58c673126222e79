/**
 * Pictures of the pages for the README and the docs: `npm run screenshots`. Each page as far as a screen shows it, on a
 * phone and on a desk; a few in the dark.
 */
import { mkdir, readdir, rm } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import {
  bedPath,
  bedsPath,
  compostPath,
  feedsPath,
  historyPath,
  householdPath,
  SIGN_IN_PATH,
  seasonEndPath,
  taskPath,
  weatherPath,
  weekPath,
  yearPath,
} from '../../src/web/addresses.ts';
import { demoServer } from '../bench/demo-server.ts';
import { openBrowser } from './browser.ts';

/** The day the pictured demo garden is laid around. */
const ANCHOR = '2027-09-08';
const FOLDER = new URL('../../docs/images/', import.meta.url).pathname;
const SCREENS = { phone: { width: 390, height: 800 }, desk: { width: 1200, height: 800 } } as const;
/** Pages pictured in the dark too, on a phone. */
const IN_THE_DARK: ReadonlySet<string> = new Set(['week', 'year']);

interface Pictured {
  browser: Browser;
  origin: string;
  pages: Readonly<Record<string, string>>;
}

async function picture({ browser, origin, pages }: Pictured, screen: keyof typeof SCREENS, light: 'light' | 'dark') {
  const page = await browser.newPage({ viewport: SCREENS[screen], colorScheme: light });
  for (const [name, path] of Object.entries(pages)) {
    if (light === 'dark' && !IN_THE_DARK.has(name)) continue;
    await page.goto(origin + path);
    await page.screenshot({ path: `${FOLDER}${name}-${screen}${light === 'dark' ? '-dark' : ''}.png` });
  }
  await page.close();
}

const demo = await demoServer(ANCHOR);
const { gardenId: id } = demo;
const { garden, plan } = await demo.steward.view(id);
const task = plan.tasks.find(({ kind, state }) => kind === 'sow-cover' && state === 'open');
const pages = {
  week: weekPath(id),
  task: taskPath(id, task?.key ?? ''),
  year: yearPath(id),
  beds: bedsPath(id),
  bed: bedPath(id, garden.beds[0]?.id ?? ''),
  'season-end': seasonEndPath(id),
  compost: compostPath(id),
  weather: weatherPath(id),
  feeds: feedsPath(id),
  household: householdPath(id),
  history: historyPath(id),
  'set-up': '/set-up',
};
await mkdir(FOLDER, { recursive: true });
for (const old of await readdir(FOLDER)) await rm(`${FOLDER}${old}`);
const browser = await openBrowser();
const pictured = { browser, origin: new URL(demo.feedUrl).origin, pages };
for (const screen of ['phone', 'desk'] as const) await picture(pictured, screen, 'light');
await picture(pictured, 'phone', 'dark');
// From here on every page asks for it.
await demo.steward.setPassword('beet row under the old pear');
for (const screen of ['phone', 'desk'] as const) {
  await picture({ ...pictured, pages: { 'sign-in': SIGN_IN_PATH } }, screen, 'light');
}
await browser.close();
await demo.close();
