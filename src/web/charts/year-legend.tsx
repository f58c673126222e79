/**
 * What the patterns and signs of the year mean.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import type { Doing } from '../../digest/bed-doings.ts';
import { type BedYears, liesIn } from '../../digest/bed-years.ts';
import { FamilyLegend } from '../frame/patterns.tsx';
import { DoingGlyph } from './doing-glyphs.tsx';
import { groundFill } from './ground-patterns.tsx';
import { isShown } from './year-strip.tsx';

const WIDTH = 48;
const HEIGHT = 18;
const SWATCH = `0 0 ${WIDTH} ${HEIGHT}`;

const DOINGS: readonly (readonly [Doing, string])[] = [
  ['order mix', 'order the mix'],
  ['mark out', 'mark out'],
  ['fill', 'fill'],
  ['sow', 'sow'],
  ['set out', 'set out'],
  ['cut', 'cut'],
  ['clear', 'clear'],
  ['compost', 'compost on top'],
  ['mulch', 'mulch'],
];

/** The legend: the families that are there, the ground, the signs; what is drawn and no other. */
export const YearLegend = ({ beds, span }: { beds: readonly BedYears[]; span: DaySpan }) => {
  const held = beds.flatMap((bed) => bed.held.filter((each) => liesIn(each, span)));
  const families = held.flatMap(({ family }) => family ?? []);
  const shown = beds.flatMap(({ doings }) => doings.filter((each) => isShown(each, span)));
  const done = shown.find((each) => each.done);
  return (
    <div class="year-legend">
      <FamilyLegend families={families} />
      <ul class="family-legend" aria-label="Signs">
        {held.some(({ kind }) => kind === 'cover') && <Swatch fill="cover" word="cover" />}
        {held.some(({ kind }) => kind === 'mulch') && <Swatch fill="mulch" word="mulch" />}
        <Swatch fill="soil" word="open soil: nothing grows or is planned" />
        {held.some(({ planned }) => planned) && <PlannedSwatch />}
        {DOINGS.filter(([doing]) => shown.some((each) => each.doing === doing)).map(([doing, word]) => (
          <li class="family">
            <Sign doing={doing} done={false} />
            {word}
          </li>
        ))}
        {done !== undefined && (
          <li class="family">
            <Sign doing={done.doing} done />
            filled: it is done
          </li>
        )}
      </ul>
    </div>
  );
};

const Swatch = ({ fill, word }: { fill: Parameters<typeof groundFill>[0]; word: string }) => (
  <li class="family">
    <svg class="family-swatch" viewBox={SWATCH} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <rect x="0.5" y="0.5" width={WIDTH - 1} height={HEIGHT - 1} fill={groundFill(fill)} />
    </svg>
    {word}
  </li>
);

const PlannedSwatch = () => (
  <li class="family">
    <svg class="family-swatch held-planned" viewBox={SWATCH} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <rect class="held-box" x="0.5" y="0.5" width={WIDTH - 1} height={HEIGHT - 1} fill="none" />
    </svg>
    planned
  </li>
);

const Sign = ({ doing, done }: { doing: Doing; done: boolean }) => (
  <svg class="year-row hung" width={done ? HEIGHT : WIDTH / 2 + 6} height={HEIGHT} aria-hidden="true">
    <DoingGlyph doing={{ doing, done }} from={1} to={done ? HEIGHT - 1 : WIDTH / 2 + 5} y={HEIGHT / 2} />
  </svg>
);
