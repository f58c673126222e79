/**
 * How it grows: `npm run bench:scale`, with `-- --write` into docs/growth.md. Nothing here passes or fails.
 */
import { cpus } from 'node:os';
import { demoServer } from './demo-server.ts';
import { reportGarden } from './scale-garden.ts';
import { reportServers } from './scale-server.ts';
import { Told } from './scale-told.ts';

const TODAY = '2027-05-12';

const told = new Told();
told.say(`Measured in one run on ${cpus().length} cores with Node ${process.version}.`);
const demo = await demoServer(TODAY);
const { garden } = await demo.steward.view(demo.gardenId);
const record = await demo.steward.weatherRecord(demo.gardenId);
if (record === undefined) throw new Error('The demo garden was laid without a record.');
await demo.close();
await reportGarden(told, { garden, record, today: TODAY });
await reportServers(told);
if (process.argv.includes('--write')) told.write();
