import { EXITS, exitCode } from './app/exit.ts';
import { safely } from './app/log.ts';

/** One line for the person at the terminal. */
export const print = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/** Longer than a stop can take while the disk and the platform answer; a supervisor would kill the program some seconds later. */
const STOP_WITHIN_MS = 25_000;

/** Runs `stop` once, at the first signal; a second signal, or too long a wait, ends the program at once. What was acknowledged is on the disk. */
export function onStop(stop: () => Promise<void>): void {
  const ask = (): void => {
    setTimeout(() => process.exit(EXITS.failed.code), STOP_WITHIN_MS).unref();
    void stop();
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, ask);
}

/** Runs a program to its end and leaves with the number that says how it went; what ended it is said in one sentence. */
export function runAsProgram(main: () => Promise<void>): void {
  main().then(
    () => process.exit(0),
    (error: unknown) => {
      process.stderr.write(`${safely(error)}\n`);
      process.exit(exitCode(error));
    },
  );
}
