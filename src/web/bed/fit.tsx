/**
 * A choice for a bed's gap: what it comes to, what speaks for it and against it, and the way to choose it.
 */

import { type CoverToSow, sowingDays, sownWhen } from '../../digest/cover-sowings.ts';
import { type CutTold, cutTold } from '../../digest/cut-told.ts';
import { fitTold, gapInWords, noCoverWords, readableFit, ruledOut } from '../../digest/fit-words.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import { dated, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type GapOfBed, isInSpan } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName, type GapFit } from '../../practices/cover-cropping/fit/fit.ts';
import { fitGap } from '../../practices/cover-cropping/fit/sown-fit.ts';
import type { OpenSpan } from '../../practices/cover-cropping/open-spans.ts';
import { coverName } from '../../practices/covers.ts';
import type { Reason } from '../../practices/draft.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { Plan } from '../../schedule/plan.ts';
import { bedPath, choosePath, dropPath, gapWord, handbookPath, taskPath, whyPath } from '../addresses/addresses.ts';
import { AskedDates, ReasonSource, ruleWay, Whence } from '../frame/why.tsx';
import { grownTasks, grownWay } from './grown-tasks.ts';

/** Who reads, on which day, of which garden. */
export interface FitReader {
  gardenId: string;
  units: UnitSystem;
  today: Day;
  /** The covers the plan still asks to sow. */
  toSow: readonly CoverToSow[];
  plan: Pick<Plan, 'tasks'>;
}

interface GapProps {
  gap: GapOfBed;
  reader: FitReader;
  /** Choices shown before the rest. */
  first: number;
  /** Whether the rest are shown folded away, and what does not fit with them; else they are only counted. */
  whole: boolean;
}

/** A gap with everything that may lie in it: what is chosen for it, then the others in their order. */
export const GapChoices = ({ gap, reader, first, whole }: GapProps) => {
  const usable = chosenFirst(gap);
  const covers = usable.filter(({ choice }) => choice.choice === 'cover');
  const more = usable.slice(first);
  const words = readableIn(reader.units, gapInWords(fitGap(gap.span)), reader.today);
  return (
    <section class="gap">
      <h3>
        <AskedDates text={capital(words)} to={gapWays(gap.span, reader)} />
      </h3>
      <Meant gap={gap} reader={reader} />
      {covers.length === 0 && <p>{noCoverWords(gap.fits)}</p>}
      {usable.slice(0, first).map((fit) => (
        <Choice gap={gap} fit={fit} reader={reader} />
      ))}
      {more.length > 0 && !whole && (
        <p class="small">
          {more.length} more can be had:{' '}
          <a href={bedPath(reader.gardenId, gap.span.bedId)}>all of them, and why the rest do not fit</a>
        </p>
      )}
      {more.length > 0 && whole && (
        <details>
          <summary>{more.length} more that can be had</summary>
          {more.map((fit) => (
            <Choice gap={gap} fit={fit} reader={reader} />
          ))}
        </details>
      )}
      {whole && <Out gap={gap} reader={reader} />}
      <Whence to={handbookPath('cover-cropping', 'what-could-lie-in-a-gap')}>How these figures are worked out</Whence>
    </section>
  );
};

/** Where the ends of a gap are asked why: at the end of what stands before, and the beginning of what comes after. */
function gapWays({ from, before, next, nextCover }: OpenSpan, { gardenId, plan }: FitReader): (string | undefined)[] {
  const tasks = grownTasks(plan);
  const of = (end: 'start' | 'end', id: string | undefined) =>
    id === undefined ? ruleWay(SOW_RULE) : grownWay(gardenId, tasks, end, { kind: 'crop', id });
  const begins = of('end', before?.planting.id);
  const ends = of('start', nextCover === undefined ? next?.planting.id : undefined);
  return from === undefined ? [ends] : [begins, ends];
}

/** The rule that days to sow a cover in a gap come from. */
export const SOW_RULE = 'cover-sow.gap';

const LINE_RULES: Readonly<Record<string, string>> = {
  Flowers: 'cover-cut.bloom-heat',
  Cut: 'cover-cut.decides',
  'Bed free again': 'cover-cut.next-wait',
};

/** The rule that the days of a told line come from. */
export function lineRule(what: string): string {
  return LINE_RULES[what] ?? SOW_RULE;
}

/** All that can be had in a gap. What is chosen stands in front, however it fits: it is what the gardener looks for. */
function chosenFirst({ fits, planned, mulch }: GapOfBed): GapFit[] {
  const chosen = new Set([
    ...planned.map(({ stand }) => choiceName({ choice: 'cover', coverId: stand.coverId })),
    ...(mulch === undefined ? [] : [choiceName({ choice: 'mulch', mulch: mulch.mulch })]),
  ]);
  const isChosen = ({ choice }: GapFit) => chosen.has(choiceName(choice));
  return [...fits.filter(isChosen), ...fits.filter((fit) => fit.verdict !== 'unusable' && !isChosen(fit))];
}

