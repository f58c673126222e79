/**
 * What stands above the week of a garden just made, and of the demo garden.
 */
import type { Feed } from '../../store/feeds.ts';
import { feedsPath, setUpPath } from '../addresses/addresses.ts';
import { feedAddress, type WebSettings, webcalAddress } from '../addresses/settings.ts';
import { HereOnly, HowToSubscribe, Reach } from '../feeds/feed-help.tsx';

interface BegunProps {
  gardenId: string;
  feed: Feed;
  settings: WebSettings;
}

/** The address of the first feed, with how to subscribe. */
export const Begun = ({ gardenId, feed, settings }: BegunProps) => {
  const webcal = webcalAddress(settings, feed.token);
  return (
    <aside class="begun" aria-label="Your calendar">
      <p>
        The garden is made. This is the address of its calendar, “{feed.label}”: paste it where{' '}
        {settings.publicUrl === undefined ? 'a calendar program on this computer' : 'your calendar app'} subscribes to
        one.
      </p>
      <p>
        <code class="address">{feedAddress(settings, feed.token)}</code>
        {webcal !== undefined && (
          <span class="under">
            or, to hand it to the app that opens calendars here: <a href={webcal}>{webcal}</a>
          </span>
        )}
        <HereOnly settings={settings} />
      </p>
      <details>
        <summary>How to subscribe</summary>
        <HowToSubscribe />
        <Reach settings={settings} />
      </details>
      <p class="small">
        It stands on the page <a href={feedsPath(gardenId)}>Feeds</a> from now on, where more are made and each is
        shaped.
      </p>
    </aside>
  );
};

/** The way from the demo garden to one's own. */
export const DemoNotice = () => (
  <form method="post" action={setUpPath()} class="begun">
    <p class="small">This garden is an invented one, to look around in.</p>
    <button type="submit">Start your own garden</button>
  </form>
);
