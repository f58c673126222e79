/**
 * When a bed can be given its layer.
 */
import type { Reason, TaskDraft, TaskKey, Window } from '../draft.ts';

/** The days a bed's layer may go on, the work it waits for, and why. */
export interface LayerWindow {
  key: TaskKey;
  half: 'autumn' | 'spring';
  window: Window;
  after: TaskDraft['after'];
  reasons: readonly Reason[];
}
