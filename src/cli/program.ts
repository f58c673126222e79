/**
 * The program's commands.
 */
import type { Command } from 'commander';
import { commandGroup } from './command-line/command.ts';
import type { Surroundings } from './command-line/surroundings.ts';
import { assign } from './commands/assign.ts';
import { backup } from './commands/backup.ts';
import { climate } from './commands/climate.ts';
import { doctor } from './commands/doctor.ts';
import { done } from './commands/done.ts';
import { feedAdd } from './commands/feed-add.ts';
import { feedChange } from './commands/feed-change.ts';
import { feedList } from './commands/feed-list.ts';
import { feedRename } from './commands/feed-rename.ts';
import { feedRevoke } from './commands/feed-revoke.ts';
import { feedRotate } from './commands/feed-rotate.ts';
import { fertility } from './commands/fertility.ts';
import { fill } from './commands/fill.ts';
import { gardenCheck } from './commands/garden-check.ts';
import { gardenExport } from './commands/garden-export.ts';
import { gardenImport } from './commands/garden-import.ts';
import { keyList } from './commands/key-list.ts';
import { keyNew } from './commands/key-new.ts';
import { keyRevoke } from './commands/key-revoke.ts';
import { mail } from './commands/mail.ts';
import { mix } from './commands/mix.ts';
import { near } from './commands/near.ts';
import { password } from './commands/password.ts';
import { plan } from './commands/plan.ts';
import { record } from './commands/record.ts';
import { reportAway } from './commands/report-away.ts';
import { reportColdNight } from './commands/report-cold-night.ts';
import { reportDisease } from './commands/report-disease.ts';
import { reportPile } from './commands/report-pile.ts';
import { reportRegrowth } from './commands/report-regrowth.ts';
import { reportSqueeze } from './commands/report-squeeze.ts';
import { reportStage } from './commands/report-stage.ts';
import { reportStand } from './commands/report-stand.ts';
import { reportWeather } from './commands/report-weather.ts';
import { restore } from './commands/restore.ts';
import { rotation } from './commands/rotation.ts';
import { seasonEnd } from './commands/season-end.ts';
import { serve } from './commands/serve.ts';
import { skip } from './commands/skip.ts';
import { snow } from './commands/snow.ts';
import { undo } from './commands/undo.ts';
import { weatherImport } from './commands/weather-import.ts';
import { weatherLog } from './commands/weather-log.ts';
import { week } from './commands/week.ts';
import { yard } from './commands/yard.ts';

const loamtide = commandGroup(
  'loamtide',
  "Works out a vegetable garden's year of dated, explained tasks, and serves them as a calendar feed and a weekly list.",
  [
    serve,
    week,
    mail,
    plan,
    yard,
    seasonEnd,
    rotation,
    fertility,
    record,
    climate,
    near,
    mix,
    fill,
    commandGroup('garden', 'Garden files: check, import, export.', [gardenCheck, gardenImport, gardenExport]),
    commandGroup('weather', "The weather record a climate is worked out from, and the garden's own log.", [
      weatherImport,
      weatherLog,
    ]),
    commandGroup('feed', 'Calendar feeds: add, list, change, rename, rotate, revoke.', [
      feedAdd,
      feedList,
      feedChange,
      feedRename,
      feedRotate,
      feedRevoke,
    ]),
    commandGroup('report', 'What happened in the garden, or is about to.', [
      reportAway,
      reportColdNight,
      reportDisease,
      reportPile,
      reportRegrowth,
      reportSqueeze,
      reportStage,
      reportStand,
      reportWeather,
    ]),
    commandGroup('key', 'Keys for scripts that tell of piles: new, list, revoke.', [keyNew, keyList, keyRevoke]),
    assign,
    done,
    skip,
    snow,
    undo,
    password,
    backup,
    restore,
    doctor,
  ],
);

/** The whole program as a tree of commands. */
export function program(at: Surroundings): Command {
  return loamtide(at);
}
