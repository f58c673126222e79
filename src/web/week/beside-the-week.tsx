/**
 * What stands beside the days of a week: closing windows, what was missed, what moved and why, next week.
 */
import { becauseText, type ChangeGroup, laterLine } from '../../digest/recent-changes.ts';
import { moreLine } from '../../digest/triage.ts';
import { closingElsewhere, type WeekList } from '../../digest/week-list.ts';
import { changesHeading } from '../../digest/week-sections.ts';
import { daysAhead, weekdayName } from '../../digest/words.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { supplyLine } from '../../schedule/entry-text.ts';
import { bedsPath, taskPath, weekPath } from '../addresses/addresses.ts';
import { WhyDate, WhyDateIf } from '../frame/why.tsx';

interface BesideProps {
  week: WeekList;
  units: UnitSystem;
  isThisWeek: boolean;
  /** Whether the week after is shown too. */
  leadsOn: boolean;
}

/** The second column. What belongs to today is left out beside another week. */
export const BesideTheWeek = ({ week, units, isThisWeek, leadsOn }: BesideProps) => (
  <div class="beside">
    {isThisWeek && (
      <>
        <ClosingSoon week={week} units={units} />
        <Overloads week={week} units={units} />
        <Clashes week={week} units={units} />
        <Missed week={week} units={units} />
        <Changes week={week} units={units} />
        <NotKnown week={week} />
      </>
    )}
    {week.monday > week.today && <ClosingSoon week={week} units={units} />}
    {!isThisWeek && <Overloads week={week} units={units} />}
    {leadsOn && <ToGet week={week} units={units} />}
    {leadsOn && <NextWeek week={week} units={units} isThisWeek={isThisWeek} />}
  </div>
);

type SectionProps = Pick<BesideProps, 'week' | 'units'>;

