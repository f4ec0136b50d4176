import { schedule } from 'node-cron';
import type { Log } from '../../app/log.ts';
import { codeOf } from '../../app/log.ts';

export type Ticking = Readonly<{ stop: () => Promise<void> }>;

/** Calls `tick` now and then once a minute, never twice at a time. In UTC: a zone with clock changes would leave an hour out in autumn.
 *  A minute that was missed does no harm, since what is due is a question about the state, not about the minute. */
export async function startTicking(tick: () => Promise<unknown>, log: Log): Promise<Ticking> {
  const quietly = async (): Promise<void> => {
    try {
      await tick();
    } catch (error) {
      log('tick-failed', { code: codeOf(error) });
    }
  };
  await quietly();
  const task = schedule('* * * * *', quietly, {
    name: 'tick',
    timezone: 'Etc/UTC',
    noOverlap: true,
    logger: { info: quiet, warn: () => log('tick-skipped'), error: () => log('tick-failed'), debug: quiet },
  });
  return { stop: async () => void (await task.destroy()) };
}

/** The library's own lines go to the log as events, so that it stays one line of JSON an event. */
const quiet = (): void => {};
