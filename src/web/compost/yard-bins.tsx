/**
 * The bins of the yard: what stands in each, its next job, and its heat.
 */
import { hotRecordWords } from '../../digest/hot-record-words.ts';
import type { Bin, Garden, Pile } from '../../garden/garden.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { HeapSupply } from '../../practices/compost-balance.ts';
import { builtLitres } from '../../practices/composting/pile-life.ts';
import { rawManureOf } from '../../practices/manure.ts';
import { pileWords } from '../../practices/manure-words.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { editPath, handbookPath, historyPath, reportPath, taskPath } from '../addresses/addresses.ts';
import { PileDrawing, times } from '../charts/pile-drawing.tsx';
import { ruleWay, Whence, WhyDate, WhyDateIf } from '../frame/why.tsx';
import { NO_BIN, rowDoings } from '../garden/its-yard.tsx';
import { type Doing, Doings } from '../garden/told.tsx';
import { PileLog } from './pile-log.tsx';

interface YardBinsProps {
  view: GardenView;
  heaps: readonly HeapSupply[];
}

/** Every bin with the piles in it that are not used up. */
export const YardBins = ({ view, heaps }: YardBinsProps) => {
  const { garden } = view;
  const add = <Doings doings={addDoings(garden)} />;
  if (garden.bins.length === 0)
    return (
      <>
        <p>{NO_BIN}</p>
        <Whence to={handbookPath('composting', 'building')}>Why that size</Whence>
        {add}
      </>
    );
  return (
    <>
      {garden.bins.map((bin) => {
        const piles = garden.piles.filter((pile) => pile.binId === bin.id && isThere(pile, heaps));
        return (
          <section>
            <h2>
              {bin.name}
              {bin.closed && ', closed'}, {formatQuantity({ value: bin.volumeL, unit: 'L' }, garden.place.units)}
            </h2>
            <Doings doings={rowDoings(garden.id, 'bins', bin.id, bin.name)} />
            {piles.length === 0 && <EmptyBin view={view} bin={bin} />}
            {piles.map((pile) => (
              <PileInBin view={view} bin={bin} pile={pile} heap={heaps.find(({ of }) => of === pile.id)} />
            ))}
          </section>
        );
      })}
      {add}
    </>
  );
};

/** What can be told of besides what is there. */
function addDoings({ id, bins }: Pick<Garden, 'id' | 'bins'>): Doing[] {
  const pile = { href: editPath(id, 'piles'), words: 'Add a pile that is there already' };
  return [{ href: editPath(id, 'bins'), words: 'Add a bin' }, ...(bins.length === 0 ? [] : [pile])];
}

/** That a bin is empty, and which pile was the last in it. */
const EmptyBin = ({ view: { garden, plan }, bin }: { view: GardenView; bin: Bin }) => {
  const used = garden.piles.filter(({ binId, finishedOn }) => binId === bin.id && finishedOn !== undefined);
  const [last] = used
    .map(({ built }) => built.day)
    .sort()
    .reverse();
  const day = last && formatDay(last, garden.place.units, plan.today);
  return <p class="small">{day === undefined ? 'Empty.' : `Empty: the pile built ${day} is used up.`}</p>;
};

/** A finished pile of which nothing is left is used up. */
function isThere(pile: Pile, heaps: readonly HeapSupply[]): boolean {
  return pile.finishedOn === undefined || heaps.some(({ what, of }) => what === 'pile' && of === pile.id);
}

/** Where a pile stands in its life. */
function standingOf({ built, method, curingSince, finishedOn }: Pile): string {
  if (finishedOn !== undefined) return 'Finished compost';
  if (curingSince !== undefined) return 'Curing';
  if (!built.happened) return 'Planned';
  return method === 'hot' ? 'Working, turned' : 'Rotting, left alone';
}

interface CountedProps {
  gardenId: string;
  tasks: GardenView['plan']['tasks'];
  heap: HeapSupply;
  day: (of: string) => string;
}

/** The day compost can be counted on from goes by the look that finds it ripe. */
const CountedOn = ({ gardenId, tasks, heap: { of, ready }, day }: CountedProps) => {
  const look = tasks.find(({ kind, subject }) => kind === 'check-maturity' && subject.id === of);
  return (
    <>
      counted on from{' '}
      <WhyDateIf gardenId={gardenId} of={look?.key}>
        {day(ready)}
      </WhyDateIf>
    </>
  );
};

interface PileInBinProps {
  view: GardenView;
  bin: Bin;
  pile: Pile;
  heap: HeapSupply | undefined;
}

const PileInBin = ({ view, bin, pile, heap }: PileInBinProps) => {
  const { garden, plan } = view;
  const { units } = garden.place;
  const day = (of: string): string => formatDay(of, units, plan.today);
  const record = hotRecordWords(pile, bin);
  const raw = rawManureOf(garden, pile);
  const next = plan.tasks
    .filter(({ subject, state }) => subject.type === 'pile' && subject.id === pile.id && state === 'open')
    .sort((a, b) => (a.day < b.day ? -1 : 1))[0];
  return (
    <>
      <p>
        {standingOf(pile)}; {pile.built.happened ? 'built' : 'to be built'} {day(pile.built.day)} of{' '}
        {formatQuantity({ value: builtLitres(pile), unit: 'L' }, units)}
        {pile.turns.length > 0 && `, turned ${times(pile.turns.length)}`}.
        {heap && (
          <span class="under">
            <a href={ruleWay('compost-begin.in-time')}>{formatQuantity({ value: heap.litres, unit: 'L' }, units)}</a> of
            compost{' '}
            {heap.proven ? 'there' : <CountedOn gardenId={garden.id} tasks={plan.tasks} heap={heap} day={day} />}.
          </span>
        )}
      </p>
      {next && (
        <p>
          Next: <a href={taskPath(garden.id, next.key)}>{readableIn(units, next.title, plan.today)}</a>,{' '}
          <WhyDate gardenId={garden.id} of={next.key}>
            {day(next.day)}
          </WhyDate>
          .
        </p>
      )}
      {pile.built.happened && pile.finishedOn === undefined && (
        <p>
          <a href={`${reportPath(garden.id, 'pile')}?${new URLSearchParams({ pile: pile.id })}`}>
            Tell of a look at it
          </a>
        </p>
      )}
      {pile.finishedOn === undefined && record && (
        <p class="small">
          {readableIn(units, record, plan.today)} <a href={ruleWay('manure-wait.as-raw')}>What such a record is for</a>
        </p>
      )}
      {raw && <p class="small">{readableIn(units, pileWords(raw), plan.today)}</p>}
      <PileDrawing gardenId={garden.id} pile={pile} today={plan.today} units={units} />
      <PileLog view={view} pile={pile} />
      <p class="small">
        <a href={historyPath(garden.id, { about: { type: 'pile', id: pile.id } })}>All that was told of it</a>
      </p>
    </>
  );
};
