/**
 * The household: who works in the garden with what they see to, their feeds and their mail, and who eats from it.
 */
import type { Member } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { MOST_PEOPLE } from '../../garden/household-file.ts';
import type { Problem } from '../../garden/problem.ts';
import type { MailWay, MailStanding as Standing } from '../../steward/doings/mail-doings.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { unseenWork } from '../../steward/doubts/unseen-work.ts';
import { wayInWords } from '../../steward/post/standing-words.ts';
import type { Feed } from '../../store/feeds.ts';
import {
  feedPath,
  feedsPath,
  gardenPath,
  householdPath,
  memberPath,
  weekPath,
  weekSheetPath,
} from '../addresses/addresses.ts';
import { feedAddress, type WebSettings } from '../addresses/settings.ts';
import { Problems, page } from '../frame/layout.tsx';
import { MailStanding } from '../mail/mail-standing.tsx';
import { careInWords, mailInWords } from '../words/household-words.ts';
import type { EnteredMember } from './entered-member.ts';
import { feedsOf } from './feeds-of-member.ts';
import { MemberFields } from './member-form.tsx';

export interface HouseholdPageProps {
  view: Pick<GardenView, 'garden' | 'plan'>;
  /** Every open feed. */
  feeds: readonly Feed[];
  /** How everybody's mail stands, and where it goes. */
  mail: { standings: readonly Standing[]; way: MailWay };
  settings: WebSettings;
  /** What stands in the field of how many eat. */
  people: string;
  /** What stands in the form of somebody new, and what was wrong when a form comes back. */
  entered: EnteredMember;
  problems?: readonly Problem[];
  /** What the last press came to, in a sentence; empty where there was none. */
  happened: string;
}

/** The Household page. */
export function householdPage(props: HouseholdPageProps) {
  const { view, people, entered, problems = [] } = props;
  const { garden } = view;
  const members = membersOf(garden);
  const unseen = unseenWork(garden);
  return page(
    { title: 'Household', garden, here: 'household' },
    <article class="household two">
      <h1>Household</h1>
      <p>
        Who works in the garden, and which of the work is whose. It decides what each person’s own feed and weekly list
        show, and moves nothing in the plan.
      </p>
      <Problems problems={problems} />
      {props.happened !== '' && problems.length === 0 && <p role="status">{props.happened}</p>}
      <Everybody {...props} />
      {unseen.length > 0 && (
        <p class="warning">
          By what each sees to, some work is nobody’s: {unseen.join('; ')}. It shows in no one’s own feed or list.
        </p>
      )}
      {props.mail.standings.length > 0 && <p class="small">{wayInWords(props.mail.way)}</p>}
      <div class="aside">
        <section>
          <h2 id="somebody-new">Somebody new</h2>
          <form method="post" action={householdPath(garden.id)}>
            <details open={problems.length > 0 || members.length === 0}>
              <summary>Name, what they see to, and mail</summary>
              <MemberFields entered={entered} garden={garden} />
              <button type="submit">Add them</button>
            </details>
          </form>
        </section>
        <section>
          <h2>Who eats from the garden</h2>
          <WhoEats gardenId={garden.id} people={people} />
        </section>
      </div>
    </article>,
  );
}

/** Those who are named, each with what is theirs. */
const Everybody = (props: HouseholdPageProps) => {
  const members = membersOf(props.view.garden);
  if (members.length === 0)
    return (
      <p>
        Nobody is named yet: all the work is everybody’s. <a href="#somebody-new">Add the first person</a>, and each has
        a week, a sheet, a feed and mail of their own.
      </p>
    );
  return (
    <>
      <dl class="feed-list">
        {members.map((member) => (
          <OneMember member={member} {...props} />
        ))}
      </dl>
      {members.every(({ mail }) => mail === undefined) && (
        <p class="small">Nobody gets the weekly list by mail yet. Change somebody, and give the address it goes to.</p>
      )}
    </>
  );
};

const WhoEats = ({ gardenId, people }: { gardenId: string; people: string }) => (
  <>
    <form method="post" action={`${householdPath(gardenId)}/people`}>
      <label>
        People who eat <input type="number" name="people" value={people} min={1} max={MOST_PEOPLE} required />
      </label>
      <button type="submit">Keep it</button>
      <p class="small">How much the kitchen brings to the pile in a year and through winter is reckoned from it.</p>
    </form>
    <p>
      Grass clippings and cut covers that you bring to the pile, fabric against frost and seed in the drawer are told on
      the page of <a href={`${gardenPath(gardenId)}#household`}>the garden</a>.
    </p>
  </>
);

type OneMemberProps = HouseholdPageProps & { member: Member };

const OneMember = ({ member, view: { garden }, feeds, mail: { standings }, settings }: OneMemberProps) => {
  const { name, mail } = member;
  const standing = standings.find((each) => each.member === name);
  const { units } = garden.place;
  const bedName = (bedId: string) => garden.beds.find(({ id }) => id === bedId)?.name ?? bedId;
  const given = Object.values(garden.assigned).filter((to) => to === name).length;
  return (
    <>
      <dt>{name}</dt>
      <dd>
        <span class="under">sees to {careInWords(member, { bedName })}</span>
        {given > 0 && <span class="under">{given === 1 ? 'one task' : `${given} tasks`} given to them besides</span>}
        <span class="under">{mail === undefined ? 'gets no mail' : `gets ${mailInWords(mail, units)}`}</span>
        {standing !== undefined && <MailStanding standing={standing} garden={garden} />}
        <span class="under">
          <a class="doing" href={weekPath(garden.id, undefined, name)}>
            Their week
          </a>
          <a class="doing" href={weekSheetPath(garden.id, undefined, name)}>
            Their sheet to print
          </a>
          <a class="doing" href={memberPath(garden.id, name, 'change')}>
            Change
          </a>
          <a class="doing" href={memberPath(garden.id, name, 'leave')}>
            Leaves the household
          </a>
        </span>
        {feedsOf(feeds, member).map((feed) => (
          <MembersFeed feed={feed} gardenId={garden.id} settings={settings} />
        ))}
        <form method="post" action={`${householdPath(garden.id)}/feed`} class="one-press">
          <input type="hidden" name="member" value={name} />
          <button type="submit" name="tasks" value="own">
            Make a feed of their own work
          </button>
          <button type="submit" name="tasks" value="all">
            Make a feed of all the work
          </button>
        </form>
      </dd>
    </>
  );
};

const MembersFeed = ({ feed, gardenId, settings }: { feed: Feed; gardenId: string; settings: WebSettings }) => (
  <p class="members-feed">
    {feed.shape.person === undefined ? 'Feed of all the work' : 'Feed of their own work'}, “{feed.label}”
    <code class="address">{feedAddress(settings, feed.token)}</code>
    <span class="under">
      <a class="doing" href={feedPath(gardenId, feed.id, 'change')}>
        Change
      </a>
      <a class="doing" href={feedPath(gardenId, feed.id, 'revoke')}>
        Revoke
      </a>
      <a class="doing" href={feedsPath(gardenId)}>
        How to subscribe
      </a>
    </span>
  </p>
);
