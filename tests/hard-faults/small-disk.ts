/**
 * A disk of a few megabytes, where whoever runs the tests may mount one.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const DISK_MB = 6;

const ran = (...argv: string[]): boolean => spawnSync(argv[0] ?? '', argv.slice(1)).status === 0;

/** Why no disk can be mounted here; nothing where one can. */
export function whyNoDisk(): string | undefined {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'only root on Linux may mount a small disk';
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-disk-'));
  const isMounted = ran('mount', '-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder);
  if (isMounted) ran('umount', folder);
  rmSync(folder, { recursive: true });
  return isMounted ? undefined : 'mounting is not allowed here';
}

/** A small disk, gone when the test has ended. */
export function smallDisk() {
  const folder = mkdtempSync(join(tmpdir(), 'loamtide-disk-'));
  if (!ran('mount', '-t', 'tmpfs', '-o', `size=${DISK_MB}m`, 'tmpfs', folder)) throw new Error('No disk was mounted.');
  onTestFinished(() => {
    ran('umount', '-l', folder);
    if (existsSync(folder)) rmSync(folder, { recursive: true });
  });
  const filler = join(folder, 'filler');
  return {
    folder,
    /** Leaves no octet free. */
    fill: () => void spawnSync('dd', ['if=/dev/zero', `of=${filler}`, 'bs=4096']),
    empty: () => rmSync(filler, { force: true }),
    readOnly: (is: boolean) => ran('mount', '-o', `remount,${is ? 'ro' : 'rw'}`, folder),
  };
}
