/**
 * One day's weather shown with all it would move, and taken in where that is asked for: what `snow` and `report weather`
 * share.
 */
import { changePreview } from '../../digest/change-preview.ts';
import { unreckonedNote } from '../../digest/unreckoned.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { BY, chosenGarden, type Looking, withHousehold } from '../command-line/household.ts';
import { writeJson, writeLines } from '../text/output.ts';
import { previewJson, previewLines } from '../text/preview-text.ts';

/** What the command was asked. */
interface Asked extends Looking {
  options: Looking['options'] & {
    garden?: string | undefined;
    apply?: true | undefined;
    format?: 'text' | 'json' | undefined;
  };
}

/**
 * Shows what a day's weather would do, and takes it in with --apply.
 *
 * @param rowOn the day's row, as the garden's present day has it: seen or expected
 */
export function logWeather(call: Asked, rowOn: (today: string) => LoggedDay): Promise<void> {
  const { at, options } = call;
  const apply = options.apply ?? false;
  return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
    const gardenId = await chosenGarden(steward, options.garden);
    const report = { kind: 'weather-logged' as const, days: [rowOn(await steward.today(gardenId))] };
    const { before, after, garden } = await steward.previewReport(gardenId, report);
    if (apply) await steward.report(gardenId, report, BY);
    const preview = changePreview(before, after);
    const { units } = garden.place;
    const note = unreckonedNote((await steward.view(gardenId)).climate, report.days);
    if (options.format === 'json') {
      const told = { garden: gardenId, applied: apply, days: report.days, ...previewJson(preview) };
      writeJson(at.stdout, told, units);
      return;
    }
    writeLines(at.stdout, [
      ...wrapped(factInWords(report, garden, before.today)),
      ...previewLines(preview, units),
      ...(note === undefined ? [] : ['', ...wrapped(note)]),
      ...(apply ? [] : ['', 'Nothing was changed. Add --apply to take it in.']),
    ]);
  });
}
