import { expect, test } from 'vitest';
import { FloodGate } from '../../../src/adapters/telegram/flood.ts';

const many = (gate: FloodGate, id: number, count: number, at: number) =>
  Array.from({ length: count }, () => gate.admit(id, at));
const count = (all: readonly string[], what: string) => all.filter((one) => one === what).length;

test('twenty at once go in; the rest is turned away with one notice', () => {
  const all = many(new FloodGate(), 7, 1000, 0);
  expect([count(all, 'in'), count(all, 'notice'), count(all, 'out')]).toEqual([20, 1, 979]);
});

test('somebody else is not held up by it', () => {
  const gate = new FloodGate();
  many(gate, 7, 1000, 0);
  expect(gate.admit(8, 0)).toBe('in');
});

test('after ten seconds of quiet twenty more go in', () => {
  const gate = new FloodGate();
  many(gate, 7, 30, 0);
  expect(count(many(gate, 7, 30, 10_000), 'in')).toBe(20);
});

test('someone who goes on and on gets two a second in, and a notice every ten seconds at most', () => {
  const gate = new FloodGate();
  const all = Array.from({ length: 600 }, (_, tenth) => gate.admit(7, tenth * 100));
  expect(count(all, 'in')).toBeLessThanOrEqual(20 + 120);
  expect(count(all, 'notice')).toBeLessThanOrEqual(6);
});

test('a clock that goes back lets nobody in for it', () => {
  const gate = new FloodGate();
  many(gate, 7, 20, 50_000);
  expect(gate.admit(7, 0)).not.toBe('in');
});

test('of people who were never here, thirty come in at once and one more every two seconds; the others are not held up', () => {
  const gate = new FloodGate();
  const first = Array.from({ length: 200 }, (_, index) => gate.admit(1000 + index, 0, 'new'));
  expect(first.filter((admission) => admission === 'in')).toHaveLength(30);
  expect(first.filter((admission) => admission === 'notice')).toHaveLength(1);
  expect(gate.admit(7, 0, 'known')).toBe('in');
  const later = Array.from({ length: 60 }, (_, second) => gate.admit(5000 + second, 1000 * (second + 1), 'new'));
  expect(later.filter((admission) => admission === 'in')).toHaveLength(30);
});
