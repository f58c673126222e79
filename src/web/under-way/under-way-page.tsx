/**
 * Work that is going on: what is being done and how far it is; and what it was stopped by.
 */
import { Problems, page, RequestNumber } from '../frame/layout.tsx';
import type { Trouble } from '../requests/trouble.ts';
import type { Doing } from './long-work.ts';

/** The page that is looked at while work goes on; it asks again by itself. */
export function underWayPage({ asked: { garden, title, failed }, words, share }: Doing, path: string) {
  return page(
    { title, ...(garden === undefined ? {} : { garden }) },
    <article class="under-way">
      <h1>{title}</h1>
      <p>
        <label for="how-far" aria-live="polite">
          {words}
        </label>
      </p>
      <progress id="how-far" max={1} {...(share === undefined ? {} : { value: share })} />
      <p class="small">
        This page follows by itself and leads on when all is done. You may leave it: the work goes on.{' '}
        <a href={path}>Look now</a>, or <a href={failed}>go back</a>.
      </p>
    </article>,
  );
}

/** Why the work came to nothing, with the way back. */
export function brokenOffPage({ garden, title, failed }: Doing['asked'], { message, problems, requestId }: Trouble) {
  return page(
    { title, ...(garden === undefined ? {} : { garden }) },
    <article class="under-way">
      <h1>{title}</h1>
      <Problems problems={problems} heading={message} />
      <RequestNumber requestId={requestId} />
      <p>
        <a href={failed}>Go back</a>
      </p>
    </article>,
  );
}
