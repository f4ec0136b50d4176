import fc from 'fast-check';

/** Properties are tried on the same cases every time, so that a green commit stays green. `SEED` tries others, and `RUNS` more of them:
 *  `SEED=$RANDOM RUNS=2000 npx vitest run --config tests/vitest.config.ts`. */
const { SEED = '1', RUNS } = process.env;
fc.configureGlobal({ seed: Number(SEED), ...(RUNS === undefined ? {} : { numRuns: Number(RUNS) }) });
