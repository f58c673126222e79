/**
 * The sixth step: what grew where in seasons past, which may be passed over.
 */

import { LAST_SPRING_INDEX } from '../../climate/climate.ts';
import { seasonIndex, seasonOf, seasonTurnOf } from '../../climate/season.ts';
import type { DraftBed, SetUpDraft } from '../../garden/set-up-draft.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { seasonName } from '../../practices/seasons.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';
import { RotationAside } from './asides.tsx';
import { OnAndBack, StepForm } from './parts.tsx';
import { fieldProblem, type Step, type StepRead, type StepRoom, type StepShown } from './step.ts';

/** Crops asked for in a bed and season. House default: a spring crop and the one after it. */
const CROPS_ASKED = 2;

const CROPS = [...vegetables].sort((a, b) => (a.name < b.name ? -1 : 1)).map(({ id, name }) => ({ id, name }));

export const lastYear: Step = {
  name: 'last-year',
  short: 'Last year',
  title: 'What grew where',
  content: (room, shown) => <Asking room={room} shown={shown} />,
  aside: (room) => <RotationAside room={room} />,
  read: readPast,
};

/** The season before, and the running one too once its crops begin to be cleared. */
function seasonsAsked({ draft: { place }, outlook: { today } }: StepRoom): number[] {
  const turn = seasonTurnOf(place?.latitude ?? 0);
  const season = seasonOf(turn, today);
  return seasonIndex(turn, today) > LAST_SPRING_INDEX ? [season, season - 1] : [season - 1];
}

/** Beds that were there: one still to be made has no past. */
function bedsWithPast({ draft }: StepRoom): readonly DraftBed[] {
  return draft.beds.filter(({ plannedFor }) => plannedFor === undefined);
}

/** As many as are asked for, and all that were told. */
function placesAsked(room: StepRoom, bed: DraftBed, season: number): number[] {
  return Array.from({ length: Math.max(CROPS_ASKED, told(room, bed, season).length) }, (_, at) => at);
}

function fieldName(bedId: string, season: number, at: number): string {
  return `past:${bedId}:${season}:${at}`;
}

function readPast(form: Form, room: StepRoom): StepRead {
  const problems: ReturnType<typeof fieldProblem>[] = [];
  const said: SetUpDraft['past'] = [];
  for (const bed of bedsWithPast(room)) {
    for (const season of seasonsAsked(room)) {
      for (const at of placesAsked(room, bed, season)) {
        const name = fieldName(bed.id, season, at);
        const crop = form.text(name);
        if (crop === '') continue;
        if (!CROPS.some(({ id }) => id === crop)) {
          const what = `"${crop.slice(0, SHOWN_CHARACTERS)}" is not a crop of the handbook.`;
          problems.push(fieldProblem(name, bed.name, what, 'Choose one of the list, or none.'));
        } else said.push({ bed: bed.id, crop, season });
      }
    }
  }
  if (problems.length > 0) return { problems };
  const shown = form.names().includes(SHOWN) ? form.list(SHOWN) : room.draft.past.map(keyOf);
  return { change: (draft) => ({ ...draft, past: withPast(draft, said, shown) }), leads: 'on' };
}

/** What a form says of the past: what it was shown with and says no more is gone; what others told meanwhile stays. */
function withPast({ past, beds }: SetUpDraft, said: SetUpDraft['past'], shown: readonly string[]): SetUpDraft['past'] {
  const says = new Set(said.map(keyOf));
  const stays = past.filter((row) => says.has(keyOf(row)) || !shown.includes(keyOf(row)));
  const rows = [...said.filter(({ bed }) => beds.some(({ id }) => id === bed)), ...stays];
  return [...new Map(rows.map((row) => [keyOf(row), row])).values()];
}

/** The field that carries what the form was shown with. */
const SHOWN = '_past';

function keyOf({ bed, season, crop }: SetUpDraft['past'][number]): string {
  return `${bed}:${season}:${crop}`;
}

const Asking = ({ room, shown }: { room: StepRoom; shown: StepShown }) => {
  const seasons = seasonsAsked(room);
  const beds = bedsWithPast(room);
  return (
    <StepForm room={room} step="last-year">
      <p>
        What was harvested and cleared; what still stands comes in the next step. Leave empty what you do not remember.
      </p>
      <input type="hidden" name={SHOWN} value="" />
      {room.draft.past.map((row) => (
        <input type="hidden" name={SHOWN} value={keyOf(row)} />
      ))}
      <OnAndBack step="last-year" />
      {beds.length === 0 && <p>No bed of the list was there before.</p>}
      {beds.map((bed) => (
        <fieldset class="past-bed">
          <legend>{bed.name}</legend>
          {seasons.map((season) => (
            <div class="past-season">
              {placesAsked(room, bed, season).map((at) => (
                <CropChoice
                  name={fieldName(bed.id, season, at)}
                  label={`${seasonWords(room, season)}${at === 0 ? '' : ', and'}`}
                  bed={bed.name}
                  chosen={shown.sent?.text(fieldName(bed.id, season, at)) ?? told(room, bed, season)[at] ?? ''}
                />
              ))}
            </div>
          ))}
        </fieldset>
      ))}
      {beds.length > 3 && <OnAndBack step="last-year" />}
    </StepForm>
  );
};

function seasonWords({ draft: { place } }: StepRoom, season: number): string {
  return seasonName({ seasonTurn: seasonTurnOf(place?.latitude ?? 0) }, season);
}

function told({ draft }: StepRoom, bed: DraftBed, season: number): string[] {
  return draft.past.filter((row) => row.bed === bed.id && row.season === season).map(({ crop }) => crop);
}

interface CropChoiceProps {
  name: string;
  label: string;
  bed: string;
  chosen: string;
}

const CropChoice = ({ name, label, bed, chosen }: CropChoiceProps) => (
  <label>
    {label}
    <span class="unseen"> in {bed}</span>{' '}
    <select name={name}>
      <option value="">–</option>
      {CROPS.map((crop) => (
        <option value={crop.id} selected={crop.id === chosen}>
          {crop.name}
        </option>
      ))}
    </select>
  </label>
);
