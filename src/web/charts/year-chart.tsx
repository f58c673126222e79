/**
 * The year in one chart: every bed a row, over them the odds of a freeze and of soil fit to work, all on the same days.
 */

import type { Child } from 'hono/jsx';
import type { DaySpan } from '../../climate/season-course.ts';
import { type BedYears, liesIn } from '../../digest/bed-years.ts';
import { limitWord, type YearOdds } from '../../digest/year-odds.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { bedPath } from '../addresses/addresses.ts';
import { FamilyPatterns } from '../frame/patterns.tsx';
import { GroundPatterns } from './ground-patterns.tsx';
import { YearAxis } from './year-axis.tsx';
import { SCALE_WORDS, YearBand } from './year-band.tsx';
import { YearStrip } from './year-strip.tsx';

/** What the chart shows, and for whom. */
export interface YearChartProps {
  gardenId: string;
  beds: readonly BedYears[];
  odds: YearOdds;
  span: DaySpan;
  /** "Autumn 2026", or "18 months". */
  caption: string;
  today: Day;
  units: UnitSystem;
}

/** The chart. It slides sideways in its frame where the page is narrow; the names stay. */
export const YearChart = ({ gardenId, beds, odds, span, caption, today, units }: YearChartProps) => (
  <>
    <FamilyPatterns />
    <GroundPatterns />
    {/* A frame that slides can be slid by keys where it takes the focus. */}
    <section class="year-frame" aria-label={`The year drawn: ${caption}`} tabindex={0}>
      <table class="year-chart">
        <caption>{caption}</caption>
        <thead>
          <Row name={<span class="unseen">Days</span>}>
            <YearAxis span={span} today={today} />
          </Row>
        </thead>
        <tbody>
          <OddsRows odds={odds} span={span} today={today} units={units} />
        </tbody>
        <tbody>
          {beds.map((years) => (
            <Row name={<a href={bedPath(gardenId, years.bed.id)}>{years.bed.name}</a>}>
              <YearStrip years={years} span={span} today={today} words={stripWords(years, span, units, today)} />
            </Row>
          ))}
        </tbody>
        <tfoot>
          <Row name={<span class="unseen">Days</span>}>
            <YearAxis span={span} />
          </Row>
        </tfoot>
      </table>
    </section>
  </>
);

const Row = ({ name, children }: { name: Child; children?: Child }) => (
  <tr>
    <th scope="row">{name}</th>
    <td>{children}</td>
  </tr>
);

type OddsProps = Pick<YearChartProps, 'odds' | 'span' | 'today' | 'units'>;

const OddsRows = ({ odds: { freezes, soils }, span, today, units }: OddsProps) => {
  const [main] = soils;
  const shown = { span, today };
  return (
    <>
      <Row
        name={
          <>
            Freezing nights
            <span class="row-note">
              line {limitWord(32, units)}, grey {limitWord(28, units)}
            </span>
            <span class="row-note">{SCALE_WORDS}</span>
          </>
        }
      >
        {freezes[32].length === 0 ? (
          <p class="not-known">
            Not known night by night: this climate holds two freeze dates only. Monthly means, a station or a daily
            record would tell it.
          </p>
        ) : (
          <YearBand
            id="band-freeze"
            title="Odds of a freeze, night by night"
            words={freezeWords(freezes, span, units)}
            lines={[
              { days: freezes[28], filled: true },
              { days: freezes[32], filled: false },
            ]}
            {...shown}
          />
        )}
      </Row>
      <Row
        name={
          <>
            Soil fit to work
            <span class="row-note">{main?.soil}</span>
            <span class="row-note">{SCALE_WORDS}</span>
          </>
        }
      >
        {main === undefined || main.days.length === 0 ? (
          <p class="not-known">Not known: it takes a daily record with rain in it.</p>
        ) : (
          <YearBand
            id="band-fit"
            title="Odds that the soil is fit to work, day by day"
            words={`${main.soil}: the table beneath has it by month.`}
            lines={[{ days: main.days, filled: true }]}
            {...shown}
          />
        )}
      </Row>
    </>
  );
};

/** Nights as likely as not, and the table for the rest. */
function freezeWords(freezes: YearOdds['freezes'], span: DaySpan, units: UnitSystem): string {
  const likely = ([32, 28] as const).map((limitF) => {
    const nights = freezes[limitF].filter(({ day, share }) => day >= span.from && day <= span.to && share >= 0.5);
    return `${nights.length} nights at least as likely as not to reach ${limitWord(limitF, units)}`;
  });
  return `${likely.join(', ')}; the table beneath has it by month.`;
}

function stripWords({ bed, held }: BedYears, span: DaySpan, units: UnitSystem, today: Day): string {
  const spans = held
    .filter((each) => liesIn(each, span))
    .map(({ what, from, to, planned }) => {
      const end = to === undefined ? 'on' : `to ${formatDay(to, units, today)}`;
      return `${what}${planned ? ', planned,' : ''} from ${formatDay(from, units, today)} ${end}`;
    });
  const { plannedFor } = bed;
  const isNew = plannedFor !== undefined && plannedFor >= span.from;
  const made = isNew ? [`not there before ${formatDay(plannedFor, units, today)}`] : [];
  const words = [...made, ...(spans.length === 0 ? ['open soil'] : spans)].join('; ');
  return `${capital(words)}.`;
}
