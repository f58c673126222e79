/**
 * How it grows: `npm run bench:scale`. Nothing here passes or fails; docs/growth.md tells what it said once.
 */
import { cpus } from 'node:os';
import { demoServer } from './demo-server.ts';
import { reportGarden } from './scale-garden.ts';
import { reportServers } from './scale-server.ts';

const TODAY = '2027-05-12';

console.log(`${cpus().length} cores, Node ${process.version}.`);
await reportServers();
const demo = await demoServer(TODAY);
const { garden } = await demo.steward.view(demo.gardenId);
const record = await demo.steward.weatherRecord(demo.gardenId);
if (record === undefined) throw new Error('The demo garden was laid without a record.');
await demo.close();
await reportGarden(garden, record, TODAY);
