/**
 * What the patterns and signs of the year mean.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import type { Doing } from '../../digest/bed-doings.ts';
import { type BedYears, liesIn } from '../../digest/bed-years.ts';
import { FamilyLegend } from '../patterns.tsx';
import { DoingGlyph } from './doing-glyphs.tsx';
import { groundFill } from './ground-patterns.tsx';

const WIDTH = 48;
const HEIGHT = 18;
const SWATCH = `0 0 ${WIDTH} ${HEIGHT}`;

const DOINGS: readonly (readonly [Doing, string])[] = [
  ['sow', 'sow'],
  ['set out', 'set out'],
  ['cut', 'cut'],
  ['clear', 'clear'],
  ['compost', 'compost on top'],
  ['mulch', 'mulch'],
];

/** The legend: the families that are there, the ground, the signs. */
export const YearLegend = ({ beds, span }: { beds: readonly BedYears[]; span: DaySpan }) => {
  const families = beds.flatMap(({ held }) =>
    held.flatMap((each) => (each.family !== undefined && liesIn(each, span) ? each.family : [])),
  );
  return (
    <div class="year-legend">
      <FamilyLegend families={families} />
      <ul class="family-legend" aria-label="Signs">
        <Swatch fill="cover" word="cover" />
        <Swatch fill="mulch" word="mulch" />
        <Swatch fill="soil" word="open soil: nothing grows or is planned" />
        <li class="family">
          <svg class="family-swatch held-planned" viewBox={SWATCH} width={WIDTH} height={HEIGHT} aria-hidden="true">
            <rect class="held-box" x="0.5" y="0.5" width={WIDTH - 1} height={HEIGHT - 1} fill="none" />
          </svg>
          planned
        </li>
        {DOINGS.map(([doing, word]) => (
          <li class="family">
            <Sign doing={doing} done={false} />
            {word}
          </li>
        ))}
        <li class="family">
          <Sign doing="compost" done />
          compost spread
        </li>
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

const Sign = ({ doing, done }: { doing: Doing; done: boolean }) => (
  <svg class="year-row hung" width={done ? HEIGHT : WIDTH / 2 + 6} height={HEIGHT} aria-hidden="true">
    <DoingGlyph doing={{ doing, done }} from={1} to={done ? HEIGHT - 1 : WIDTH / 2 + 5} y={HEIGHT / 2} />
  </svg>
);
