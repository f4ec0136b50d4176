import { expect, test } from 'vitest';
import type { Saying } from '../../src/domain/desk/card.ts';
import { card } from '../../src/domain/desk/turn.ts';
import type { OwnWords } from '../../src/domain/shop/ownWords.ts';
import type { Shop } from '../../src/domain/shop/shop.ts';
import type { Language } from '../../src/domain/shop/words.ts';
import { write } from '../../src/wording/write.ts';
import { SHOP } from '../demoShop.ts';

const GREETING: Saying = { code: 'welcome' };
const POSTED: Saying = { code: 'shipped', order: 'K-1001', tracking: null };
const read = (language: Language, say: Saying, shop: Shop = SHOP): string => write(shop, language, card(1, say)).text;
const saying = (shipped: OwnWords): Shop => ({ ...SHOP, texts: { ...SHOP.texts, shipped } });

test('a buyer reads the shop’s own texts in their language', () => {
  expect(read('en', GREETING)).toContain('I take orders for jig heads');
  expect(read('es', GREETING)).toContain('Tomo pedidos de cabezas de jig');
  expect(read('es', POSTED)).toMatch(/¡Buena pesca!$/);
  expect(read('en', POSTED)).toMatch(/Tight lines!$/);
});

test('a text that is not given in the reader’s language is there in the shop’s own', () =>
  expect(read('es', POSTED, saying({ en: 'Tight lines!' }))).toMatch(/Tight lines!$/));

test('one text for all is read by all', () => {
  expect(read('es', POSTED, saying('Petri Heil!'))).toMatch(/Petri Heil!$/);
  expect(read('en', POSTED, saying('Petri Heil!'))).toMatch(/Petri Heil!$/);
});
