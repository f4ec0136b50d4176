import { describe, expect, test } from 'vitest';
import { BUYER, told } from './story.ts';

const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

describe('a wish that is not in the book', () => {
  test('goes to the maker, is granted with one tap at an extra, and flows back into the draft', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says('20 1/4 oz football heads in pink glitter, 3/0 hooks, no guard, no skirt, to Ohio');
      await buyer.taps('Ask the maker');
      expect(maker.sees()).toContain('pink glitter');
      await maker.taps('Can do, +$0.50');
      expect(buyer.sees()).toMatch(/yes.*\$0\.50/s);
      const summary = await buyer.taps('Go on with it');
      expect(summary).toContain('pink glitter');
      expect(summary).toContain('$0.50');
      await buyer.taps('Order this');
      expect(desk().lots['K-1001-1']?.spec.paint).toBe('~pink glitter');
      expect(desk().orders['K-1001']?.money.lines[0]?.each).toBe(95 + 25 + 50);
    }));

  test('is refused with one tap, and the buyer chooses something else', () =>
    told(async ({ buyer, maker }) => {
      await buyer.says('20 1/4 oz football heads in pink glitter, 3/0 hooks, no guard, no skirt, to Ohio');
      await buyer.taps('Ask the maker');
      await maker.taps('Cannot do it');
      expect(buyer.sees()).toMatch(/cannot/);
      await buyer.taps('Go on with it');
      expect(buyer.sees()).toContain('What color?');
      await buyer.taps('White');
      expect(buyer.sees()).toContain('Nothing is ordered yet');
    }));

  test('stock that never comes is the maker’s to let pass', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says('450 3/4 oz flipping heads, 6/0, black, no guard, no skirt, to Ohio');
      expect(buyer.sees()).toMatch(/6\/0/);
      await buyer.taps('Ask the maker');
      await maker.taps('Can do');
      await buyer.taps('Go on with it');
      await buyer.taps('Order this');
      expect(desk().orders['K-1001']).toBeDefined();
    }));

  test('a held rule on lead waits for the maker', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says('25 quarter ounce football black, 3/0, no guard, no skirt, to Maine');
      expect(buyer.sees()).toContain('Maine');
      expect(buyer.buttons().join()).toContain('tin');
      await buyer.taps('Ask the maker');
      expect(maker.sees()).toContain('Maine');
      await maker.taps('Cannot do it');
      expect(desk().orders).toEqual({});
    }));
});

describe('questions before an order', () => {
  test('what is not held, what a head costs, and when', () =>
    told(async ({ buyer }) => {
      expect(await buyer.says('do you have pink?')).toMatch(/No “pink”.*chartreuse/s);
      expect(buyer.buttons()).toContain('Ask the maker');
      expect(await buyer.says('got any 3/8 footballs?')).toContain('Yes, that can be made: 3/8 oz football head');
      await buyer.says('football, 3/8, black');
      await buyer.says('how much is it?');
      expect(buyer.chat().join('\n')).toContain('about $1.30 each');
      expect(buyer.sees()).toContain('So far');
    }));

  test('the price list is for the buyer too, and a wish to order is welcome', () =>
    told(async ({ buyer }) => {
      await buyer.says('how much are your jigs?');
      expect(buyer.chat().join('\n')).toContain('Price list');
      await buyer.says('hi, need some jigs');
      expect(buyer.chat().join('\n')).toContain('Gladly');
    }));

  test('in Spanish as well', () =>
    told(
      async ({ buyer }) => {
        expect(await buyer.says('¿qué colores tienen?')).toMatch(/negro/);
        await buyer.says('30 football, 3/8, negro, cuanto antes');
        expect(buyer.sees()).toContain('el primer día que puedo prometer');
      },
      { language: 'es' },
    ));
});

