import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { describe, expect, test } from 'vitest';
import { putInOutbox } from '../../../src/steward/post/outbox.ts';
import { tempFolder } from '../../store/temp-folder.ts';

const name = { gardenId: 'hollow-lane', member: 'Ida', monday: '2027-04-19' };
const letter = Buffer.from('From: a@example.org\r\nTo: b@example.org\r\nSubject: one\r\n\r\nBody\r\n');

describe('the outbox', () => {
  test('is made for its owner alone, and so is each file in it', async () => {
    const folder = join(tempFolder(), 'data', 'outbox');
    const file = await putInOutbox(folder, name, letter);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, file)).mode & 0o777).toBe(0o600);
    expect((await simpleParser(readFileSync(join(folder, file)))).subject).toBe('one');
  });

  test('has one file a week and member: a second writing takes the place of the first', async () => {
    const folder = tempFolder();
    await putInOutbox(folder, name, letter);
    const file = await putInOutbox(folder, name, Buffer.from('Subject: two\r\n\r\n'));
    expect(readdirSync(folder)).toEqual([file]);
    expect(readFileSync(join(folder, file), 'utf8')).toContain('two');
  });

  test('keeps nothing half written where the writing fails', async () => {
    const folder = tempFolder();
    // A folder in the place of the file cannot be replaced by one.
    const file = await putInOutbox(folder, name, letter);
    rmSync(join(folder, file));
    mkdirSync(join(folder, file));
    await expect(putInOutbox(folder, name, letter)).rejects.toThrow();
    expect(readdirSync(folder)).toEqual([file]);
  });

  test.skipIf(process.getuid?.() === 0)('a folder that may not be written is an error', async () => {
    const folder = tempFolder();
    chmodSync(folder, 0o500);
    await expect(putInOutbox(folder, name, letter)).rejects.toThrow('EACCES');
  });
});

describe('a file’s name', () => {
  test('says week, garden and member', async () => {
    expect(await putInOutbox(tempFolder(), name, letter)).toMatch(/^2027-04-19\.hollow-lane\.ida\.[0-9a-f]{8}\.eml$/);
  });

  test('leads nowhere else, and is another for another member, however the name is spelt', async () => {
    const folder = tempFolder();
    const members = ['Ida', 'ida', '../../etc/passwd', 'Ида', '', 'x'.repeat(300)];
    const files = await Promise.all(members.map((member) => putInOutbox(folder, { ...name, member }, letter)));
    expect(new Set(files).size).toBe(files.length);
    for (const file of files) expect(file).toMatch(/^[a-z0-9.-]{20,200}$/);
    for (const file of files) expect(file).not.toContain('..');
    expect(readdirSync(folder).sort()).toEqual(files.sort());
  });
});
