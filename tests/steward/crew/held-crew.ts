import { type Crew, inThisThread } from '../../../src/steward/crew/crew.ts';

/** A crew that does its work when it is let, as a slow computer would do it later. */
export function heldCrew() {
  const here = inThisThread();
  const state = { isHeld: false, works: 0, letGo: () => {} };
  let gate = Promise.resolve();
  const hold = () => {
    gate = new Promise((resolve) => {
      state.letGo = resolve;
    });
    state.isHeld = true;
  };
  const crew: Crew = {
    ...here,
    workOut: async (asked, handed) => {
      state.works += 1;
      await gate;
      return here.workOut(asked, handed);
    },
  };
  return { crew, state, hold };
}
