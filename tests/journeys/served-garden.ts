import type { AddressInfo } from 'node:net';
import { onTestFinished } from 'vitest';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { openStore } from '../../src/store/store.ts';
import { createApp } from '../../src/web/app.tsx';
import { serveApp } from '../../src/web/server.ts';
import { CHEAP } from '../steward/sign-in/cheap-cost.ts';
import { NOW, sampleFile, TODAY } from '../web/sample-garden.ts';

/** A garden behind the real server on a free port, closed when the test has ended. */
export async function servedGarden(
  change: Record<string, unknown> = {},
): Promise<{ origin: string; steward: Steward }> {
  const served = await servedHome();
  await served.steward.importGarden({ file: checkGardenFile(sampleFile(change)), prefer: 'reported' }, 'test');
  return served;
}

/** A household in which nothing is yet, behind the real server. */
export async function servedHome(): Promise<{ origin: string; steward: Steward }> {
  const store = await openStore({ file: ':memory:', now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW, today: TODAY }, passwordCost: CHEAP });
  const port = await freePort();
  const app = createApp({ steward, settings: { port, hostNames: [] } });
  const server = await serveApp(app, { hostname: '127.0.0.1', port });
  onTestFinished(async () => {
    server.close();
    await steward.close();
  });
  return { origin: `http://127.0.0.1:${port}`, steward };
}

/** A page of another site on this computer, holding what it is given. */
export async function servedElsewhere(html: string): Promise<string> {
  const server = await serveApp(
    { fetch: () => new Response(html, { headers: { 'Content-Type': 'text/html' } }) },
    { hostname: '127.0.0.1', port: 0 },
  );
  onTestFinished(() => void server.close());
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

/** A port of this computer that nothing listens on. */
export async function freePort(): Promise<number> {
  const probe = await serveApp({ fetch: () => new Response() }, { hostname: '127.0.0.1', port: 0 });
  const { port } = probe.address() as AddressInfo;
  await new Promise((resolve) => probe.close(resolve));
  return port;
}
