/**
 * A form of a task: what it does, and to which address.
 */
import type { PropsWithChildren } from 'hono/jsx';

/** A form that is sent to the page of its task. */
export const Action = ({ action, what, children }: PropsWithChildren<{ action: string; what: string }>) => (
  <form method="post" action={action}>
    <input type="hidden" name="do" value={what} />
    {children}
  </form>
);
