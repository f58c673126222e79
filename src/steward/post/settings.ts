/**
 * How lists leave the house.
 */
import type { MailServer } from './mail-server.ts';

/** Where lists go and who they come from. */
export interface PostSettings {
  /** The server they are handed in at; without one they are written into the outbox. */
  server?: MailServer;
  /** Folder of files; without it, and without a server, lists are only looked at and never due. */
  outbox?: string;
  /** Who they come from where a member's own settings do not say. */
  from?: string;
  /** Address that others reach this program by, where there is one: links lead to it. */
  publicUrl?: URL;
}
