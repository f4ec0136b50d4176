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

/** The share of the budget for the search; the rest of the time is for writing the plan down. */
const SEARCHING = 0.85;

/** Tasks looked at for each ms of the budget: about half of what a slow machine does, so that the same problem gives the same plan each
 *  time. Only where that takes too long does the clock end the search, and then two plans may differ. */
const TASKS_A_MS = 1000;

function planWithin({ problem, budgetMs, seed }: Asked, clock: () => number, start: number): Plan | Impossible {
  const model = modelOf(problem);
  const made = construct(model);
  if ('impossible' in made) return made;
  const rounds = (budgetMs * TASKS_A_MS) / Math.max(1, model.tasks.length);
  const isOver = (round: number) => round >= rounds || clock() - start >= budgetMs * SEARCHING;
  return layOut(model, improve(model, made, seed, isOver).rule);
}
