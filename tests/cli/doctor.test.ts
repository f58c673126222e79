import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { clockFindings } from '../../src/cli/doctor/clock.ts';
import type { Finding } from '../../src/cli/doctor/finding.ts';
import { folderFindings } from '../../src/cli/doctor/folder.ts';
import { LEAST_MAJOR, nodeFindings } from '../../src/cli/doctor/node-version.ts';
import { passwordFindings } from '../../src/cli/doctor/password.ts';
import { mailFindings, publicFindings } from '../../src/cli/doctor/reach.ts';
import { openStore } from '../../src/store/store.ts';
import { freePort, servedElsewhere, servedHome } from '../journeys/served-garden.ts';
import { mailCatcher } from '../steward/post/mail-catcher.ts';
import { tempFolder, withGarden } from './loamtide.ts';

const troublesIn = (found: readonly Finding[]) =>
  found.filter(({ state }) => state === 'trouble').map(({ said }) => said);

describe('loamtide doctor', () => {
  test('finds nothing to mend about a garden in good order, ends with 0, and changes nothing', async () => {
    const { folder, loamtide } = await withGarden();
    const before = (await loamtide('week')).out;
    const { code, out, err } = await loamtide('doctor');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^data folder +well +.*\/data is there, can be written, and is its owner’s alone\.$/m);
    expect(out).toMatch(
      /^database +well +.*loamtide\.db is sound, is of this program’s version, and keeps 1 garden\.$/m,
    );
    expect(out).toMatch(/^clock +well +It says 2027-04-18T15:00:00\.000Z \(UTC\)/m);
    expect(out).toMatch(/^zone +well +hollow-lane lies in America\/Chicago, which this Node knows\.$/m);
    expect(out).toMatch(/^password +note +None is set, and none is needed at 127\.0\.0\.1/m);
    expect(out).toMatch(/^mail +note +No mail server is set/m);
    expect(out).toMatch(/^public address +note +None is set/m);
    expect(out).toMatch(/\nNothing is to be mended\.\n$/);
    expect((await loamtide('week')).out).toBe(before);
    expect(folder).not.toBe('');
  });

  test('says each trouble with its mend, as JSON too, and ends with 1', async () => {
    const { folder, loamtide } = await withGarden();
    chmodSync(join(folder, 'data'), 0o755);
    const { code, out } = await loamtide('doctor', '--json');
    const { well, findings } = JSON.parse(out);
    expect([code, well]).toEqual([1, false]);
    const data = join(folder, 'data');
    expect(findings[0]).toEqual({
      about: 'data folder',
      state: 'trouble',
      said: `Others on this computer may look into ${data} (mode 0755).`,
      mend: `chmod 700 ${data}`,
    });
    expect((await loamtide('doctor')).out).toContain('To be mended: 1.');
  });

  test('where nothing is yet it says what to start, and makes nothing', async () => {
    const { folder, loamtide } = await withGarden();
    const { code, out } = await loamtide('doctor', '--data', 'nowhere');
    expect(code).toBe(1);
    expect(out).toContain(`${join(folder, 'nowhere')} does not exist.`);
    expect((await loamtide('doctor', '--data', 'nowhere')).out).toBe(out);
  });

  test('a file that is no database is told of, and left as it is', async () => {
    const { folder, loamtide } = await withGarden();
    const other = join(folder, 'other');
    mkdirSync(other, { mode: 0o700 });
    writeFileSync(join(other, 'loamtide.db'), 'leaf mould '.repeat(500), { mode: 0o600 });
    const { code, out } = await loamtide('doctor', '--data', 'other');
    expect(code).toBe(1);
    expect(out).toMatch(/^database +trouble /m);
  });

  test('the database of an older program is not brought up to date by a look', async () => {
    const { folder, loamtide } = await withGarden();
    const file = join(folder, 'data', 'loamtide.db');
    const version = () => {
      const sqlite = new SqliteFile(file);
      onTestFinished(() => void sqlite.close());
      return sqlite.prepare('select max(version) from migrations').pluck().get();
    };
    const sqlite = new SqliteFile(file);
    sqlite.exec('delete from migrations where version > 3');
    sqlite.close();
    const { code, out } = await loamtide('doctor');
    expect([code, version()]).toEqual([0, 3]);
    expect(out).toMatch(
      /^database +note +It is of version 3; this program brings it to \d+ when it is next started, after a copy/m,
    );
  });
});

