/**
 * The season drawn: temperatures, snow, water in the soil and days fit to work, sixty days back and sixty ahead.
 */
import type { Climate } from '../../climate/climate.ts';
import { type DaySpan, fitCourse, snowCourse, temperatureCourse, topWaterCourse } from '../../climate/season-course.ts';
import { layerWaterOf } from '../../climate/top-layer.ts';
import type { Garden } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { soilClassOf, texturesOf } from '../../practices/soil-class.ts';
import { climatePath } from '../addresses/addresses.ts';
import { FitDrawing } from '../charts/fit-drawing.tsx';
import { SnowDrawing } from '../charts/snow-drawing.tsx';
import { SoilWaterDrawing } from '../charts/soil-water-drawing.tsx';
import { TemperatureDrawing } from '../charts/temperature-drawing.tsx';
import { Whence } from '../frame/why.tsx';

/** Days drawn on either side of today. House default: what still shows single days on a phone. */
const DAYS_EACH_SIDE = 60;

interface SeasonDrawingsProps {
  climate: Climate;
  garden: Garden;
  today: Day;
}

/** All drawings of the season, and in words what cannot be drawn. */
export const SeasonDrawings = ({ climate, garden, today }: SeasonDrawingsProps) => {
  const span = { from: addDays(today, -DAYS_EACH_SIDE), to: addDays(today, DAYS_EACH_SIDE) };
  const { units } = garden.place;
  return (
    <section class="season" id="season">
      <h2>The season drawn</h2>
      <p class="small">
        What was logged and is expected here, against the seasons of the record. Where this season’s line is broken it
        is still to come.
      </p>
      <Whence to={climatePath(garden.id)}>Where the record and its days come from</Whence>
      {gapsInWords(climate, span).map((sentence) => (
        <p class="small">{sentence}</p>
      ))}
      <div class="season-drawings">
        {(['tmaxC', 'tminC'] as const).map((which) => (
          <TemperatureDrawing
            which={which}
            days={temperatureCourse(climate, which, span)}
            today={today}
            units={units}
          />
        ))}
        <GroundDrawings climate={climate} garden={garden} today={today} span={span} />
      </div>
    </section>
  );
};

const GroundDrawings = ({ climate, garden, today, span }: SeasonDrawingsProps & { span: DaySpan }) => {
  const { units } = garden.place;
  const soil = soilClassOf(garden, texturesOf(garden)[0] ?? garden.place.soilTexture);
  const named = `${soil.texture.name.toLowerCase()}${soil.raised ? ', raised beds' : ''}`;
  return (
    <>
      <SnowDrawing days={snowCourse(climate, span)} today={today} units={units} />
      <SoilWaterDrawing
        days={topWaterCourse(climate, soil, span)}
        fitMm={layerWaterOf(soil).fitMm}
        soil={named}
        today={today}
        units={units}
      />
      <FitDrawing days={fitCourse(climate, soil, span)} today={today} units={units} />
    </>
  );
};

/** What the climate does not know, so that nobody takes an absent line for none. */
function gapsInWords(climate: Climate, span: DaySpan): string[] {
  const bring = 'One that holds them is brought in on the page of the long record, named above.';
  if (climate.seasons.length === 0) {
    return [
      'This climate has no daily record. How far single days stray from the mean of the years is therefore not drawn, ' +
        `and snow, water in the soil and days fit to work are not known. ${bring}`,
    ];
  }
  const dry = snowCourse(climate, span).length === 0;
  const unlogged = climate.logged.every(({ day }) => day < span.from);
  return [
    ...(dry
      ? [`The daily record holds no rain: snow, water in the soil and days fit to work are not known. ${bring}`]
      : []),
    ...(unlogged ? ['Nothing was logged of these days: the lines are those of past years.'] : []),
  ];
}
