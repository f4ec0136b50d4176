import { improve } from '../../domain/plan/improve.ts';
import { layOut } from '../../domain/plan/layout.ts';
import { modelOf } from '../../domain/plan/model.ts';
import type { Asked } from '../../domain/plan/parse.ts';
import { parseProblem } from '../../domain/plan/parse.ts';
import type { Impossible, Plan } from '../../domain/plan/plan.ts';
import { construct } from '../../domain/plan/schedule.ts';
import { writePlan } from '../../domain/plan/write.ts';

/** One JSON problem in, one JSON plan out; `clock` tells ms. A row that is no problem is answered with what is wrong in it. */
export function planRow(row: unknown, clock: () => number): unknown {
  const parsed = parseProblem(row);
  if (!parsed.ok) return { id: parsed.id, impossible: parsed.wrong.map((why) => ({ lot: null, why })) };
  const start = clock();
  const made = planWithin(parsed.asked, clock, start);
  return { ...writePlan(made, parsed.asked.problem.zone), tookMs: Math.round((clock() - start) * 10) / 10 };
}

/** The share of the budget for the search. */
const SEARCHING = 0.85;

function planWithin({ problem, budgetMs, seed }: Asked, clock: () => number, start: number): Plan | Impossible {
  const model = modelOf(problem);
  const made = construct(model);
  if ('impossible' in made) return made;
  // The rest of the time is for writing the plan down.
  return layOut(model, improve(model, made, seed, () => clock() - start >= budgetMs * SEARCHING).rule);
}
