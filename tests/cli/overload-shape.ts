import { z } from 'zod';

/** The shape docs/commands.md promises of a week that wants more than it gives: a key more or less is a broken promise. */
export const overloadShape = z.strictObject({
  monday: z.iso.date(),
  wantedMinutes: z.number(),
  givenMinutes: z.number(),
  canWait: z.array(z.string()),
  cannotWait: z.array(z.string()),
  until: z.record(z.string(), z.iso.date()),
  sentences: z.array(z.string()).min(1),
});
