import { setTimeout as turn } from 'node:timers/promises';
import { type Crew, inThisThread } from '../../../src/steward/crew/crew.ts';

/** A crew that does its work when it is let, as a slow computer would do it later. */
export function heldCrew() {
  const here = inThisThread();
  const works: Promise<unknown>[] = [];
  const state = {
    isHeld: false,
    works: 0,
    letGo: () => {},
    /** Settles when all that was asked for is worked out, and what came of it was taken. */
    done: async () => {
      await Promise.allSettled(works);
      await turn();
    },
  };
  let gate = Promise.resolve();
  const hold = () => {
    gate = new Promise((resolve) => {
      state.letGo = resolve;
    });
    state.isHeld = true;
  };
  const crew: Crew = {
    ...here,
    workOut: (asked, handed) => {
      state.works += 1;
      const work = gate.then(() => here.workOut(asked, handed));
      works.push(work);
      return work;
    },
  };
  return { crew, state, hold };
}