/** What is meant for the gap already, when it will be cut, the way to take it out again, and what the plan proposes where nobody chose. */
const Meant = ({ gap: { planned, mulch, span }, reader }: Pick<GapProps, 'gap' | 'reader'>) => (
  <>
    {planned.map(({ stand }) => (
      <div class="meant">
        <p>
          Planned: {coverName(stand.coverId)},{' '}
          <AskedDates
            text={readableIn(reader.units, sownWhen(stand, reader.toSow), reader.today)}
            to={grownWay(reader.gardenId, grownTasks(reader.plan), 'start', { kind: 'cover', id: stand.id })}
          />
          .{' '}
          <a class="drop" href={dropPath(reader.gardenId, span.bedId, stand.id)}>
            Take it out of the plan
          </a>
        </p>
        <CutDays cut={cutTold(reader.plan, stand.id)} reader={reader} asked />
      </div>
    ))}
    {mulch && <p class="meant">Chosen: a mulch of {mulch.mulch}. Choosing a cover below takes its place.</p>}
    {reader.toSow
      .filter(({ bedId, proposed, day }) => proposed && bedId === span.bedId && isInSpan(span, day))
      .map((sowing) => (
        <p class="meant">
          Nobody has chosen here. The plan’s own proposal:{' '}
          <a href={taskPath(reader.gardenId, sowing.key)}>
            {sowing.cover}, sown {readableIn(reader.units, sowingDays(sowing), reader.today)}
          </a>
          .
        </p>
      ))}
  </>
);

interface CutProps {
  cut: CutTold | undefined;
  reader: Omit<FitReader, 'plan' | 'toSow'>;
  /** Whether the task is in the plan already, and its date can be asked why. */
  asked?: boolean;
}

/** The days a cover is cut in, and what closes them. */
export const CutDays = ({ cut, reader, asked = false }: CutProps) => {
  if (cut === undefined) return null;
  const { window, key, closes } = cut;
  const days = readableFit(`from ${dated(window.earliest)} to ${dated(window.latest)}`, reader.units, reader.today);
  return (
    <>
      <p>
        Cut <AskedDates text={days} to={asked ? whyPath(reader.gardenId, key) : ruleWay('cover-cut.decides')} />.
      </p>
      <details open={!asked}>
        <summary>What closes these days</summary>
        <ul class="fit-reasons">
          {closes.map((reason) => (
            <li>
              {readableFit(reasonSentence(reason), reader.units, reader.today)}
              <ReasonSource reason={reason} gardenId={reader.gardenId} />
            </li>
          ))}
        </ul>
      </details>
    </>
  );
};

/** A choice folded to its name, its verdict and one line; unfolding it needs no script. */
const Choice = ({ gap, fit, reader }: { gap: GapOfBed; fit: GapFit; reader: FitReader }) => {
  const { name, verdict, lines } = fitTold(fit);
  const read = (text: string) => readableFit(text, reader.units, reader.today);
  const [first] = lines;
  return (
    <details class="fit">
      <summary>
        <h4>{capital(name)}</h4> <span class="verdict">{verdict}</span>
        {first && <span class="under">{`${first.what}: ${read(first.text)}${winterFirst(fit)}`}</span>}
      </summary>
      {lines.length > 0 && (
        <dl class="fit-lines">
          {lines.map(({ what, text }) => (
            <div>
              <dt>{what}</dt>
              <dd>
                <AskedDates text={read(text)} to={ruleWay(lineRule(what))} />
              </dd>
            </div>
          ))}
        </dl>
      )}
      <ReasonList heading="For it" reasons={fit.pros} reader={reader} />
      <ReasonList heading="Against it" reasons={fit.cons} reader={reader} />
      <p class="choose">
        <a href={choosePath(reader.gardenId, fit.bedId, { gap: gapWord(gap.span), choice: choiceName(fit.choice) })}>
          See what choosing {name} would do
        </a>
      </p>
    </details>
  );
};

/** That winters go by over the bed before a cover is sown, which puts it behind what is sown sooner. */
function winterFirst({ choice, wintersBare = 0 }: GapFit): string {
  if (choice.choice === 'mulch' || wintersBare === 0) return '';
  return wintersBare === 1 ? '; a winter goes by first' : `; ${wintersBare} winters go by first`;
}

interface ReasonsProps {
  heading: string;
  reasons: readonly Reason[];
  reader: FitReader;
}

const ReasonList = ({ heading, reasons, reader: { gardenId, units, today } }: ReasonsProps) =>
  reasons.length === 0 ? null : (
    <>
      <p class="heading">{heading}</p>
      <ul class="fit-reasons">
        {reasons.map((reason) => (
          <li>
            {readableFit(reasonSentence(reason), units, today)}
            <ReasonSource reason={reason} gardenId={gardenId} />
          </li>
        ))}
      </ul>
    </>
  );

const Out = ({ gap, reader }: Pick<GapProps, 'gap' | 'reader'>) => {
  const out = ruledOut(gap.fits);
  if (out.length === 0) return null;
  const count = out.reduce((sum, { names }) => sum + names.length, 0);
  return (
    <details>
      <summary>
        {count} that {count === 1 ? 'does' : 'do'} not fit, and why
      </summary>
      <ul class="marked">
        {out.map(({ why, names }) => (
          <li>
            {names.join(', ')}
            <span class="under">
              <AskedDates text={readableIn(reader.units, why, reader.today)} to={ruleWay(SOW_RULE)} />
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
};
