/**
 * Pictures of the pages for the README and the docs: `npm run screenshots`. Each page as far as a screen shows it, on a
 * phone and on a desk; a few in the dark.
 */
import { mkdir, readdir, rm } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { SET_UP_STEPS } from '../../src/garden/set-up-draft.ts';
import {
  bedPath,
  bedsPath,
  compostPath,
  feedsPath,
  historyPath,
  householdPath,
  SIGN_IN_PATH,
  seasonEndPath,
  setUpPath,
  taskPath,
  weatherPath,
  weekPath,
  yearPath,
} from '../../src/web/addresses/addresses.ts';
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
    const answer = await page.goto(origin + path);
    if (answer?.status() !== 200) throw new Error(`${path} answered ${answer?.status()}.`);
    if (new URL(page.url()).pathname !== path) throw new Error(`${path} led to ${page.url()}.`);
    await page.screenshot({ path: `${FOLDER}${name}-${screen}${light === 'dark' ? '-dark' : ''}.png` });
  }
  await page.close();
}

const demo = await demoServer(ANCHOR);
const { gardenId: id } = demo;
const { garden, plan } = await demo.steward.view(id);
const task = plan.tasks.find(({ kind, state }) => kind === 'sow-cover' && state === 'open');
const draft = await demo.steward.beginDraft();
await demo.steward.changeDraft(draft.id, (begun) => ({
  ...begun,
  place: { latitude: 43.1, longitude: -89.4 },
  climate: { nearest: true },
  about: {
    name: 'Hollow Lane',
    timeZone: 'America/Chicago',
    units: 'us',
    workDays: ['sat', 'sun'],
    hoursPerWeek: 4,
    soilTexture: 'loam',
  },
  beds: [{ id: 'a', name: 'Long bed', lengthM: 4, widthM: 1.2, raised: true, watered: true }],
  bins: [{ id: 'b', name: 'Left bay', volumeL: 760 }],
}));
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
  climate: `${weekPath(id)}/climate`,
  fertility: `${weekPath(id)}/fertility`,
  garden: `${weekPath(id)}/garden`,
  edit: `${weekPath(id)}/edit/beds/${garden.beds[0]?.id ?? ''}`,
  handbook: '/handbook/cover-cropping',
  'set-up': '/set-up',
  ...Object.fromEntries(SET_UP_STEPS.map((step) => [`set-up-${step}`, setUpPath(draft.id, step)])),
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
