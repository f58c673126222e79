import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { tempFolder } from '../../store/temp-folder.ts';
import { mailCatcher } from './mail-catcher.ts';
import { FIRST_SUNDAY, postingHousehold } from './posting.ts';

const program = fileURLToPath(new URL('posting-program.ts', import.meta.url));
const hasOpenssl = spawnSync('openssl', ['version']).status === 0;

test('a server whose certificate is not good is handed nothing, and the mend is named', async () => {
  // The certificate that smtp-server brings along is signed by itself and ran out in 2025.
  const { port, caught } = await mailCatcher({ disabledCommands: [] });
  const { sendAt } = await postingHousehold({ port });
  const [wrong] = await sendAt(FIRST_SUNDAY);
  expect(wrong).toMatchObject({ state: 'delayed', problem: expect.stringContaining('could not show who it is') });
  expect(wrong?.problem).toContain('NODE_EXTRA_CA_CERTS');
  expect(caught).toEqual([]);
});

/** A certificate for this computer, signed by itself. */
function certificate(folder: string) {
  const [key, cert] = [join(folder, 'key.pem'), join(folder, 'cert.pem')];
  const names = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=IP:127.0.0.1,DNS:localhost'];
  const made = ['-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-keyout', key, '-out', cert];
  execFileSync('openssl', ['req', ...made, ...names], { stdio: 'ignore' });
  return { key: readFileSync(key, 'utf8'), cert: readFileSync(cert, 'utf8'), file: cert };
}

test.skipIf(!hasOpenssl)(
  'one whose certificate was made known to the program gets the list over a line made secret by STARTTLS (RFC 3207)',
  async () => {
    const folder = tempFolder();
    const { key, cert, file } = certificate(folder);
    const secrets: boolean[] = [];
    const { port } = await mailCatcher({
      key,
      cert,
      disabledCommands: [],
      onData: (stream, session, callback) => {
        secrets.push(session.secure);
        stream.resume();
        stream.on('end', () => callback());
      },
    });
    const database = join(folder, 'loamtide.db');
    const { steward } = await postingHousehold({ file: database, port });
    await steward.close();
    // Node reads the setting as it starts, so this is a program of its own.
    const running = spawn(process.execPath, ['--import', 'tsx', program, database, String(port), FIRST_SUNDAY], {
      env: { ...process.env, NODE_EXTRA_CA_CERTS: file },
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const said: string[] = [];
    running.stdout.on('data', (chunk) => said.push(String(chunk)));
    running.stdin.end();
    await once(running, 'exit');
    expect(said.join('')).toBe('ready\nsent\n');
    expect(secrets).toEqual([true]);
  },
  60_000,
);
