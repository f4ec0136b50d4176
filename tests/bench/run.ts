import { readdirSync } from 'node:fs';

/** Runs everything that is measured here, one after another, and lets each print its tables: `bench…` of every file that has one. */
for (const name of readdirSync(import.meta.dirname).toSorted()) {
  if (!name.endsWith('.ts') || name === 'run.ts') continue;
  const found = (await import(`./${name}`)) as Readonly<Record<string, unknown>>;
  for (const [what, run] of Object.entries(found)) if (isBench(what, run)) await run();
}

function isBench(what: string, run: unknown): run is () => Promise<void> {
  return /^bench[A-Z]/.test(what) && typeof run === 'function';
}