const ClosingSoon = ({ week, units }: SectionProps) => {
  const closing = closingElsewhere(week);
  return closing.length === 0 ? null : (
    <section class="closing">
      <h2>Closing soon</h2>
      <ul>
        {closing.map(({ keys: [key = ''], title, latest, daysLeft }) => (
          <li>
            <a href={taskPath(week.gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              last day{' '}
              <WhyDate gardenId={week.gardenId} of={key}>
                {formatDay(latest, units, week.today)}
              </WhyDate>
              , {daysAhead(daysLeft)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Overloads = ({ week: { overloads, gardenId, monday, today }, units }: SectionProps) =>
  overloads.length === 0 ? null : (
    <section class="overloads">
      <h2>More than the hours</h2>
      <ul>
        {overloads.map(({ sentences: [first = '', ...others], ...overload }) => (
          <li>
            {overload.monday === monday ? (
              readableIn(units, first, today)
            ) : (
              <a href={weekPath(gardenId, overload.monday)}>{readableIn(units, first, today)}</a>
            )}
            {others.map((sentence) => (
              <span class="under">{readableIn(units, sentence, today)}</span>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );

const Clashes = ({ week: { clashes, gardenId, today }, units }: SectionProps) =>
  clashes.length === 0 ? null : (
    <section class="clashes">
      <h2>Does not fit</h2>
      <ul>
        {clashes.map(({ key, title, what }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">{readableIn(units, what, today)}</span>
          </li>
        ))}
      </ul>
    </section>
  );

const Missed = ({ week: { triage, gardenId, today }, units }: SectionProps) =>
  triage.lines.length === 0 ? null : (
    <section class="missed">
      <h2>Window closed</h2>
      <ul>
        {triage.lines.map(({ keys: [key = ''], title, latest, missedNote }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              closed{' '}
              <WhyDate gardenId={gardenId} of={key}>
                {formatDay(latest, units, today)}
              </WhyDate>
              . {readableIn(units, missedNote)}
            </span>
          </li>
        ))}
        {triage.more > 0 && <li>{moreLine(triage)}</li>}
      </ul>
    </section>
  );

const NotKnown = ({ week: { unknown, gardenId } }: { week: WeekList }) =>
  unknown.length === 0 ? null : (
    <section class="unknown">
      <h2>Not known yet</h2>
      <ul>
        {unknown.map((sentence) => (
          <li>{sentence}</li>
        ))}
        <li>
          <a href={bedsPath(gardenId)}>Every bed, and what is to grow in it</a>
        </li>
      </ul>
    </section>
  );

const Changes = ({ week, units }: SectionProps) => {
  const { changes, laterChanges, today, gardenId } = week;
  const added = changes.filter(({ kind }) => kind === 'added');
  if (changes.length + laterChanges.length === 0) return null;
  return (
    <section class="changes">
      <h2>{changesHeading(week, units)}</h2>
      <ul>
        {changes
          .filter(({ kind }) => kind !== 'added')
          .map((group) => (
            <ChangeLine group={group} gardenId={gardenId} units={units} today={today} />
          ))}
      </ul>
      {added.length > 0 && (
        <details>
          <summary>New in the plan: {added.reduce((sum, { titles }) => sum + titles.length, 0)}</summary>
          <ul>
            {added.map((group) => (
              <ChangeLine group={group} gardenId={gardenId} units={units} today={today} />
            ))}
          </ul>
        </details>
      )}
      {laterChanges.length > 0 && (
        <details>
          <summary>{laterLine(laterChanges)}</summary>
          <ul>
            {laterChanges.map((group) => (
              <ChangeLine group={group} gardenId={gardenId} units={units} today={today} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};

interface ChangeProps {
  group: ChangeGroup;
  gardenId: string;
  units: UnitSystem;
  today: Day;
}

const ChangeLine = ({ group, gardenId, units, today }: ChangeProps) => (
  <li>
    {readableIn(units, group.titles.join('; '), today)}: <WhatHappened {...{ group, gardenId, units, today }} />
    {group.because.length > 0 && <span class="under">{readableIn(units, becauseText(group), today)}</span>}
  </li>
);

/** What is off the plan has no page that could say why it stood there; the line beneath says why it went. */
const WhatHappened = ({ group: { kind, keys, from, to }, gardenId, units, today }: ChangeProps) => {
  const [was, is] = [from, to].map((day) => (day === undefined ? 'no day' : formatDay(day, units, today)));
  const asked = (
    <WhyDateIf gardenId={gardenId} of={keys[0]}>
      {is}
    </WhyDateIf>
  );
  switch (kind) {
    case 'moved':
      return (
        <>
          from {was} to {asked}.
        </>
      );
    case 'dropped':
      return <>off the plan; it stood on {was}.</>;
    case 'added':
      return <>on {asked}.</>;
    default:
      return kind satisfies never;
  }
};

const ToGet = ({ week: { toGet }, units }: SectionProps) =>
  toGet.length === 0 ? null : (
    <section class="to-get">
      <h2>To buy or gather for the week after</h2>
      <p>{readableIn(units, toGet.map(supplyLine).join('; '))}</p>
    </section>
  );

const NextWeek = ({ week: { next, gardenId, monday, person }, units, isThisWeek }: Omit<BesideProps, 'leadsOn'>) =>
  next.length === 0 ? null : (
    <section class="next-week">
      <h2>
        <a href={weekPath(gardenId, addDays(monday, 7), person)}>{isThisWeek ? 'Next week' : 'The week after'}</a>
      </h2>
      <ul>
        {next.flatMap(({ day, entries }) =>
          entries.map(({ entry }) => (
            <li>
              <span class="small-date">
                <WhyDateIf gardenId={gardenId} of={entry.keys[0]}>
                  {weekdayName(day).slice(0, 3)} {formatDay(day, units)}
                </WhyDateIf>
              </span>{' '}
              {readableIn(units, entry.title)}
            </li>
          )),
        )}
      </ul>
    </section>
  );
