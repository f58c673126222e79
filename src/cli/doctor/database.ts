/**
 * The database: whether it opens, is of this program's version, is sound, and is copied.
 */
import { existsSync, statSync } from 'node:fs';
import { InputRefused } from '../../garden/problem.ts';
import { projectGarden } from '../../garden/project.ts';
import type { Instant } from '../../measures/days.ts';
import { StoreFault } from '../../store/fault.ts';
import { databaseIn } from '../../store/store.ts';
import { databaseVersions } from '../../store/version.ts';
import { type Looking, withHousehold } from '../command-line/household.ts';
import { type Finding, note, trouble, troubles, well } from './finding.ts';

/** What the database tells besides how it fares. */
export interface DatabaseLook {
  findings: Finding[];
  gardens: { id: string; timeZone: string }[];
  /** When the newest entry of any ledger was made. */
  newest?: Instant | undefined;
  /** Whether the household has a password; left out where that cannot be read. */
  hasPassword?: boolean;
}

const ABOUT = 'database';

/** Looks at the database of a folder, and leaves it as it is: one of an older program is not brought up to date. */
export async function lookAtDatabase(looking: Looking, folder: string): Promise<DatabaseLook> {
  const file = databaseIn(folder);
  if (!existsSync(file)) {
    const said = `There is none in ${folder} yet: "loamtide serve" or "loamtide garden import FILE" makes it.`;
    return { ...only(note(ABOUT, said)), hasPassword: false };
  }
  try {
    const { version, known } = databaseVersions(file);
    if (version < known) {
      const said = `It is of version ${version}; this program brings it to ${known} when it is next started, after a copy of it.`;
      return only(note(ABOUT, said));
    }
    return await looked(looking, file);
  } catch (error) {
    if (!(error instanceof InputRefused || error instanceof StoreFault)) throw error;
    return { findings: troubles(ABOUT, error.problems), gardens: [] };
  }
}

function only(finding: Finding): DatabaseLook {
  return { findings: [finding], gardens: [] };
}

function looked(looking: Looking, file: string): Promise<DatabaseLook> {
  const others = rightsOfOthers(file);
  return withHousehold(looking, { onlyLook: true }, async ({ store }) => {
    const problems = troubles(ABOUT, await store.checkUp(looking.at.now()));
    const ids = await store.gardenIds();
    const gardens: DatabaseLook['gardens'] = [];
    const moments: Instant[] = [];
    for (const id of ids) {
      const ledger = await store.ledger(id);
      moments.push(...ledger.slice(-1).map(({ recordedAt }) => recordedAt));
      const garden = projectGarden(ledger);
      if (garden !== undefined) gardens.push({ id, timeZone: garden.place.timeZone });
    }
    const sound = well(
      ABOUT,
      `${file} is sound, is of this program’s version, and keeps ${ids.length} garden${ids.length === 1 ? '' : 's'}.`,
    );
    const findings = problems.length > 0 ? problems : [sound];
    const hasPassword = (await store.password()) !== undefined;
    return { findings: [...findings, ...others], gardens, newest: moments.sort().at(-1), hasPassword };
  });
}

/** Looked at before the database is opened: the program narrows it then. */
function rightsOfOthers(file: string): Finding[] {
  const { mode } = statSync(file);
  if (process.platform === 'win32' || (mode & 0o077) === 0) return [];
  return [
    trouble(
      ABOUT,
      `Others on this computer may have read ${file}: its secrets may be known to them.`,
      'It is its owner’s alone from now on. Give the feeds new addresses where others use this computer.',
    ),
  ];
}
