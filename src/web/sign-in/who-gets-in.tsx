/**
 * Who can reach the pages, and the way out.
 */
import { handbookPath, SIGN_OUT_EVERYWHERE_PATH, SIGN_OUT_PATH } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';

interface WhoGetsInProps {
  /** Devices that are signed in, and the day the first of them did; nothing where there is no password. */
  devices?: { count: number; since: string };
}

/** Who gets in: whoever sits at the computer, or whoever knows the password. */
export function whoGetsInPage({ devices }: WhoGetsInProps) {
  return page(
    { title: 'Who gets in', docs: 'signing-in' },
    <article>
      <h1>Who gets in</h1>
      {devices === undefined ? <WithoutPassword /> : <WithPassword {...devices} />}
      <p>
        <a href={handbookPath('signing-in')}>How signing in works</a>
      </p>
    </article>,
  );
}

const WithoutPassword = () => (
  <p>
    Whoever sits at the computer Loamtide runs on: no password is set, and these pages answer no other device. To reach
    them from a phone, set one there with <code>loamtide password</code>.
  </p>
);

const WithPassword = ({ count, since }: { count: number; since: string }) => (
  <>
    <p>
      Whoever knows the household’s password.{' '}
      {count === 1
        ? `Only this device is signed in, since ${since}.`
        : `${count} devices are signed in, this one among them, the first since ${since}.`}
    </p>
    <form method="post" action={SIGN_OUT_PATH}>
      <button type="submit">Sign out here</button>
    </form>
    <form method="post" action={SIGN_OUT_EVERYWHERE_PATH}>
      <button type="submit">Sign out everywhere</button>
    </form>
    <p class="small">
      If a device was lost, or somebody knows the password who should not, set another: that signs out everywhere too.
      Calendar feeds and links in mail go on working; each has a secret of its own.
    </p>
  </>
);
