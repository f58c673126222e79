/**
 * Since when somebody has had the weekly list by mail, and what they were called meanwhile.
 */
import type { LedgerEntry } from '../../garden/ledger.ts';
import { standingEntries } from '../../garden/project.ts';
import type { Instant } from '../../measures/days.ts';

/** Somebody's mail so far. */
export interface MailHistory {
  /** Every name they had since, the present one last. */
  names: readonly string[];
  /** When the mail they have now was first asked for. */
  since: Instant;
}

/**
 * The mail of each member who has it, by present name. Other settings of it, another name and a new garden file do not
 * begin it anew; stopping it, or leaving, does.
 */
export function mailHistories(ledger: readonly LedgerEntry[]): ReadonlyMap<string, MailHistory> {
  const histories = new Map<string, MailHistory>();
  for (const { fact, recordedAt } of standingEntries(ledger)) {
    switch (fact.kind) {
      case 'garden-imported':
        for (const { name, mail } of fact.file.household?.members ?? []) {
          if (mail !== undefined && !histories.has(name)) histories.set(name, { names: [name], since: recordedAt });
        }
        break;
      case 'member-kept': {
        const { member, formerName = member.name } = fact;
        const { names = [], since = recordedAt } = histories.get(formerName) ?? {};
        histories.delete(formerName);
        const all = [...names.filter((name) => name !== member.name), member.name];
        if (member.mail !== undefined) histories.set(member.name, { names: all, since });
        break;
      }
      case 'member-gone':
      case 'mail-stopped':
        histories.delete(fact.name);
        break;
      default:
    }
  }
  return histories;
}
