import { onTestFinished } from 'vitest';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import { listLinks } from '../../../src/steward/answers/links.ts';
import { signerFor } from '../../../src/steward/answers/signer.ts';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';
import type { WebSettings } from '../../../src/web/addresses/settings.ts';
import { appOver, NOW, sampleFile } from '../sample-garden.ts';

/** The address the mail was written for, and the proxy on this computer that phones reach it through. */
export const PUBLIC: WebSettings & { publicUrl: URL } = {
  port: 8137,
  hostNames: [],
  publicUrl: new URL('https://garden.example.org'),
  trustedProxies: ['127.0.0.1'],
};

/** How a phone's browser asks from outside, through a proxy. */
export const OUTSIDE = { Host: 'garden.example.org', 'X-Forwarded-For': '203.0.113.7' };

/** How it sends a form of the page it shows. */
export const PRESSED = { ...OUTSIDE, 'Sec-Fetch-Site': 'same-origin' };

const MAIL = { to: 'ada@example.org', weekday: 'mon', hour: 7, tasks: 'all' };

/** The sample garden with two members, and the links of Ada's list of a week. */
export async function mailed({ monday = '2027-04-19', settings = PUBLIC } = {}) {
  const store = await openStore({ file: ':memory:', now: NOW });
  const clock = { moment: NOW, now: () => clock.moment };
  const steward = createSteward({ store, clock });
  onTestFinished(() => steward.close());
  const household = {
    people: 3,
    members: [
      { name: 'Ada', mail: MAIL },
      { name: 'Bo', mail: { ...MAIL, to: 'bo@example.org' } },
    ],
  };
  await steward.importGarden({ file: checkGardenFile(sampleFile({ household })), prefer: 'reported' }, 'test');
  const signer = await signerFor({ store, clock }, 'mill-row');
  const linksOf = (member: string) => {
    const links = listLinks({
      publicUrl: settings.publicUrl,
      signer,
      gardenId: 'mill-row',
      memberId: member.toLowerCase(),
      monday,
    });
    if (links === undefined) throw new Error('There is a public address.');
    return links;
  };
  const pathOf = (url: string) => url.slice(settings.publicUrl.origin.length);
  const answer = (key: string, as: 'done' | 'not-yet' | 'skip' = 'done', member = 'Ada') =>
    pathOf(linksOf(member).answer(key, as));
  const stop = (member = 'Ada') => pathOf(linksOf(member).stop);
  const view = () => steward.view('mill-row');
  const taskOf = async (key: string) => {
    const task = (await view()).plan.tasks.find((row) => row.key === key);
    if (task === undefined) throw new Error(`No task "${key}".`);
    return task;
  };
  return { ...appOver(steward, settings), store, clock, answer, stop, view, taskOf };
}
