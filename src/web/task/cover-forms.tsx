/**
 * What is told of a cover that a task looks at: how green it is, that it has grown again, that buds are out.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import { COVERED_WORDS } from '../../practices/stand-cover.ts';
import { reportPath, taskPath } from '../addresses/addresses.ts';
import { Action } from './action.tsx';
import type { Entered } from './entered.ts';
import { asksOfRegrowth, looksAtStand, looksForBuds, standToTellOf, type TaskView } from './task-view.ts';

interface LookProps {
  action: string;
  on: string;
  today: string;
  entered: Entered | undefined;
}

/** Of a young stand: how much of the ground it covers, and whether weeds are in it. */
export const LookForm = ({ action, on, today, entered }: LookProps) => (
  <>
    <h2>What you see</h2>
    <Action action={action} what="looked">
      <label>
        Looked at on <input type="date" name="on" value={on} max={today} required />
      </label>
      <fieldset class="choices">
        <legend>How much of the ground shows green</legend>
        {Object.entries(COVERED_WORDS).map(([covered, words]) => (
          <label class="choice">
            <input type="radio" name="covered" value={covered} checked={entered?.covered === covered} required />{' '}
            {words}
          </label>
        ))}
      </fieldset>
      <fieldset class="choices">
        <legend>Weeds among it, in number</legend>
        {['no', 'yes'].map((answer) => (
          <label class="choice">
            <input type="radio" name="weedy" value={answer} checked={(entered?.weedy || 'no') === answer} /> {answer}
          </label>
        ))}
      </fieldset>
      <button type="submit">Tell it</button>
      <p class="small">
        Less than half: the thin places are sown again while there is time, or mulched. What it feeds and the work of
        its cut are worked out from what you see.
      </p>
    </Action>
  </>
);

interface ToldOfCoverProps {
  found: TaskView;
  garden: Garden;
  on: string;
  today: Day;
  /** Whether it has grown again before. */
  again: boolean;
}

/** What else there is to tell of a cover; of one that is not there to be seen yet, when it can be told. */
export const ToldOfCover = ({ found, garden, on, today, again }: ToldOfCoverProps) => {
  const { task } = found;
  const stand = standToTellOf(garden, task);
  const isOfCover = looksAtStand(task) || looksForBuds(task) || asksOfRegrowth(task);
  if (isOfCover && stand === undefined) return <ToldLater found={found} garden={garden} />;
  if (stand === undefined || looksAtStand(task)) return null;
  if (asksOfRegrowth(task)) {
    const action = taskPath(garden.id, task.key);
    return (
      <GrewAgainForm isLook={task.kind === 'check-regrowth'} again={again} action={action} on={on} today={today} />
    );
  }
  return (
    <>
      <h2>Buds or flowers are out</h2>
      <p>
        <a href={`${reportPath(garden.id, 'stage')}?${new URLSearchParams({ stand: stand.id })}`}>
          Say what you see, and see what it moves
        </a>
      </p>
    </>
  );
};

/** A look is planned before the work it looks at is done: what is to be seen is told once that is marked. */
const ToldLater = ({ found: { task, waitsFor }, garden }: Pick<ToldOfCoverProps, 'found' | 'garden'>) => {
  const ofRegrowth = asksOfRegrowth(task);
  const awaited = waitsFor[0]?.task;
  return (
    <>
      <h2>{ofRegrowth ? 'It has grown again' : 'What you see'}</h2>
      <p>
        It can be told here once {ofRegrowth ? 'its cut' : 'its sowing'} is marked done
        {awaited !== undefined && (
          <>
            : <a href={taskPath(garden.id, awaited.key)}>{readableIn(garden.place.units, awaited.title)}</a>
          </>
        )}
        .
      </p>
    </>
  );
};

interface GrewAgainProps {
  isLook: boolean;
  /** Whether it has grown again before. */
  again: boolean;
  action: string;
  on: string;
  today: Day;
}

/** The other answer to a look for regrowth; of a stand that is to be cut again, the other way to end it. */
const GrewAgainForm = ({ isLook, again, action, on, today }: GrewAgainProps) => (
  <>
    <h2>{isLook ? 'It has grown again' : 'A sheet instead'}</h2>
    <Action action={action} what="grew-again">
      <label>
        {isLook ? 'Seen on' : 'Decided on'} <input type="date" name="on" value={on} max={today} required />
      </label>
      {isLook && !again && (
        <button type="submit" name="answer" value="cut">
          Cut it again
        </button>
      )}
      <button type="submit" name="answer" value="sheet">
        Lay a sheet
      </button>
      <p class="small">{isLook && !again ? TWO_WAYS : 'A sheet ends it, and keeps the bed for three weeks or four.'}</p>
    </Action>
  </>
);

const TWO_WAYS =
  'Cut once more it may be over, and is looked at again ten days later. A sheet ends it, and keeps the bed for three weeks or four.';
