/**
 * Pictures of the pages for the README and the docs: `npm run screenshots`.
 */
import { mkdir } from 'node:fs/promises';
import { demoServer } from '../bench/demo-server.ts';
import { openBrowser } from './browser.ts';

/** The day the pictured demo garden is laid around. */
const ANCHOR = '2027-09-08';
const FOLDER = new URL('../../docs/images/', import.meta.url).pathname;
const WIDTHS = { phone: 390, desk: 1200 } as const;

const demo = await demoServer(ANCHOR);
const browser = await openBrowser();
await mkdir(FOLDER, { recursive: true });
const home = new URL(demo.feedUrl).origin;
const garden = `${home}/gardens/${demo.gardenId}`;
const { plan } = await demo.steward.view(demo.gardenId);
const pictured = plan.tasks.find(({ kind, state }) => kind === 'sow-cover' && state === 'open');
const pages = {
  week: `${garden}`,
  task: `${garden}/tasks/${pictured?.key ?? ''}`,
  history: `${garden}/history`,
};
for (const [width, pixels] of Object.entries(WIDTHS)) {
  const page = await browser.newPage({ viewport: { width: pixels, height: 900 } });
  for (const [name, address] of Object.entries(pages)) {
    await page.goto(address);
    await page.screenshot({ path: `${FOLDER}${name}-${width}.png`, fullPage: true });
  }
  await page.close();
}
await browser.close();
await demo.close();
