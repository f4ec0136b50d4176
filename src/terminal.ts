import { once } from 'node:events';
import { EXITS, exitCode } from './app/exit.ts';
import { safely } from './app/log.ts';

/** One line for the person at the terminal. */
export const print = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/** One line, once there is room for it: a reader that is slower than the program holds it up instead of filling its memory. */
export async function printInTurn(line: string): Promise<void> {
  if (!process.stdout.write(`${line}\n`)) await once(process.stdout, 'drain');
}

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
  process.stdout.on('error', endUnread);
  main().then(
    () => leave(0),
    (error: unknown) => process.stderr.write(`${safely(error)}\n`, () => leave(exitCode(error))),
  );
}

/** Leaves once all that was printed is out: a pipe takes it piece by piece. */
const leave = (code: number): void => void process.stdout.write('', () => process.exit(code));

/** A reader that has seen enough, as `head` has, is no fault. */
function endUnread(error: NodeJS.ErrnoException): void {
  process.exit(error.code === 'EPIPE' ? 0 : EXITS.failed.code);
}
