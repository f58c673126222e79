/**
 * The clock of this computer, and the zones its gardens lie in.
 */
import { isZone } from '../../garden/time-zone.ts';
import type { Instant } from '../../measures/days.ts';
import { type Finding, note, trouble, well } from './finding.ts';

/** The year this was written, and one by which nobody runs it any more: between them lies a plausible present. */
const YEARS = { first: 2026, last: 2100 } as const;

/** How far two moments may be apart before one of them is called wrong, in milliseconds: five minutes. House default. */
const DRIFT_MS = 5 * 60_000;

/** Years after which rules of zones are called old: some change in every one. House default. */
const ZONE_RULES_YEARS = 2;

/** What the clock is held against. */
export interface ClockLooks {
  now: Instant;
  /** When the newest entry of any ledger was made. */
  newest: Instant | undefined;
  /** Version of the zone rules this Node brings, such as "2025b". */
  zoneRules: string | undefined;
  /** Gardens with the zone each lies in. */
  gardens: readonly { id: string; timeZone: string }[];
}

/** What is found about the clock. */
export function clockFindings({ now, newest, zoneRules, gardens }: ClockLooks): Finding[] {
  return [...present(now, newest), ...zones(gardens), ...rules(now, zoneRules)];
}

function present(now: Instant, newest: Instant | undefined): Finding[] {
  const about = 'clock';
  const mend = 'Set the clock of this computer, and let it be kept by time synchronisation (timedatectl set-ntp true).';
  const year = Number(now.slice(0, 4));
  if (year < YEARS.first || year > YEARS.last) return [trouble(about, `It says ${now}, which cannot be.`, mend)];
  if (newest !== undefined && Date.parse(newest) > Date.parse(now) + DRIFT_MS) {
    return [trouble(about, `It says ${now}, but something was written down at ${newest}, after that.`, mend)];
  }
  return [
    well(about, `It says ${now} (UTC), and nothing was written down after that.`),
    note(about, 'Whether it is minutes off cannot be told from here; "timedatectl" tells.'),
  ];
}

function zones(gardens: ClockLooks['gardens']): Finding[] {
  const about = 'zone';
  return gardens.map(({ id, timeZone }) =>
    isZone(timeZone)
      ? well(about, `${id} lies in ${timeZone}, which this Node knows.`)
      : trouble(
          about,
          `${id} lies in ${timeZone}, which this Node does not know.`,
          'Use a Node.js with full ICU data, as those of nodejs.org and Debian are.',
        ),
  );
}

function rules(now: Instant, version: string | undefined): Finding[] {
  const about = 'zone';
  if (version === undefined) return [note(about, 'This Node does not tell how old its rules of zones are.')];
  const said = `Rules of zones are of version ${version}.`;
  if (Number(now.slice(0, 4)) - Number(version.slice(0, 4)) <= ZONE_RULES_YEARS) return [well(about, said)];
  return [trouble(about, `${said} Where clocks have been changed since, hours are wrong.`, 'Update Node.js.')];
}
