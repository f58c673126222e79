/**
 * A mail server reached and logged in at, without handing anything in.
 */
import { faultOf, faultText, LINE_BROKEN, withoutPassword } from './fault-words.ts';
import { BRISK, connectionTo } from './hand-in.ts';
import type { MailServer } from './mail-server.ts';

/** What stands against handing lists in at a server, in words with a mend and without secrets; nothing where all is well. */
export async function knock(server: MailServer, waitMs = BRISK.beforeMs): Promise<string | undefined> {
  const line = connectionTo(server, waitMs);
  const { login } = server;
  try {
    await new Promise<void>((resolve, reject) => {
      line.once('error', reject);
      line.once('end', () => reject(Object.assign(new Error('The line broke off.'), { code: LINE_BROKEN })));
      line.connect(() => {
        if (login === undefined) return resolve();
        line.login({ user: login.user, pass: login.password }, (error) => (error ? reject(error) : resolve()));
      });
    });
    line.quit();
    return undefined;
  } catch (error) {
    line.close();
    const words = faultText(faultOf(error), { server, from: '', to: '', isUnderWay: false });
    return withoutPassword(words, server);
  }
}
