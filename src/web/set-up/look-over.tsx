/**
 * The last step: everything on one page, and the press that makes the garden.
 */
import type { Child } from 'hono/jsx';
import { seasonTurnOf } from '../../climate/season.ts';
import { fullDay, weekdayWord } from '../../digest/words.ts';
import { SET_UP_STEPS, type SetUpStep } from '../../garden/set-up-draft.ts';
import { weekdayNamed } from '../../garden/weekday-names.ts';
import { soilTextureById } from '../../handbook/soil-textures.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { numbered } from '../../measures/number-order.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import { seasonName } from '../../practices/seasons.ts';
import { makeGardenPath, setUpPath } from '../addresses/addresses.ts';
import { heightWords } from '../climate/climate-words.ts';
import { Problems } from '../frame/layout.tsx';
import { inARow } from '../frame/words.ts';
import { PlanAside } from './asides.tsx';
import { bedWords } from './beds.tsx';
import { binWords } from './bins.tsx';
import { growingWords } from './growing.tsx';
import { Doubts } from './parts.tsx';
import { placeWords } from './place-aside.tsx';
import { inPlainPlaces } from './plain-places.ts';
import { type Step, type StepRoom, unchanged } from './step.ts';

export const lookOver: Step = {
  name: 'look-over',
  short: 'Look it over',
  title: 'Look it over',
  content: (room) => <LookOver room={room} />,
  aside: (room) => <PlanAside room={room} />,
  read: () => ({ change: unchanged, leads: 'here' }),
};

const STEP_WORDS: Readonly<Record<SetUpStep, string>> = {
  where: 'Where',
  climate: 'Frost',
  garden: 'Garden and time',
  beds: 'Beds',
  bins: 'Bins',
  'last-year': 'What grew where',
  growing: 'Growing now or planned',
  'look-over': '',
};

const LookOver = ({ room }: { room: StepRoom }) => {
  const { draft, outlook, draftId } = room;
  const isReady = outlook.trial !== undefined;
  return (
    <>
      {outlook.missing.length > 0 && (
        <p>
          Still to be told:{' '}
          {outlook.missing.map((step, at) => (
            <>
              {at > 0 && ', '}
              <a href={setUpPath(draftId, step)}>{STEP_WORDS[step]}</a>
            </>
          ))}
          .
        </p>
      )}
      <Problems problems={inPlainPlaces(outlook.problems, draft, room)} heading="This cannot be planned yet" />
      <Doubts room={room} />
      <dl class="looked-over">
        {SET_UP_STEPS.filter((step) => step !== 'look-over').map((step) => (
          <>
            <dt>{STEP_WORDS[step]}</dt>
            <dd>
              <Told room={room} step={step} />{' '}
              <a class="doing" href={setUpPath(draftId, step)}>
                Change<span class="unseen"> {STEP_WORDS[step]}</span>
              </a>
            </dd>
          </>
        ))}
      </dl>
      {isReady && (
        <form method="post" action={makeGardenPath(draftId)}>
          <button type="submit">Make the garden</button>
          <p class="small">
            It comes with the address of a calendar. Everything told here can be changed afterwards, and more can be
            told.
          </p>
        </form>
      )}
      <p>
        <a href={setUpPath(draftId, 'growing')}>Back</a>
      </p>
    </>
  );
};

const Told = ({ room, step }: { room: StepRoom; step: SetUpStep }): Child => {
  const lines = toldLines(room, step);
  return lines.length === 0 ? (
    <span class="small">nothing told</span>
  ) : (
    <ul class="plain">
      {lines.map((line) => (
        <li>{line}</li>
      ))}
    </ul>
  );
};

function toldLines(room: StepRoom, step: SetUpStep): string[] {
  const { draft, units, outlook } = room;
  switch (step) {
    case 'where':
      return placeLine(room);
    case 'climate':
      return climateLine(room);
    case 'garden':
      return aboutLines(room);
    case 'beds':
      return bedLines(room);
    case 'bins':
      return draft.bins.map((bin) => `${bin.name}: ${binWords(bin, units)}`);
    case 'last-year':
      return pastLines(room);
    case 'growing':
      return growingWords(draft, outlook.today, units).map(({ words, detail }) => `${words}, ${detail}`);
    default:
      return [];
  }
}

function placeLine({ draft: { place }, units }: StepRoom): string[] {
  if (place === undefined) return [];
  const height = place.elevationM === undefined ? '' : `, ${heightWords(place.elevationM, units)} above the sea`;
  return [`${placeWords(place)}${height}`];
}

function climateLine({ draft: { climate }, outlook, units }: StepRoom): string[] {
  if (climate === undefined) return [];
  if (!('frostDates' in climate))
    return outlook.climate === undefined ? [] : [readableIn(units, outlook.climate.origin)];
  const { lastSpring, firstAutumn } = climate.frostDates;
  const told = (monthDay: string) => formatDay(`2000-${monthDay}`, units);
  return [`Your own dates: ${told(lastSpring)} and ${told(firstAutumn)}`];
}

function aboutLines({ draft: { about } }: StepRoom): string[] {
  if (about === undefined) return [];
  const days = inARow(about.workDays.map((day) => weekdayWord(weekdayNamed(day))));
  return [
    about.name,
    `${about.timeZone}, written in ${about.units === 'us' ? 'feet and pounds' : 'metres and litres'}`,
    `${about.hoursPerWeek} h a week, on ${days}`,
    `Soil: ${soilTextureById.get(about.soilTexture)?.name.toLowerCase() ?? about.soilTexture}`,
  ];
}

/** Beds one after the other that are alike share a line. */
function bedLines({ draft, units }: StepRoom): string[] {
  const runs: { words: string; names: string[] }[] = [];
  for (const bed of draft.beds) {
    const due = bed.plannedFor === undefined ? '' : `, to be made by ${fullDay(bed.plannedFor, units)}`;
    const words = `${readableIn(units, bedWords(bed))}${due}`;
    const last = runs.at(-1);
    if (last?.words === words) last.names.push(bed.name);
    else runs.push({ words, names: [bed.name] });
  }
  return runs.map(({ words, names }) => {
    const count = names.length < 3 ? '' : `, ${names.length} beds`;
    return `${inARow(numberedTogether(names))}${count}: ${words}`;
  });
}

/** Names numbered one after another as "Bed 2 to Bed 12"; any other keeps its place and its name. */
function numberedTogether(names: readonly string[]): string[] {
  const spans: string[][] = [];
  for (const name of names) {
    const last = spans.at(-1);
    const before = last?.at(-1);
    if (before !== undefined && follows(before, name)) last?.push(name);
    else spans.push([name]);
  }
  return spans.flatMap((span) => (span.length < 3 ? span : [`${span[0]} to ${span.at(-1)}`]));
}

function follows(before: string, name: string): boolean {
  const [first, next] = [numbered(before), numbered(name)];
  return first !== undefined && next !== undefined && first.base === next.base && next.number === first.number + 1;
}

function pastLines({ draft }: StepRoom): string[] {
  const turned = { seasonTurn: seasonTurnOf(draft.place?.latitude ?? 0) };
  return draft.beds.flatMap((bed) => {
    const rows = draft.past.filter((row) => row.bed === bed.id);
    if (rows.length === 0) return [];
    const crops = rows.map(
      ({ crop, season }) => `${vegetableById(crop).name.toLowerCase()} (${seasonName(turned, season)})`,
    );
    return [`${bed.name}: ${crops.join(', ')}`];
  });
}
