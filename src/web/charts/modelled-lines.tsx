/**
 * The lines of a worked-out amount: the record's seasons as a band with its median, this season as a strong line that is
 * broken where it is still to come.
 */
import type { ModelledDay } from '../../climate/season-course.ts';
import type { Day } from '../../measures/days.ts';
import type { DrawnUnit } from './amounts-drawn.ts';
import type { Places } from './course-frame.tsx';
import { bandPath, linePath } from './lines.ts';
import { type Column, meanOfKnown } from './weekly-table.tsx';

interface ModelledLinesProps {
  days: readonly ModelledDay[];
  today: Day;
  places: Places;
  unit: DrawnUnit;
}

export const ModelledLines = ({ days, today, places: { x, y }, unit: { of } }: ModelledLinesProps) => {
  const median = (rows: readonly ModelledDay[], which: 'now' | 'usual') =>
    linePath(rows.map((row) => row[which] && { x: x(row.day), y: y(of(row[which].median)) }));
  const band = (which: 'now' | 'usual') =>
    bandPath(
      days.map((row) => row[which] && { x: x(row.day), lowY: y(of(row[which].low)), highY: y(of(row[which].high)) }),
    );
  return (
    <>
      <path class="band" d={band('usual')} />
      <path class="usual-line" d={median(days, 'usual')} />
      <path
        class="now-line"
        d={median(
          days.filter(({ day }) => day <= today),
          'now',
        )}
      />
      <path
        class="ahead-line"
        d={median(
          days.filter(({ day }) => day >= today),
          'now',
        )}
      />
    </>
  );
};

/** All amounts drawn, in the gardener's unit. */
export function amountsOf(days: readonly ModelledDay[], { of }: DrawnUnit): number[] {
  return days.flatMap(({ now, usual }) =>
    [now?.median, usual?.low, usual?.high].filter((amount) => amount !== undefined).map(of),
  );
}

/** Weekly columns: means of this season's middle member and of the record's seasons. */
export function modelledColumns(
  days: readonly ModelledDay[],
  unitName: string,
  write: (amount: number | undefined) => string,
): Column<ModelledDay>[] {
  const mean = (week: readonly ModelledDay[], amountOf: (row: ModelledDay) => number | undefined) =>
    write(meanOfKnown(week.map(amountOf)));
  const season: Column<ModelledDay> = {
    head: `This season, ${unitName}`,
    cell: (week) => mean(week, ({ now }) => now?.median),
  };
  const usual: Column<ModelledDay>[] = [
    { head: 'Median of past years', cell: (week) => mean(week, (row) => row.usual?.median) },
    {
      head: '1 to 9 years of 10',
      cell: (week) => `${mean(week, (row) => row.usual?.low)} to ${mean(week, (row) => row.usual?.high)}`,
    },
  ];
  return days.some(({ now }) => now !== undefined) ? [season, ...usual] : usual;
}
