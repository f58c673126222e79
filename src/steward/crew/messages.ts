/**
 * What a steward and the threads of its crew say to one another.
 */
import { InputRefused, type Problem } from '../../garden/problem.ts';
import type { Asked, Ground, WorkedOut } from './work.ts';

/** To a thread: a work, or what a climate is made of where it asked for that. */
export type ToThread = { asked: Asked } | { ground: Ground } | { noGround: Fault };

/** From a thread: how the work ended, or that it needs what a climate is made of. */
export type FromThread = { done: WorkedOut } | { failed: Fault } | { wants: 'ground' };

/** An error on its way between threads, which would lose its class. */
export type Fault = { about: string; problems: readonly Problem[] } | { error: unknown };

export function faultOf(error: unknown): Fault {
  if (!(error instanceof InputRefused)) return { error };
  const [about = ''] = error.message.split('\n');
  return { about, problems: error.problems };
}

export function errorOf(fault: Fault): unknown {
  return 'error' in fault ? fault.error : new InputRefused(fault.about, fault.problems);
}
