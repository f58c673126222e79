/**
 * The page behind the link that stops somebody's mail.
 */
import { type PageGarden, page } from '../frame/layout.tsx';

/** What the form says, as RFC 8058, 3.2 has mail programs say it. */
export const ONE_CLICK = { name: 'List-Unsubscribe', value: 'One-Click' } as const;

/** The mail that a link stops. */
export interface StoppedMail {
  garden: PageGarden;
  /** Who gets it, as they are called now; nothing where they have left. */
  member: string | undefined;
  isSent: boolean;
  /** Whether somebody else of the household gets a list at the address that the link went to. */
  goesToAnother: boolean;
}

/** Asks whether the mail is to stop, or says that it has. */
export function stopPage({ garden, member, isSent, goesToAnother }: StoppedMail) {
  const title = isSent ? 'Stop this mail?' : goesToAnother ? 'Another list goes there' : 'The mail has stopped';
  return page(
    { title, garden, apart: true },
    <article class="answer">
      <h1>{title}</h1>
      {isSent && member !== undefined ? (
        <Asked member={member} garden={garden} />
      ) : (
        <p>
          No list of {garden.name} goes to {member ?? 'whoever this link was sent to'} by mail.
        </p>
      )}
      {!isSent && goesToAnother && (
        <p>
          Somebody else of the household has theirs sent to the same address, and still gets it: the link in that list
          stops it.
        </p>
      )}
      <p class="small">The Household page, at home, says who gets it and on which day.</p>
    </article>,
  );
}

const Asked = ({ member, garden }: { member: string; garden: PageGarden }) => (
  <>
    <p>
      The weekly list of {garden.name} goes to {member} by mail. Opening this page has changed nothing; the button stops
      it.
    </p>
    <form method="post" class="asked">
      <input type="hidden" name={ONE_CLICK.name} value={ONE_CLICK.value} />
      <button type="submit">Stop the mail</button>
    </form>
  </>
);
