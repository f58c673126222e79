/**
 * Pages that belong to no garden: trouble, a choice of gardens, and the first start.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { weekPath } from '../addresses.ts';
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

/** A choice of gardens; the way to bring one in when there is none. */
export function gardensPage(gardens: readonly Pick<Garden, 'id' | 'name'>[]) {
  return page(
    { title: 'Gardens' },
    <article>
      <h1>Gardens</h1>
      {gardens.length === 0 && (
        <p>
          No garden is here yet. Write a garden file and bring it in with <code>loamtide garden import FILE</code>; its
          week then shows here.
        </p>
      )}
      <ul>
        {gardens.map(({ id, name }) => (
          <li>
            <a href={weekPath(id)}>{name}</a>
          </li>
        ))}
      </ul>
    </article>,
  );
}
