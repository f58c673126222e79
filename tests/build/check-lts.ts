/**
 * Runs the whole check, and starts what it built, on every other line of Node.js for long use that this machine has:
 * npm run check:lts
 */
import { spawnSync } from 'node:child_process';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { otherLines, placesToLook } from './other-nodes.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const others = otherLines(placesToLook());
if (others.length === 0) console.log('This machine has no other line of Node.js; name its folder in NODE_LTS.');

for (const { version, folder } of others) {
  console.log(`Node.js ${version}, from ${folder}`);
  const env = { ...process.env, PATH: `${folder}${delimiter}${process.env.PATH}` };
  const start = [join(root, 'dist', 'src', 'cli', 'main.js'), '--help'];
  for (const [command, given] of [
    ['npm', ['run', 'check']],
    ['node', start],
  ] as const) {
    const { status } = spawnSync(command, given, { cwd: root, env, stdio: ['ignore', 'inherit', 'inherit'] });
    if (status !== 0) process.exit(status ?? 1);
  }
}