describe('the data folder', () => {
  const folder = () => {
    const made = join(tempFolder(), 'data');
    mkdirSync(made, { mode: 0o700 });
    return made;
  };

  test.each([
    [0x6969, 'NFS'],
    [0xff534d42, 'CIFS'],
  ])('on a share of kind %i is no place for a database', (kind, name) => {
    expect(troublesIn(folderFindings(folder(), kind))).toEqual([
      expect.stringContaining(`lies on a network share (${name})`),
    ]);
  });

  test('in memory is gone at the next start', () => {
    expect(troublesIn(folderFindings(folder(), 0x01021994))).toEqual([expect.stringContaining('lies in memory')]);
  });

  test('that is a file is none', () => {
    const file = join(tempFolder(), 'data');
    writeFileSync(file, '');
    expect(troublesIn(folderFindings(file, 0))).toEqual([`${file} is not a folder.`]);
  });
});

describe('the clock', () => {
  const looks = { now: '2027-04-18T15:00:00.000Z', newest: undefined, zoneRules: '2026a', gardens: [] };

  test.each([
    [
      'a year that cannot be',
      { now: '1970-01-01T00:00:07.000Z' },
      'It says 1970-01-01T00:00:07.000Z, which cannot be.',
    ],
    [
      'a moment before the newest entry',
      { newest: '2027-04-18T15:06:00.000Z' },
      'was written down at 2027-04-18T15:06:00.000Z',
    ],
    ['rules of zones that are old', { zoneRules: '2024b' }, 'Rules of zones are of version 2024b.'],
    [
      'a zone that is not',
      { gardens: [{ id: 'mill-row', timeZone: 'Mars/Olympus' }] },
      'mill-row lies in Mars/Olympus',
    ],
  ])('%s is a trouble', (_, change, said) => {
    expect(troublesIn(clockFindings({ ...looks, ...change }))).toEqual([expect.stringContaining(said)]);
  });

  test('a few minutes between two computers are none, and that drift is not known is said', () => {
    const found = clockFindings({ ...looks, newest: '2027-04-18T15:04:00.000Z' });
    expect(troublesIn(found)).toEqual([]);
    expect(found.map(({ said }) => said)).toContainEqual(expect.stringContaining('cannot be told from here'));
  });
});

describe('Node.js', () => {
  test('is held against what package.json asks for', () => {
    const manifest = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(manifest.engines.node).toBe(`>=${LEAST_MAJOR}`);
    expect(nodeFindings(`${LEAST_MAJOR - 2}.19.0`, '2026-01-01')[0]?.state).toBe('trouble');
  });

  test.each([
    ['20.20.2', '2026-04-30', 'well'],
    ['20.20.2', '2026-05-01', 'note'],
    ['22.11.0', '2026-11-26', 'well'],
    ['23.1.0', '2026-11-26', 'note'],
  ])('%s on %s: %s', (version, today, state) => {
    expect(nodeFindings(version, today).map((found) => found.state)).toEqual([state]);
  });
});

describe('the password', () => {
  const publicUrl = new URL('https://garden.example.org');

  test.each<[string, Parameters<typeof passwordFindings>, [string, RegExp][]]>([
    [
      'none, on this computer',
      [{}, false],
      [
        ['note', /none is needed at 127\.0\.0\.1.*this computer alone\.$/],
        ['note', /--host/],
      ],
    ],
    [
      'none, behind a proxy',
      [{ publicUrl }, false],
      [
        ['note', /has to hand on the Host header/],
        ['note', /--host/],
      ],
    ],
    [
      'none, on the network',
      [{ address: '0.0.0.0' }, false],
      [
        ['trouble', /others could come in at 0\.0\.0\.0/],
        ['note', /--host/],
      ],
    ],
    [
      'none, where serve is given an address beside the setting',
      [{ address: '0.0.0.0', host: '127.0.0.1' }, false],
      [['note', /none is needed at 127\.0\.0\.1/]],
    ],
    ['one, on this computer', [{ address: '::1' }, true], [['well', /the pages at ::1 ask for it/]]],
    [
      'one, on the network',
      [{ address: '192.168.1.20' }, true],
      [
        ['well', /the pages at 192\.168\.1\.20 ask for it/],
        ['note', /plain http/],
      ],
    ],
    ['not to be read', [{}, undefined], [['note', /cannot be told/]]],
  ])('%s', (_, looked, seen) => {
    const found = passwordFindings(...looked);
    expect(found.map(({ state, said }, at) => [state, seen[at]?.[1].test(said)])).toEqual(
      seen.map(([state]) => [state, true]),
    );
  });

  test('is asked for at the address that serve is given', async () => {
    const { loamtide } = await withGarden();
    expect((await loamtide('doctor')).out).toMatch(/^password +note +.*look again with the same --host\.$/m);
    const { code, out } = await loamtide('doctor', '--host', '192.168.1.20');
    expect([code, out]).toEqual([1, expect.stringMatching(/^password +trouble +.*could come in at 192\.168\.1\.20/m)]);
  });

  test('is looked for in the data folder', async () => {
    const { folder, loamtide } = await withGarden();
    const store = await openStore({ file: join(folder, 'data', 'loamtide.db') });
    await store.keepPassword({ hash: 'any', cookieKey: 'any', setAt: '2027-04-18T15:00:00.000Z' });
    await store.close();
    expect((await loamtide('doctor')).out).toMatch(/^password +well +One is set/m);
  });
});

