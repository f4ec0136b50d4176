import { Halt } from './exit.ts';
import type { Log } from './log.ts';
import { NotRecorded, type Step, type Store } from './store.ts';

export type Patience = Readonly<{
  /** How long to wait before each further try, in milliseconds of real time. */
  pauses: readonly number[];
  pause: (ms: number) => Promise<void>;
  log: Log;
}>;

/** Half a minute in all: a full disk is sometimes emptied, a network disk sometimes comes back. */
export const PAUSES = [100, 500, 1000, 3000, 5000, 10_000, 10_000] as const;

/** A store that tries a failed write again, and gives up for good only when it has failed each time.
 *  @throws Halt (`disk`) then; nobody should go on who cannot write. */
export const stubborn = <T>(store: Store<T>, patience: Patience): Store<T> => ({
  read: () => store.read(),
  change: (step) => tried(store, step, patience),
});

async function tried<T, R>(store: Store<T>, step: Step<T, R>, { pauses, pause, log }: Patience): Promise<R> {
  for (const [index, ms] of pauses.entries())
    try {
      return await store.change(step);
    } catch (error) {
      if (!(error instanceof NotRecorded)) throw error;
      log('write-failed', { code: error.code, tries: index + 1 });
      await pause(ms);
    }
  return last(store, step);
}

async function last<T, R>(store: Store<T>, step: Step<T, R>): Promise<R> {
  try {
    return await store.change(step);
  } catch (error) {
    if (!(error instanceof NotRecorded)) throw error;
    throw new Halt(
      'disk',
      `The book cannot be written (${error.code}). Nothing that was acknowledged is lost; make room or mend the disk, then start again.`,
    );
  }
}
