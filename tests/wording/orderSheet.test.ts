import { expect, test } from 'vitest';
import { EN_BUSINESS } from '../../src/wording/en/business.ts';
import { paperOf } from '../../src/wording/layout/paper.ts';
import { voiceOf } from '../../src/wording/voice.ts';
import { order, shop } from './samples.ts';

test('an order sheet has the buyer’s own words under the head, and how many to pour for what was ordered', () => {
  const say = { code: 'paper', kind: 'order-sheet', order, buyer: 'Ann', day: '2026-11-25' } as const;
  const [table] = paperOf(say, voiceOf(shop, 'en'), EN_BUSINESS).blocks;
  if (table?.kind !== 'table') expect.fail();
  expect(table.columns.map(({ title }) => title)).toEqual(['Head', 'Heads', 'To pour', 'Packed']);
  const [head = '', ...counts] = table.rows[0] ?? [];
  expect(head).toContain('“32 football 3/8 green pumpkin, brown guard” “wire keepers please”');
  expect(counts).toEqual(['30', '32', '☐']);
  expect(table.rows[1]?.[0]).not.toContain('“');
});
