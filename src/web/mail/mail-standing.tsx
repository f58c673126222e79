/**
 * How somebody's mail stands: what went out, what comes next, what is wrong and the mend.
 */
import type { LocalClock } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { MailStanding as Standing } from '../../steward/doings/mail-doings.ts';
import { standingInWords } from '../../steward/post/standing-words.ts';
import { againPath, mailPath } from '../addresses/addresses.ts';

interface StandingProps {
  standing: Standing;
  garden: Pick<Garden, 'id' | 'place'>;
  /** Whether it stands on the page of this member's mail, and leads nowhere. */
  isHere?: boolean;
}

/** The standing of one member's mail, with what can be done about it. */
export const MailStanding = ({ standing, garden, isHere = false }: StandingProps) => {
  const { next, sent, wrong } = standingInWords(standing, clockOf(garden));
  return (
    <div class="mail-standing">
      {wrong !== undefined && <p class="warning">{wrong}</p>}
      {standing.canSendAgain && (
        <form method="post" action={againPath(garden.id)} class="one-press">
          <input type="hidden" name="person" value={standing.member} />
          <button type="submit">{standing.wrong?.state === 'delayed' ? 'Try it now' : 'Send it again'}</button>
        </form>
      )}
      <span class="under">{next}</span>
      <span class="under">{sent}</span>
      {!isHere && (
        <span class="under">
          <a class="doing" href={mailPath(garden.id, standing.member)}>
            The next list as mail
          </a>
        </span>
      )}
    </div>
  );
};

/** One line for This week where somebody's list did not go out; nothing where all is well. */
export const MailTrouble = ({
  standings,
  garden,
}: {
  standings: readonly Standing[];
  garden: StandingProps['garden'];
}) => {
  const wrong = standings.filter((standing) => standing.wrong !== undefined);
  return wrong.length === 0 ? null : (
    <p class="warning">
      The weekly list did not reach{' '}
      {wrong.map(({ member }, index) => (
        <>
          {index > 0 && ', '}
          <a href={mailPath(garden.id, member)}>{member}</a>
        </>
      ))}{' '}
      by mail.
    </p>
  );
};

function clockOf({ place: { timeZone, units } }: StandingProps['garden']): LocalClock {
  return { timeZone, units };
}
