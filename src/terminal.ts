import { exitCode } from './app/exit.ts';
import { safely } from './app/log.ts';

/** One line for the person at the terminal. */
export const print = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/** Runs `stop` once, at the first signal; a second signal ends the program at once. */
export function onStop(stop: () => Promise<void>): void {
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
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
