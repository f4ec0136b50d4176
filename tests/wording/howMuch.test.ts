import { expect, test } from 'vitest';
import { LANGUAGES } from '../../src/domain/shop/words.ts';
import { STOCK_VERBS, stockSaid } from '../../src/domain/stock/said.ts';
import { card } from '../../src/domain/desk/turn.ts';
import { write } from '../../src/wording/write.ts';
import { SHOP } from '../demoShop.ts';

test.each(LANGUAGES.flatMap((language) => STOCK_VERBS.map((verb) => [language, verb] as const)))(
  'what is given as an example of stock in words is understood when it is typed: %s, %s',
  (language, verb) => {
    for (const { item, packOf: count = 100 } of SHOP.stock) {
      const { text } = write(SHOP, language, card(1, { code: 'how-much-stock', verb, item, count }));
      const example = /[“«](.+)[”»]/.exec(text)?.[1] ?? '';
      expect(stockSaid(SHOP, example, '2026-11-30'), example).toMatchObject({ verb, items: [item], count });
    }
  },
);
