/**
 * The third step: name, clock, units, days, hours and soil.
 */

import { weekdayWord } from '../../digest/words.ts';
import type { DraftAbout } from '../../garden/set-up-draft.ts';
import { isZone, zoneAt } from '../../garden/time-zone.ts';
import { WEEKDAY_NAMES, weekdayNamed } from '../../garden/weekday-names.ts';
import { soilTextures } from '../../handbook/soil-textures.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';
import { HoursAside } from './asides.tsx';
import { Fields, OnAndBack, StepForm } from './parts.tsx';
import { type AskedFields, fieldProblem, readFields, type Step, type StepRead, type StepRoom } from './step.ts';

export const garden: Step = {
  name: 'garden',
  short: 'Days and hours',
  title: 'The garden and your time',
  content: (room, shown) => (
    <StepForm room={room} step="garden">
      <Fields room={room} shown={shown} asked={asked(room)} />
      <SoilByHand />
      <OnAndBack step="garden" />
    </StepForm>
  ),
  aside: (room) => <HoursAside room={room} />,
  read: readAbout,
};

const ZONE = { name: 'timeZone', label: 'Time zone' } as const;

function asked(room: StepRoom): AskedFields {
  const { draft, units } = room;
  const usual: Partial<DraftAbout> = {
    workDays: ['sat', 'sun'],
    hoursPerWeek: 4,
    soilTexture: 'loam',
    timeZone: (draft.place && zoneAt(draft.place)) ?? 'UTC',
    units,
  };
  return {
    of: 'garden',
    row: draft.about ?? usual,
    fields: [
      { name: 'name', label: 'What is the garden called?', as: 'text', required: true, example: 'Hollow Lane' },
      {
        ...ZONE,
        as: 'text',
        required: true,
        hint: 'Worked out from the place; near a border it can be the neighbour’s. Written like America/Chicago.',
      },
      {
        name: 'units',
        label: 'Written in',
        as: 'choice',
        required: true,
        open: true,
        options: [
          { value: 'us', words: 'feet, inches, pounds, °F; the month first' },
          { value: 'metric', words: 'metres, litres, kilograms, °C; the day first' },
        ],
      },
      {
        name: 'workDays',
        label: 'Days you work in it',
        as: 'many',
        required: true,
        options: WEEKDAY_NAMES.map((day) => ({ value: day, words: weekdayWord(weekdayNamed(day)) })),
      },
      {
        name: 'hoursPerWeek',
        label: 'Hours a week you have for it',
        as: 'number',
        required: true,
        example: 4,
        hint: 'All of you together. Weeks that want more say so early, and what can wait.',
      },
      {
        name: 'soilTexture',
        label: 'Soil',
        as: 'choice',
        required: true,
        options: soilTextures.map(({ id, name }) => ({ value: id, words: name })),
      },
    ],
  };
}

function readAbout(form: Form, room: StepRoom): StepRead {
  const { read, problems } = readFields(form, asked(room), room.units);
  const { timeZone } = read;
  const wrongZone =
    typeof timeZone === 'string' && !isZone(timeZone)
      ? [
          fieldProblem(
            ZONE.name,
            ZONE.label,
            `"${timeZone.slice(0, SHOWN_CHARACTERS)}" is no time zone.`,
            'Give one of the IANA table, such as America/Chicago or Europe/Oslo.',
          ),
        ]
      : [];
  if (problems.length > 0 || wrongZone.length > 0) return { problems: [...problems, ...wrongZone] };
  const about = read as unknown as DraftAbout;
  return { change: (draft) => ({ ...draft, about }), leads: 'on' };
}

/** How soil is told by hand. Common practice. */
const SoilByHand = () => (
  <details>
    <summary>Which soil is it? A test by hand</summary>
    <p>
      Take a handful without stones, wet it drop by drop and knead it until it sticks together. Roll a ball, then press
      it out between thumb and finger into a ribbon, as long as it holds.
    </p>
    <ul class="plain">
      <li>No ball holds: sand.</li>
      <li>A ball that falls apart at a touch, and no ribbon: loamy sand.</li>
      <li>
        A ribbon that breaks short of the width of a thumb: sandy loam where it grits, silt loam where it is smooth as
        flour, loam where it is neither; silt where it is flour all through.
      </li>
      <li>A ribbon of one to two thumbs that is smooth: silty clay loam.</li>
      <li>A longer ribbon that shines: clay, or silty clay where it is smooth rather than sticky.</li>
    </ul>
    <p class="small">
      A raised bed filled with bought mix and compost is nearest to sandy loam or loam. Loam is a fair answer while you
      do not know: it decides when the soil is fit to work, and how long it stays moist.
    </p>
  </details>
);