describe('words that lean on what was said', () => {
  test('the same but white, 10 more of those, and the second line out', () =>
    told(async ({ buyer, desk }) => {
      const lines = () => desk().drafts[BUYER]?.lines.map(({ spec, quantity }) => [quantity, spec.paint]);
      await buyer.says(WHOLE);
      await buyer.says('same but white');
      expect(lines()).toEqual([
        [25, 'green-pumpkin'],
        [25, 'white'],
      ]);
      await buyer.says('another 10 of those');
      expect(lines()?.map(([quantity]) => quantity)).toEqual([25, 35]);
      await buyer.says('drop the second line');
      expect(lines()).toEqual([[25, 'green-pumpkin']]);
    }));

  test('like last time, priced and checked anew', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH');
      await buyer.says('same as last time but 48 of them');
      expect(desk().drafts[BUYER]?.lines.map(({ spec, quantity }) => [quantity, spec.style])).toEqual([
        [48, 'football'],
      ]);
    }));

  test('an order again by button, and by a link', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH');
      await buyer.says('K-1001');
      const again = await buyer.taps('Order K-1001 again');
      expect(again).toContain('Nothing is ordered yet');
      await buyer.taps('Start over');
      expect(await buyer.says('/start again-K-1001')).toContain('Nothing is ordered yet');
      await buyer.taps('Order this');
      expect(Object.keys(desk().orders)).toEqual(['K-1001', 'K-1002']);
    }));

  test('a correction and one more head in one message keep to their lines', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('30 football heads in black, 3/8');
      await buyer.says('make it 40, and add 10 swim jigs 1/4 white');
      expect(desk().drafts[BUYER]?.lines.map(({ spec, quantity }) => [quantity, spec.style, spec.paint])).toEqual([
        [40, 'football', 'black'],
        [10, 'swim', 'white'],
      ]);
    }));

  test('a line of 50 is parted by what it left open, and a word aside goes to the part it names', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('50 ball heads, black');
      await buyer.says('25 1/4 and 25 1/8');
      await buyer.says('size 2 on the eighths');
      await buyer.says('10 3/8 white');
      expect(
        desk().drafts[BUYER]?.lines.map(({ spec, quantity }) => [
          quantity,
          spec.style,
          spec.weight,
          spec.hook,
          spec.paint,
        ]),
      ).toEqual([
        [25, 'ball', '1/4', undefined, 'black'],
        [25, 'ball', '1/8', '2', 'black'],
        [10, 'ball', '3/8', undefined, 'white'],
      ]);
    }));

  test('what was unclear and is said again is not asked about any more', () =>
    told(async ({ buyer }) => {
      await buyer.says('20 football, 3/8, black, to Canada, by next friday');
      const now = await buyer.says('to Ontario, by December 11');
      expect(now).toContain('to Ontario');
      expect(now).not.toMatch(/did not understand|next friday/);
    }));

  test('an unclear day is asked about, with the days it may be', () =>
    told(async ({ buyer, desk }) => {
      expect(await buyer.says(`${WHOLE}, next friday please`)).toContain('By which day');
      expect(buyer.buttons()).toEqual(expect.arrayContaining(['Fri, Dec 4', 'Fri, Dec 11', 'No fixed day']));
      expect(await buyer.taps('Fri, Dec 11')).toContain('Nothing is ordered yet');
      expect(desk().drafts[BUYER]?.needBy).toBe('2026-12-11');
    }));

  test('as soon as possible is what is promised anyway', () =>
    told(async ({ buyer }) => {
      expect(await buyer.says('30 football heads in black, 3/8, asap')).toContain('the earliest day I can promise');
    }));

  test('an order is cancelled, or asked for again, by its number', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH');
      expect(await buyer.says('again K-1001')).toContain('Nothing is ordered yet');
      expect(await buyer.says('cancel k1001')).toMatch(/Cancel/);
      expect(desk().drafts[BUYER]?.lines).toHaveLength(1);
      await buyer.taps('Yes, cancel it');
      expect(desk().orders).toEqual({});
    }));

  test('a link to a style opens it', () =>
    told(async ({ buyer, other }) => {
      await buyer.says('start over');
      expect(await buyer.says('/start swim')).toContain('What weight?');
      expect(await other.says('/start ../../etc')).toMatch(/Which style|Hello/);
    }));

  test('an answer is read in the light of its question', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('football in black');
      await buyer.says('3/8');
      expect(desk().drafts[BUYER]?.lines[0]?.spec.weight).toBe('3/8');
      await buyer.says('20');
      expect(desk().drafts[BUYER]?.lines[0]?.quantity).toBe(20);
      await buyer.says('yes');
      expect(desk().drafts[BUYER]?.lines[0]?.spec.hook).toBe('4/0');
    }));

  test('a changed message is taken only when the buyer says so', () =>
    told(async ({ buyer, desk, rehearsal, settle }) => {
      await buyer.says('30 swim heads in white, 3/8');
      const message = rehearsal.chats.messagesOf(BUYER).findLast(({ from }) => !from.is_bot);
      rehearsal.chats.edit(message?.message_id ?? 0, '40 swim heads in white, 3/8');
      await settle();
      expect(desk().drafts[BUYER]?.lines[0]?.quantity).toBe(30);
      await buyer.taps('Go by the new words');
      expect(desk().drafts[BUYER]?.lines[0]?.quantity).toBe(40);
    }));

  test('photos that come together are kept with the line and answered once', () =>
    told(async ({ buyer, desk, rehearsal, settle }) => {
      await buyer.says('30 swim heads in white, 3/8');
      const before = buyer.chat().length;
      const picture = {
        name: 'a.png',
        mediaType: 'image/png',
        bytes: Buffer.from(
          'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
          'base64',
        ),
      };
      rehearsal.chats.sendAlbum(BUYER, [picture, { ...picture, name: 'b.png' }, { ...picture, name: 'c.png' }]);
      await settle();
      expect(desk().drafts[BUYER]?.lines[0]?.photos).toHaveLength(3);
      expect(buyer.chat().length - before).toBeLessThanOrEqual(2);
    }));
});

describe('en español', () => {
  test('un pedido por toques, con el resumen en español', () =>
    told(
      async ({ buyer, desk }) => {
        expect(buyer.chat().join('\n')).toMatch(/¿/);
        await buyer.taps('Cabeza football');
        await buyer.taps('1/2 oz');
        await buyer.taps('Negro');
        await buyer.taps('Lo usual, 25');
        const summary = await buyer.taps('Minnesota');
        expect(summary).toMatch(/todavía no hay nada pedido|nada pedido|no se ha pedido/i);
        expect(buyer.count()).toEqual({ taps: 5, said: 0 });
        await buyer.taps(buyer.buttons()[0] ?? '');
        expect(Object.keys(desk().orders)).toEqual(['K-1001']);
      },
      { language: 'es' },
    ));

  test('the buyer can change the language at any time', () =>
    told(async ({ buyer }) => {
      await buyer.says('español');
      expect(buyer.sees()).toMatch(/pedido/);
      await buyer.says('english');
      expect(buyer.sees()).toMatch(/order/i);
    }));
});
