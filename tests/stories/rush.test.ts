import { describe, expect, test } from 'vitest';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { told } from './story.ts';

const RUSHED = { shop: (shop: Shop): Shop => ({ ...shop, rush: { withinDays: 7, rate: 15_000 } }) };

describe('an order that is needed before its turn', () => {
  test('goes ahead in a rush, for the shop’s charge, and breaks no promise', () =>
    told(async ({ buyer, other, maker, desk }) => {
      await other.says('250 1/4 oz ball heads, black, 2/0, no guard, no skirt, to Ohio');
      await other.taps('Order this');
      await other.says('Alex Fisher, 3 Dock Street, Columbus, OH');
      const promised = desk().orders['K-1001']?.promise.ships;
      const asked = await buyer.says('10 football, 3/8, black, 4/0, no guard, no skirt, to Ohio, by December 3');
      expect(asked).toContain('The soonest I can promise');
      expect(buyer.buttons().join()).toMatch(/In a rush, \$1\.95 more: ships/);
      const rushed = await buyer.taps('In a rush');
      expect(rushed).toContain('Needed soon: $1.95');
      expect(rushed).not.toContain('The soonest I can promise');
      await buyer.taps('Order this');
      await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH');
      expect(desk().orders['K-1002']?.promise.ships).toBe('2026-12-02');
      expect(desk().orders['K-1002']?.money.rush).toBe(195);
      expect(desk().orders['K-1001']?.promise.ships).toBe(promised);
      expect(await maker.says('digest')).toMatch(/Every promise fits/);
      expect(desk().drafts).toEqual({});
    }, RUSHED));

  test('is charged nothing for haste when the day is changed', () =>
    told(async ({ buyer, other }) => {
      await other.says('250 1/4 oz ball heads, black, 2/0, no guard, no skirt, to Ohio');
      await other.taps('Order this');
      await buyer.says('10 football, 3/8, black, 4/0, no guard, no skirt, to Ohio, by December 3');
      await buyer.taps('In a rush');
      expect(await buyer.says('by December 20')).not.toContain('Needed soon');
    }, RUSHED));
});
