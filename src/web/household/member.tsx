/**
 * Pages about one member: changing them, and their leaving.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Member } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { unseenWork } from '../../steward/doubts/unseen-work.ts';
import type { Feed } from '../../store/feeds.ts';
import { householdPath, memberPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import type { EnteredMember } from './entered-member.ts';
import { MemberFields } from './member-form.tsx';

interface MemberPageProps {
  garden: Garden;
  member: Member;
  entered: EnteredMember;
  problems?: readonly Problem[];
}

/** The form that changes somebody. */
export function memberPage({ garden, member: { name }, entered, problems = [] }: MemberPageProps) {
  return page(
    { title: name, garden, here: 'household' },
    <article class="household">
      <h1>{name}</h1>
      <p>With another name they keep their feeds, and the work that was given to them.</p>
      <Problems problems={problems} />
      <form method="post" action={memberPath(garden.id, name, 'change')} class="change">
        <MemberFields entered={entered} garden={garden} />
        <button type="submit">Keep it so</button>
      </form>
      <p>
        <a href={householdPath(garden.id)}>Leave it as it is</a>
      </p>
    </article>,
  );
}

interface LeavePageProps {
  view: Pick<GardenView, 'garden' | 'plan'>;
  member: Member;
  /** Their open feeds. */
  feeds: readonly Feed[];
}

/** Asks before somebody leaves, and says what goes with them. */
export function leavePage({ view: { garden, plan }, member: { name, mail }, feeds }: LeavePageProps) {
  const { units } = garden.place;
  const given = plan.tasks.filter(
    ({ assignedTo, state }) => assignedTo === name && (state === 'open' || state === 'lapsed'),
  );
  const titles = given.map(({ title, day }) => readableIn(units, title, day)).join('; ');
  const others = membersOf(garden).filter((each) => each.name !== name);
  const left = unseenWork({ beds: garden.beds, household: { members: others } });
  const parting = [
    ...(given.length === 0 ? [] : [`Nobody’s in particular again: ${titles}.`]),
    ...(mail === undefined ? [] : [`No more lists by mail go to ${mail.to}.`]),
    ...feeds.map(({ label, shape }) =>
      shape.person === name
        ? `The feed “${label}” shows a single entry that says they are no longer in the household.`
        : `The feed “${label}” of all the work goes on.`,
    ),
  ];
  return page(
    { title: `${name} leaves`, garden, here: 'household' },
    <article class="household">
      <h1>Does {name} leave the household?</h1>
      <p>No work goes off the plan.</p>
      {parting.length === 0 ? (
        <p>Nothing goes with them: no work was given to them, they get no mail, and no feed is theirs.</p>
      ) : (
        <ul class="marked plain">
          {parting.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      )}
      {left.length > 0 && (
        <p class="warning">By what the others see to, some work is nobody’s then: {left.join('; ')}.</p>
      )}
      <form method="post" action={memberPath(garden.id, name, 'leave')}>
        {feeds.length > 0 && (
          <label class="choice">
            <input type="checkbox" name="revoke" value="yes" />
            <span>revoke {feeds.length === 1 ? 'this feed' : 'these feeds'} too: that cannot be taken back</span>
          </label>
        )}
        <button type="submit">{name} leaves</button>
      </form>
      <p class="small">Their leaving can be taken back on the History page; the rest then stands as before.</p>
      <p>
        <a href={householdPath(garden.id)}>Keep {name} in the household</a>
      </p>
    </article>,
  );
}
