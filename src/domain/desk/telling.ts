import type { Timer } from '../bench/timer.ts';
import { MINUTE, type Instant } from '../craft/time.ts';
import type { TimerFacts } from './facts.ts';
import type { Desk } from './state.ts';

/** A timer as it is told of: with its lots, and how long it is overdue. */
export const timerFacts = (desk: Desk, timer: Timer, now: Instant): TimerFacts => ({
  timer,
  lots: timer.lots.flatMap((id) => desk.lots[id] ?? []),
  lateMinutes: Math.max(0, Math.floor((now - timer.dueAt) / MINUTE)),
  overMinutes: Math.max(0, Math.floor((now - timer.firstDueAt) / MINUTE)),
});
