import { expect, test } from 'vitest';
import { instantOf } from '../../src/domain/craft/time.ts';
import { closedFor } from '../../src/domain/quote/taxed.ts';
import { EN_BUSINESS } from '../../src/wording/en/business.ts';
import { paperOf } from '../../src/wording/layout/paper.ts';
import { voiceOf } from '../../src/wording/voice.ts';
import { order, shop } from './samples.ts';

const day = instantOf('2026-11-30', '18:00', shop.zone);
const paid = { at: day, kind: 'paid', cents: 2500, why: '' } as const;
const gone = {
  ...order,
  state: 'cancelled',
  shippedAt: day,
  ledger: closedFor(order.money, [paid], 1781, day),
} as const;

const paperSays = (kind: 'receipt' | 'order-sheet') =>
  paperOf(
    { code: 'paper', kind, order: { ...gone, ledger: [...gone.ledger] }, buyer: 'Ann', day: '2026-11-30' },
    voiceOf(shop, 'en'),
    EN_BUSINESS,
  );

test.each(['receipt', 'order-sheet'] as const)(
  'the %s of a cancelled order says the day, and not that it shipped',
  (kind) => {
    const { facts } = paperSays(kind);
    expect(facts).toContainEqual({ name: 'Cancelled', text: 'November 30, 2026' });
    expect(facts.map(({ name }) => name)).not.toContain('Shipped');
  },
);

test('its receipt says what is kept for the work and what goes back, and thanks for no casting', () => {
  const { blocks } = paperSays('receipt');
  const sums = blocks.flatMap((block) => (block.kind === 'sums' ? block.rows : []));
  const said = sums.map(({ name, amount }) => `${name} ${amount}`);
  expect(said).toContain('Kept for the work $17.81');
  expect(said).toContain('To give back $7.19');
  expect(blocks.map(({ kind }) => kind)).toEqual(['table', 'sums']);
});
