/**
 * The page that tells of trouble.
 */
import type { Problem } from '../../garden/problem.ts';
import { ProblemWords, page, RequestNumber } from './layout.tsx';

/**
 * Says why a request could not be answered, and what to do.
 *
 * @param around the number its request goes by in the log, and whether its reader may reach nothing but such pages
 */
export function troublePage(
  title: string,
  problems: readonly Problem[],
  { requestId, apart = false }: { requestId?: string | undefined; apart?: boolean } = {},
) {
  return page(
    { title, apart },
    <article>
      <h1>{title}</h1>
      {problems.map((problem) => (
        <p>
          <ProblemWords {...problem} />
        </p>
      ))}
      <RequestNumber requestId={requestId} />
      {!apart && (
        <p>
          <a href="/">This week</a>
        </p>
      )}
    </article>,
  );
}
