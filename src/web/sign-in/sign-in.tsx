/**
 * The page on which somebody signs in.
 */
import type { Problem } from '../../garden/problem.ts';
import { SIGN_IN_PATH } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';

interface SignInProps {
  /** The page to come to afterwards. */
  back: string;
  problems?: readonly Problem[];
  /** Whether the password would go over a network for all on it to read. */
  isOpenlySent?: boolean;
}

/** Asks for the household's password. It says nothing of what lies behind. */
export function signInPage({ back, problems = [], isOpenlySent = false }: SignInProps) {
  return page(
    { title: 'Sign in', apart: true },
    <article class="answer">
      <h1>Sign in</h1>
      <Problems problems={problems} heading="Not signed in" />
      <form method="post" action={SIGN_IN_PATH} class="asked">
        <input type="hidden" name="to" value={back} />
        <label>
          The household’s password <input type="password" name="password" autocomplete="current-password" required />
        </label>
        <button type="submit">Sign in</button>
      </form>
      {isOpenlySent && (
        <p>
          This page did not come over https: whoever listens in on the network between this device and the computer
          Loamtide runs on can read the password.
        </p>
      )}
      <p class="small">
        Forgotten? A new one is set on the computer Loamtide runs on, with <code>loamtide password</code>.
      </p>
    </article>,
  );
}
