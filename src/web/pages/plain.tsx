/**
 * The page that tells of trouble.
 */
import type { Problem } from '../../garden/problem.ts';
import { ProblemWords, page } from '../layout.tsx';

/**
 * Says why a request could not be answered, and what to do.
 *
 * @param apart whether its reader may reach nothing but such pages
 */
export function troublePage(title: string, problems: readonly Problem[], apart = false) {
  return page(
    { title, apart },
    <article>
      <h1>{title}</h1>
      {problems.map((problem) => (
        <p>
          <ProblemWords {...problem} />
        </p>
      ))}
      {!apart && (
        <p>
          <a href="/">This week</a>
        </p>
      )}
    </article>,
  );
}
