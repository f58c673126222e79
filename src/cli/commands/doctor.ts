import { command, switchOption } from '../command-line/command.ts';
import { Exit } from '../command-line/exit.ts';
import { dataFolder } from '../command-line/household.ts';
import { everywhere, listening } from '../command-line/options.ts';
import { clockFindings } from '../doctor/clock.ts';
import { lookAtDatabase } from '../doctor/database.ts';
import { findingLines } from '../doctor/finding.ts';
import { folderFindings } from '../doctor/folder.ts';
import { nodeFindings } from '../doctor/node-version.ts';
import { passwordFindings } from '../doctor/password.ts';
import { mailFindings, publicFindings } from '../doctor/reach.ts';
import { writeLines } from '../text/output.ts';

export const doctor = command({
  name: 'doctor',
  about: 'Looks at what the program needs around it, and says what to mend.',
  options: {
    mail: switchOption('--mail', 'ask the mail server too; nothing is sent'),
    public: switchOption('--public', 'ask the public address too, whether it leads to the program running here'),
    json: switchOption('--json', 'write what was found as JSON'),
    ...listening,
    data: everywhere.data,
  },
  run: async (call) => {
    const { at, settings, options } = call;
    const folder = dataFolder(call);
    const port = options.port ?? settings.port;
    const found = folderFindings(folder);
    const database = await lookAtDatabase(call, folder);
    const clock = { now: at.now(), newest: database.newest, zoneRules: process.versions.tz, gardens: database.gardens };
    const findings = [
      ...found,
      ...database.findings,
      ...clockFindings(clock),
      ...passwordFindings({ ...settings, host: options.host }, database.hasPassword),
      ...(await mailFindings(settings, options.mail === true)),
      ...(await publicFindings({ ...settings, port }, options.public === true)),
      ...nodeFindings(process.versions.node, at.now().slice(0, 10)),
    ];
    const isWell = findings.every(({ state }) => state !== 'trouble');
    if (options.json) at.stdout.write(`${JSON.stringify({ well: isWell, findings }, null, 2)}\n`);
    else writeLines(at.stdout, findingLines(findings));
    if (!isWell) throw new Exit(1);
  },
});
