/**
 * What else there is to say of a weather file that was read.
 */
import type { WeatherFile } from '../../garden/weather-rows.ts';
import { ProblemWords } from '../frame/layout.tsx';
import { told } from './weather-sent.ts';

/** "1 row", "3 rows". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** Rows that gave way, values left out, and each line that cannot be used. */
export const FileNotes = ({ file: { problems, moreProblems, duplicates, doubted } }: { file: WeatherFile }) => (
  <>
    {duplicates > 0 && <p>{counted(duplicates, 'row')} of the file gave way to a later row of the same date.</p>}
    {doubted > 0 && (
      <p>
        {counted(doubted, 'value')} of the file {doubted === 1 ? 'is' : 'are'} left out: the record itself marks{' '}
        {doubted === 1 ? 'it' : 'them'} as doubtful.
      </p>
    )}
    {problems.length > 0 && (
      <>
        <h2>What cannot be used, and is left out</h2>
        <ul class="marked">
          {told(problems, moreProblems).map((problem) => (
            <li>
              <ProblemWords {...problem} />
            </li>
          ))}
        </ul>
      </>
    )}
  </>
);
