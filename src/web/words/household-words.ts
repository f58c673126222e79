/**
 * The people of a garden in words: what each sees to, the mail they get, and what was changed about them.
 */
import { hourWord } from '../../calendar/shape-words.ts';
import { fullDay, weekdayWord } from '../../digest/words.ts';
import type { Member, MemberMail } from '../../garden/household.ts';
import type { HouseholdFact } from '../../garden/household-facts.ts';
import { isDay } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import type { ToldReader } from './told-reader.ts';
import { titlesInWords } from './work-words.ts';

/** What a fact about people says. */
export function householdInWords(fact: HouseholdFact, reader: ToldReader): string {
  switch (fact.kind) {
    case 'member-kept': {
      const { member, formerName } = fact;
      const was = formerName === undefined || formerName === member.name ? '' : `, called ${formerName} before`;
      const mail = member.mail === undefined ? '' : `; ${mailInWords(member.mail as MemberMail, reader.units)}`;
      return `In the household: ${member.name}${was}, who sees to ${careInWords(member as Member, reader)}${mail}`;
    }
    case 'member-gone':
      return `No longer in the household: ${fact.name}`;
    case 'mail-stopped': {
      const by =
        fact.week !== undefined && isDay(fact.week) ? `, by the list of ${fullDay(fact.week, reader.units)}` : '';
      return `No more lists by mail for ${fact.name}${by}`;
    }
    case 'people-told':
      return `${fact.people === 1 ? 'One eats' : `${fact.people} eat`} from the garden`;
    case 'task-assigned':
      return `Given to ${fact.to ?? 'nobody in particular'}: ${titlesInWords(fact, reader)}`;
    default:
      return fact satisfies never;
  }
}

/** What a member sees to: "compost, mulch, on North bed". */
export function careInWords(
  { practices, beds }: Pick<Member, 'practices' | 'beds'>,
  { bedName }: Pick<ToldReader, 'bedName'>,
): string {
  const work =
    practices === undefined ? 'all the work' : practices.map((name) => PRACTICE_WORDS[name].toLowerCase()).join(', ');
  return beds === undefined ? work : `${work}, on ${beds.map(bedName).join(', ')}`;
}

/** The mail a member gets: "a list of their own work by mail to ida@example.org, on Sundays at 18:00". */
export function mailInWords({ to, from, weekday, hour, tasks }: MemberMail, units: UnitSystem): string {
  const what = tasks === 'own' ? 'a list of their own work' : 'a list of all the work';
  const sender = from === undefined ? '' : `, from ${from}`;
  return `${what} by mail to ${to}, on ${weekdayWord(weekday)}s at ${hourWord(hour, units)}${sender}`;
}
