import type { Steward } from '../../steward/doings/steward.ts';
import { type Call, command, switchOption } from '../command-line/command.ts';
import { withHousehold } from '../command-line/household.ts';
import { everywhere } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import type { SecretInlet } from '../command-line/surroundings.ts';
import { writeLines } from '../text/output.ts';

const options = {
  remove: switchOption('--remove', 'takes the password away: the pages then answer this computer alone'),
  ...everywhere,
};

export const password = command({
  name: 'password',
  about: 'Sets or changes the password of the household, which lets other devices in; signs out everywhere.',
  options,
  run: (call) =>
    withHousehold(call, { make: true }, ({ steward }) =>
      call.options.remove === true ? removed(call, steward) : set(call, steward),
    ),
});

type PasswordCall = Call<typeof options>;

async function set({ at }: PasswordCall, steward: Steward): Promise<void> {
  const had = (await steward.lock()) !== undefined;
  const signedOut = await steward.setPassword(await typedIn(at.secrets));
  writeLines(at.stdout, [
    had ? 'The password was changed.' : 'The password is set. The pages ask for it from now on, on this computer too.',
    ...(signedOut === 0
      ? []
      : [signedOut === 1 ? 'One device was signed out.' : `${signedOut} devices were signed out.`]),
  ]);
}

async function removed({ at }: PasswordCall, steward: Steward): Promise<void> {
  const had = await steward.removePassword();
  writeLines(at.stdout, [
    had
      ? 'The password was taken away. The pages now answer this computer alone, whatever address the server listens on.'
      : 'There was no password.',
  ]);
}

/** The password from the keyboard, typed twice, or the one line that is led in. It is never an argument: those are seen by all. */
async function typedIn(secrets: SecretInlet): Promise<string> {
  if (!secrets.isTerminal) return (await secrets.ledIn()).replace(/\r?\n$/, '');
  const [typed, again] = (await secrets.asked(['New password of the household: ', 'The same once more: '])) ?? [];
  if (typed === undefined || again === undefined) {
    throw refusal('The password was not set.', 'the password', 'was not typed to its end.', 'Run the command again.');
  }
  if (typed === again) return typed;
  throw refusal('The password was not set.', 'the password', 'was typed in two ways.', 'Run the command again.');
}