describe('mail', () => {
  const LOGIN = { user: 'ida', password: 'four-words-of-mine' };

  test('the server is asked only where that is wished, and is handed nothing', async () => {
    const catcher = await mailCatcher();
    const mailServer = { host: '127.0.0.1', port: catcher.port, secretFromStart: false };
    const quiet = await mailFindings({ mailServer }, false);
    expect(quiet.at(-1)?.said).toContain('The server was not asked');
    const asked = await mailFindings({ mailServer, mailFrom: 'garden@example.org' }, true);
    expect(asked.at(-1)).toEqual({
      about: 'mail',
      state: 'well',
      said: 'The server takes the login. Nothing was sent.',
    });
    expect(catcher.caught).toEqual([]);
  });

  test('a login that is not taken is told without the password', async () => {
    const catcher = await mailCatcher({
      authOptional: false,
      onAuth: (_auth, _session, callback) => callback(new Error(`no ${LOGIN.password}`)),
    });
    const mailServer = { host: '127.0.0.1', port: catcher.port, secretFromStart: false, login: LOGIN };
    const [said] = troublesIn(await mailFindings({ mailServer, mailFrom: 'garden@example.org' }, true));
    expect(said).toContain('does not take the user and password of LOAMTIDE_SMTP_URL');
    expect(said).not.toContain(LOGIN.password);
  });

  test('a server that is not there is told with the mend', async () => {
    const mailServer = { host: '127.0.0.1', port: 1, secretFromStart: false };
    const [said] = troublesIn(await mailFindings({ mailServer }, true));
    expect(said).toContain('could not be reached (ECONNREFUSED)');
  });
});

describe('the public address', () => {
  const said = async (publicUrl: string, port: number) =>
    (await publicFindings({ publicUrl: new URL(publicUrl), port }, true)).at(-1);

  test('is asked whether it leads to the program running here', async () => {
    const { origin } = await servedHome();
    const { port } = new URL(origin);
    expect(await said(`http://localhost:${port}`, Number(port))).toMatchObject({
      state: 'well',
      said: `http://localhost:${port}/ leads to the program that runs here.`,
    });
  });

  test('of another run of the program is told apart', async () => {
    const [here, there] = [await servedHome(), await servedHome()];
    expect(await said(there.origin, Number(new URL(here.origin).port))).toMatchObject({
      state: 'trouble',
      said: expect.stringContaining('leads to another run of Loamtide'),
    });
  });

  test('of something else, of nothing, and while nothing runs here: each is said', async () => {
    const { origin } = await servedHome();
    const port = Number(new URL(origin).port);
    const elsewhere = await servedElsewhere('<p>A page about nothing.</p>');
    expect((await said(elsewhere, port))?.said).toContain('it answered 200, not as this program does');
    const nobody = await freePort();
    expect((await said(`http://127.0.0.1:${nobody}`, port))?.said).toContain('(ECONNREFUSED)');
    expect((await said(origin, nobody))?.said).toContain('The program does not answer at');
  });

  test('is not asked where that is not wished, and plain http is told of', async () => {
    const found = await publicFindings({ publicUrl: new URL('http://garden.invalid'), port: 8137 }, false);
    expect(found.map(({ state }) => state)).toEqual(['well', 'note', 'note']);
  });
});
