/**
 * The data folder: there, writable, for its owner alone, and on a disk of this computer.
 */
import { accessSync, constants, existsSync, mkdtempSync, rmSync, statfsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { codeOf } from '../files/files.ts';
import { type Finding, note, trouble, well } from './finding.ts';

const ABOUT = 'data folder';

/** What only its owner may do, and nobody else: rights of the group and of all others. */
const OTHERS = 0o077;

/**
 * File systems on which SQLite cannot promise that a change is safe, by the number the kernel gives them: their locks and
 * flushes end at another computer.
 *
 * Source: the numbers are those of statfs(2) and linux/magic.h; https://www.sqlite.org/howtocorrupt.html, 2.1.
 */
const NETWORK_SHARES: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xfe534d42, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0x01021997, '9P'],
  [0x00c36400, 'Ceph'],
  [0x5346414f, 'AFS'],
]);

/** A file system in memory, by the same list. */
const TMPFS = 0x01021994;
/** One that a program of its own stands behind, which may be a share. */
const FUSE = 0x65735546;

/** What is found about a data folder, its file system known by its number. */
export function folderFindings(folder: string, fileSystem = fileSystemOf(folder)): Finding[] {
  if (!existsSync(folder)) {
    return [
      trouble(
        ABOUT,
        `${folder} does not exist.`,
        'Name the right one with LOAMTIDE_DATA or --data, or start "loamtide serve" once.',
      ),
    ];
  }
  const { mode } = statSync(folder);
  if (!statSync(folder).isDirectory()) return [trouble(ABOUT, `${folder} is not a folder.`, 'Name a folder.')];
  const said = `${folder} is there, can be written, and is its owner’s alone.`;
  const found = [...writable(folder), ...alone(folder, mode), ...disk(folder, fileSystem)];
  return found.some(({ state }) => state === 'trouble') ? found : [well(ABOUT, said), ...found];
}

/** Proved by writing: rights, a full disk and a disk mounted read-only all stand against it. */
function writable(folder: string): Finding[] {
  try {
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    rmSync(mkdtempSync(join(folder, '.looked-at-')), { recursive: true });
    return [];
  } catch (error) {
    const code = codeOf(error);
    const why =
      code === 'ENOSPC'
        ? 'its disk is full'
        : code === 'EROFS'
          ? 'its disk is mounted read-only'
          : 'the rights do not allow it';
    const mend =
      code === 'ENOSPC'
        ? 'Make room.'
        : 'Let the user the program runs as own the folder, on a disk that can be written.';
    return [trouble(ABOUT, `${folder} cannot be written: ${why}.`, mend)];
  }
}

function alone(folder: string, mode: number): Finding[] {
  if (process.platform === 'win32' || (mode & OTHERS) === 0) return [];
  const others = (mode & 0o777).toString(8).padStart(4, '0');
  return [trouble(ABOUT, `Others on this computer may look into ${folder} (mode ${others}).`, `chmod 700 ${folder}`)];
}

function disk(folder: string, fileSystem: number | undefined): Finding[] {
  const share = NETWORK_SHARES.get(fileSystem ?? 0);
  if (share !== undefined) {
    return [
      trouble(
        ABOUT,
        `${folder} lies on a network share (${share}): there the database cannot promise that a change is safe.`,
        'Move it to a disk of this computer.',
      ),
    ];
  }
  if (fileSystem === TMPFS) {
    return [
      trouble(ABOUT, `${folder} lies in memory: it is gone when this computer is started anew.`, 'Move it to a disk.'),
    ];
  }
  return fileSystem === FUSE ? [note(ABOUT, 'Whether its disk is a network share cannot be told from here.')] : [];
}

function fileSystemOf(folder: string): number | undefined {
  return existsSync(folder) ? statfsSync(folder).type : undefined;
}
