/**
 * The demo garden behind a real server on a port of its own, for measuring.
 */
import { createSteward } from '../../src/steward/create-steward.ts';
import type { Steward } from '../../src/steward/doings/steward.ts';
import { layDemo } from '../../src/steward/gardens/demo.ts';
import { openStore } from '../../src/store/store.ts';
import { feedAddress, type WebSettings } from '../../src/web/addresses/settings.ts';
import { createApp } from '../../src/web/app.tsx';
import { serveApp } from '../../src/web/server.ts';

/** A running demo. */
export interface DemoServer {
  steward: Steward;
  gardenId: string;
  feedUrl: string;
  close: () => Promise<void>;
}

/** Lays the demo around a day and serves it. */
export async function demoServer(anchor: string): Promise<DemoServer> {
  const clock = { now: () => `${anchor}T12:00:00.000Z`, today: anchor };
  const store = await openStore({ file: ':memory:' });
  const steward = createSteward({ store, clock });
  const gardenId = await layDemo({ steward, clock });
  const settings: WebSettings = { port: 8139, hostNames: [] };
  const server = await serveApp(createApp({ steward, settings }), { hostname: '127.0.0.1', port: settings.port });
  const [feed] = await steward.feeds(gardenId);
  if (feed === undefined) throw new Error('The demo garden was laid without a feed.');
  const close = async () => {
    server.close();
    await steward.close();
  };
  return { steward, gardenId, feedUrl: feedAddress(settings, feed.token), close };
}
