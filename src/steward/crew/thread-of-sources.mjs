/**
 * A thread where the program runs from its sources: a thread does not take over from the program how they are read.
 */
import { register } from 'tsx/esm/api';

register();
await import('./thread.ts');
