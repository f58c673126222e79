/**
 * Undo: what taking an entry back would do, before it is done.
 */
import { otherwiseInWords } from '../../digest/told-otherwise.ts';
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView, TaskMove, UndoPreview } from '../../steward/doings/steward.ts';
import { historyPath, undoPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, WhyDateIf, WhyFold } from '../frame/why.tsx';
import { amountsInWords } from '../words/amount-words.ts';
import { factInWords } from '../words/ledger-words.ts';

interface UndoPageProps {
  view: Pick<GardenView, 'garden' | 'plan'>;
  /** Absent when nothing can be taken back. */
  preview: UndoPreview | undefined;
  problems?: readonly Problem[];
}

/** The page that asks before an entry is taken back. */
export function undoPage({ view: { garden, plan }, preview, problems = [] }: UndoPageProps) {
  return page(
    { title: 'Take back', garden, here: 'history' },
    <article class="undo">
      <h1>Take back</h1>
      <Problems problems={problems} />
      {preview === undefined ? (
        problems.length === 0 && <p>There is nothing to take back yet.</p>
      ) : (
        <Preview preview={preview} garden={garden} today={plan.today} />
      )}
      <p>
        <a href={historyPath(garden.id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

interface PreviewProps {
  preview: UndoPreview;
  garden: GardenView['garden'];
  today: Day;
}

const Preview = ({ preview, garden, today }: PreviewProps) => {
  const { entry, leaning, moves } = preview;
  const { units } = garden.place;
  return (
    <>
      <p class="about">
        <AskedDates text={factInWords(entry.fact, garden, entry.recordedOn)} to={historyPath(garden.id)} />
        <span class="under">
          Entry {entry.entry}, {fullDay(entry.recordedOn, units)}, {entry.by}
        </span>
      </p>
      <h2>What would change</h2>
      {moves.length === 0 ? (
        <p>No task moves.</p>
      ) : (
        <Moves moves={moves} gardenId={garden.id} units={units} today={today} />
      )}
      {leaning.length > 0 && (
        <>
          <h2>Later entries about the same things</h2>
          <p>They stay as they are. Look whether they still hold.</p>
          <ul class="marked">
            {leaning.map((later) => (
              <li>
                {factInWords(later.fact, garden, today)} <span class="small">entry {later.entry}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <form method="post" action={undoPath(garden.id)}>
        <input type="hidden" name="entry" value={String(entry.entry)} />
        <button type="submit">Take it back</button>
      </form>
    </>
  );
};

interface MovesProps {
  moves: UndoPreview['moves'];
  gardenId: string;
  units: UnitSystem;
  today: Day;
}

const Moves = ({ moves, gardenId, units, today }: MovesProps) => (
  <ul class="marked">
    {moves.map((move) => (
      <li>
        {readableIn(units, move.title, today)}:{' '}
        <WhyDateIf gardenId={gardenId} of={move.from && move.key}>
          {moveInWords(move, units, today)}
        </WhyDateIf>
        <WhyFold reasons={move.reasons} gardenId={gardenId} units={units} beside={today} />
      </li>
    ))}
  </ul>
);

function moveInWords({ from, to, amounts = [], otherwise }: TaskMove, units: UnitSystem, today: Day): string {
  const [was, is] = [from, to].map((day) => day && formatDay(day, units, today));
  const stays = `stays on ${is}${amounts.length > 0 || otherwise ? '' : ', its mark taken back'}`;
  const moved = was === is ? stays : `from ${was} to ${is}`;
  const how = was === undefined ? `back on ${is}` : is === undefined ? `off the plan; it stands on ${was}` : moved;
  const says = otherwise === undefined ? '' : readableIn(units, otherwiseInWords(otherwise), today);
  return [how, amountsInWords(amounts, units), says].filter((part) => part !== '').join('; ');
}
