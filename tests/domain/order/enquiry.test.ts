import { describe, expect, test } from 'vitest';
import { enquiryIn } from '../../../src/domain/order/enquiry.ts';
import { readerFor } from '../../../src/domain/order/reader/read.ts';
import { SHOP } from '../../demoShop.ts';

const reader = readerFor(SHOP);
const now = Date.parse('2026-11-30T17:00:00-06:00');
const asked = (text: string) => enquiryIn(text, (words) => reader.read(words, now));

describe('a question before an order', () => {
  test.each([
    ['what colors do you paint?', 'paint', {}, null],
    ['What weights do you have in football?', 'weight', { style: 'football' }, null],
    ['which hooks go in the swim heads?', 'hook', { style: 'swim' }, null],
    ['do you have pink?', 'paint', {}, 'pink'],
    ['any chance of glow paint?', 'paint', {}, 'glow'],
    ['do you have any lead free?', 'metal', {}, null],
    ['do you make trailers?', 'style', {}, null],
    ['¿qué colores tienen?', 'paint', {}, null],
  ] as const)('%s asks for the range', (text, about, of, lacks) => {
    expect(asked(text)).toEqual({ on: 'range', about, of, lacks });
  });

  test.each([
    ['got any 3/8 footballs?', { style: 'football', weight: '3/8' }],
    ['do you have black guards?', { guard: 'black' }],
    ['can you do 5/0 hooks in a 1/4 ball', { style: 'ball', weight: '1/4', hook: '5/0' }],
  ])('%s asks for a head', (text, words) => {
    expect(asked(text)).toEqual({ on: 'head', words });
  });

  test.each([
    ['how much is it?', {}],
    ["what's the price of a 3/8 football?", { style: 'football', weight: '3/8' }],
    ['how much for 50?', { quantity: 50 }],
    ['¿cuánto cuestan?', {}],
  ])('%s asks what it costs', (text, of) => {
    expect(asked(text)).toEqual({ on: 'quote', of });
  });

  test.each(['when would they ship?', 'hello? when will it ship', 'how long does it take?', '¿cuánto tarda?'])(
    '%s asks for the day',
    (text) => {
      expect(asked(text)).toEqual({ on: 'day' });
    },
  );

  test.each([
    ['do you ship to canada?', null],
    ['can you ship to Ohio?', 'US-OH'],
    ['¿envían a México?', 'MX'],
  ])('%s asks where parcels go', (text, to) => {
    expect(asked(text)).toEqual({ on: 'post', to });
  });

  test.each(['what?', '25 black footballs', 'thanks!', 'what about black', 'show up on friday'])(
    '%s is no such question',
    (text) => {
      expect(asked(text)).toBeUndefined();
    },
  );
});
