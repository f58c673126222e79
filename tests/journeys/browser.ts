import { existsSync } from 'node:fs';
import sparticuz from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/** Browsers a system may have; failing them, the one inside a registry package. */
const SYSTEM_BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // A name of this computer that browsers do not count as its own.
  '--host-resolver-rules=MAP garden.localtest 127.0.0.1',
];

/** Opens a browser with an empty profile. */
export async function openBrowser(): Promise<Browser> {
  const system = SYSTEM_BROWSERS.find((path) => existsSync(path));
  return chromium.launch({ executablePath: system ?? (await sparticuz.executablePath()), args: FLAGS });
}
