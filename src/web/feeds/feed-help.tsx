/**
 * How a feed comes into a calendar app, and onto a phone.
 */
import { handbookPath } from '../addresses/addresses.ts';
import type { WebSettings } from '../addresses/settings.ts';

/** How to subscribe, in terms that hold for most apps. */
export const HowToSubscribe = () => (
  <section>
    <h2>How to subscribe</h2>
    <ol class="marked">
      <li>Copy the address. Whoever has it can read the plan, so pass it on as you would a door key.</li>
      <li>
        Look for a way to <em>subscribe</em> to a calendar by its address, and paste it there:
        <ul class="plain">
          <li>on a phone whose settings keep calendar accounts, among those, as a subscribed calendar;</li>
          <li>
            on a phone whose calendar belongs to a web account, not on the phone but on that account’s calendar page in
            a browser, as a calendar “from URL”; it shows on the phone afterwards, once its sync is switched on;
          </li>
          <li>on other phones with a small app that does nothing but read subscribed calendars;</li>
          <li>
            on a desktop, where new calendars are made: one “on the network”, or “from the web”, as iCalendar (ICS).
          </li>
        </ul>
      </li>
      <li>Subscribe, do not import: an import is a copy made once and never follows the plan.</li>
      <li>
        Where the app asks how often to look, choose the shortest time; where it offers to drop reminders, keep them.
      </li>
    </ol>
    <p>
      The feed asks to be read every six hours, but each app decides for itself: many look only a few times a day, some
      once. Reminders are left out by many apps when they come from a subscription, and some never show to-dos. When a
      freeze is coming, do not wait for the calendar: the This week page is always the latest word.
    </p>
  </section>
);

/** Said beside an address that only this computer reaches, with what does for a phone; nothing where others reach it. */
export const HereOnly = ({ settings: { publicUrl } }: { settings: WebSettings }) =>
  publicUrl === undefined ? (
    <span class="under">
      This address works on this computer only: a calendar program here can subscribe to it, a phone cannot. For a
      phone, open it in a browser here, which saves the .ics file, and send that over: a copy that does not follow the
      plan. Or <a href={RUNNING_PATH}>give this computer an address that phones reach</a>, named in{' '}
      <code>LOAMTIDE_PUBLIC_URL</code>.
    </span>
  ) : null;

/** The page of the handbook that tells how phones come to reach the feeds. */
const RUNNING_PATH = handbookPath('running', 'settings');

/** Who can reach the addresses, and what to do where that is only this computer. */
export const Reach = ({ settings: { publicUrl, port } }: { settings: WebSettings }) => (
  <section>
    <h2>From a phone</h2>
    {publicUrl === undefined ? (
      <>
        <p>
          These addresses work on this computer only. To let a phone on the same network read them, something on this
          computer has to pass them on:
        </p>
        <ol class="marked">
          <li>
            Set up a reverse proxy here that listens on the network, on port 8080 for instance, and passes{' '}
            <code>/feed/</code>, and nothing else, on to <code>http://127.0.0.1:{port}</code> with the Host header it
            was sent. <a href={RUNNING_PATH}>Running Loamtide</a> has lines to copy.
          </li>
          <li>
            Find the address this computer has in the network, such as 192.168.1.20, and start Loamtide with{' '}
            <code>LOAMTIDE_PUBLIC_URL=http://192.168.1.20:8080</code>. It then stands in the addresses above.
          </li>
          <li>
            Subscribe on the phone while it is in that network. Elsewhere the app keeps what it last read. A calendar
            kept by a web service reads from its own computers and needs an address on the public web, with https.
          </li>
        </ol>
      </>
    ) : (
      <p>
        The addresses above begin with {publicUrl.origin}, the public address this program was given. Whatever can reach
        it can read the feeds. These pages stay on this computer.
      </p>
    )}
  </section>
);
