/**
 * The ways to ask: a date why it is that date, a figure where it comes from, a rule how it works.
 */
import type { PropsWithChildren } from 'hono/jsx';
import type { Day } from '../../measures/days.ts';
import { MONTHS, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Reason, TaskKey } from '../../practices/draft.ts';
import { reasonSentence, sourceLine } from '../../schedule/explain.ts';
import { handbookPath, whyPath } from '../addresses/addresses.ts';
import { docs } from '../handbook/docs/docs.ts';
import { sourceHref } from '../handbook/docs/source-kinds.ts';

/** A date of a task, which leads to the reasons of that date. */
export const WhyDate = ({ gardenId, of, children }: PropsWithChildren<{ gardenId: string; of: TaskKey }>) => (
  <a class="why-date" href={whyPath(gardenId, of)} title="Why this date">
    {children}
  </a>
);

/** A date of a task that may have left the plan: then there is nothing to lead to. */
export const WhyDateIf = ({
  gardenId,
  of,
  children,
}: PropsWithChildren<{ gardenId: string; of: TaskKey | undefined }>) =>
  of === undefined ? (
    children
  ) : (
    <WhyDate gardenId={gardenId} of={of}>
      {children}
    </WhyDate>
  );

/** A date in words, in either order. */
const MONTH = `(?:${MONTHS.join('|')})`;
const DATE = new RegExp(`(${MONTH} \\d{1,2}(?!\\d)(?:, \\d{4})?|\\d{1,2} ${MONTH}(?: \\d{4})?)`);

interface AskedProps {
  /** Words as they are read. */
  text: string;
  /** Where its dates lead: all to one place, or each in turn to its own; nothing for one that cannot be asked. */
  to: string | readonly (string | undefined)[];
}

/** Words whose dates lead to why they are those dates. */
export const AskedDates = ({ text, to }: AskedProps) => (
  <>
    {text.split(DATE).map((part, at) => {
      // What is split by stands at every other place.
      const way = at % 2 === 0 ? undefined : typeof to === 'string' ? to : to[(at - 1) / 2];
      return way === undefined ? (
        part
      ) : (
        <a class="why-date" href={way} title="Why this date">
          {part}
        </a>
      );
    })}
  </>
);

/** The row of the handbook in which a rule stands, for dates that no task has. */
export function ruleWay(rule: string): string {
  return handbookPath(docs().rules.get(rule), rule);
}

/** The rule that opens and shuts a crop's days in the bed. */
export const WINDOW_RULE = 'plant.odds';

interface SourceProps {
  source: Reason['source'];
  /** Given where the climate of a garden may be the source. */
  gardenId?: string | undefined;
}

/** Where a figure comes from, which leads to what is known of that. */
export const SourceLink = ({ source, gardenId }: SourceProps) => (
  <a href={sourceHref(source, gardenId)}>{sourceLine(source)}</a>
);

/** A line that tells where every date beside it comes from. */
export const Whence = ({ to, children }: PropsWithChildren<{ to: string }>) => (
  <p class="small whence">
    <a href={to}>{children}</a>
  </p>
);

interface WhyFoldProps {
  reasons: readonly Reason[];
  /** Absent where no garden is made yet. */
  gardenId?: string | undefined;
  units: UnitSystem;
  /** A day the reader has in mind: days of another year are written with their year. */
  beside?: Day | undefined;
  title?: string;
}

/** The reasons of a date that has no page of its own, folded beneath it; nothing where there are none. */
export const WhyFold = ({ reasons, gardenId, units, beside, title = 'Why this date' }: WhyFoldProps) =>
  reasons.length === 0 ? null : (
    <details class="whys">
      <summary>{title}</summary>
      <ReasonRows reasons={reasons} gardenId={gardenId} units={units} beside={beside} />
    </details>
  );

type ReasonRowsProps = PropsWithChildren<Omit<WhyFoldProps, 'title'>>;

/** Reasons in sentences, each with its source, and what else stands among them. */
export const ReasonRows = ({ reasons, gardenId, units, beside, children }: ReasonRowsProps) => (
  <ul class="reasons">
    {reasons.map((reason) => (
      <li>
        {readableIn(units, reasonSentence(reason), beside)}
        <ReasonSource reason={reason} gardenId={gardenId} />
      </li>
    ))}
    {children}
  </ul>
);

/** The source of a reason, and the row of the handbook its rule is written in. */
export const ReasonSource = ({
  reason: { rule, source },
  gardenId,
}: {
  reason: Reason;
  gardenId?: string | undefined;
}) => {
  const page = docs().rules.get(rule);
  return (
    <span class="under">
      <SourceLink source={source} gardenId={gardenId} />
      {page !== undefined && (
        <>
          {' '}
          · <a href={handbookPath(page, rule)}>the rule</a>
        </>
      )}
    </span>
  );
};
