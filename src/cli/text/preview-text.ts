/**
 * What a report would do to the plan, as lines of text and as JSON.
 */
import type { ChangePreview, PreviewedClash, PreviewedWork } from '../../digest/change-preview.ts';
import { fullDay } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';

/** The preview under its headings; one line where nothing in the plan changes. */
export function previewLines({ moved, clashes, added, dropped, reworded }: ChangePreview, units: UnitSystem): string[] {
  const lines = [
    ...block(
      'What moves:',
      moved.map((work) => workLines(work, units)),
    ),
    ...block(
      'What no longer fits:',
      clashes.map((clash) => clashLines(clash, units)),
    ),
    ...block(
      'What says something else:',
      reworded.map(({ title, from, because }) =>
        wrapped(`${readableIn(units, title)}: ${readableIn(units, because, from)}`, '  ', '    '),
      ),
    ),
    ...block(
      'What is added:',
      added.map((work) => workLines(work, units)),
    ),
    ...block(
      'What goes off the plan:',
      dropped.map((work) => workLines(work, units)),
    ),
  ];
  return lines.length === 0 ? ['', 'No task moves, none is added and none goes.'] : lines;
}

/** The preview for {@link writeJson}, which writes its texts in the reader's units. */
export function previewJson({ moved, clashes, added, dropped, reworded }: ChangePreview): object {
  const plain = ({ keys, title, from, to, because }: PreviewedWork): object => ({ keys, title, from, to, because });
  return {
    moved: moved.map(plain),
    clashes,
    added: added.map(plain),
    dropped: dropped.map(plain),
    reworded: reworded.map(({ keys, title, to, because }) => ({ keys, title, to, now: because })),
  };
}

function block(heading: string, rows: readonly string[][]): string[] {
  return rows.length === 0 ? [] : ['', heading, ...rows.flat()];
}

function workLines({ title, from, to, because }: PreviewedWork, units: UnitSystem): string[] {
  const [was, is] = [from, to].map((day) => day && fullDay(day, units));
  const days = was === undefined ? is : is === undefined ? was : `from ${was} to ${is}`;
  const why = readableIn(units, because, to ?? from);
  return [
    ...wrapped(`${readableIn(units, title)}: ${days}`, '  ', '    '),
    ...(why === '' ? [] : wrapped(why, '    ', '    ')),
  ];
}

function clashLines({ title, what, gives }: PreviewedClash, units: UnitSystem): string[] {
  return [
    ...wrapped(`${readableIn(units, title)}: ${readableIn(units, what)}`, '  ', '    '),
    ...wrapped(readableIn(units, gives), '    ', '    '),
  ];
}
