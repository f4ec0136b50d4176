import { describe, expect, test } from 'vitest';
import { DOT, told } from './story.ts';

const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const TWO = '20 1/4 football, green pumpkin, 3/0, black guard, no skirt, and 30 1/8 ball white size 2, to Ohio';
const PINK = '20 1/4 oz football heads in pink glitter, 3/0 hooks, no guard, no skirt, to Ohio';

describe('a yes goes to whom it is meant for', () => {
  test('what is typed after “ask the maker” is passed on, however short', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Ask the maker');
      await buyer.says('ok');
      expect(maker.sees()).toContain('“ok”');
      expect(desk().orders).toEqual({});
    }));

  test('an answer of one word reaches the buyer', () =>
    told(async ({ buyer, maker }) => {
      await buyer.says('ask the maker');
      await buyer.says('do you take cash?');
      await maker.taps('Reply');
      await maker.says('yes');
      expect(buyer.sees()).toMatch(/yes/);
      expect(maker.sees()).toContain('Sam');
    }));

  test('after words with the maker a yes at the summary is asked back, and the button orders', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Ask the maker');
      await buyer.says('could the eyes be bigger?');
      await maker.taps('Reply');
      await maker.says('a little, ok?');
      expect(await buyer.says('ok')).toMatch(/Yes to the order, or to the maker/);
      expect(desk().orders).toEqual({});
      await buyer.taps('Order this');
      expect(Object.keys(desk().orders)).toEqual(['K-1001']);
    }));

  test('without such words a yes at the summary orders', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.says('yes');
      expect(Object.keys(desk().orders)).toEqual(['K-1001']);
    }));

  test('a yes to what cannot be made chooses nothing', () =>
    told(async ({ buyer }) => {
      const stuck = await buyer.says('20 1/8 ball heads with a black guard');
      expect(stuck).toContain('cannot be made');
      await buyer.says('yes');
      expect(buyer.sees()).toBe(stuck);
      expect(buyer.chat().at(-2)).toContain('“make it 30”');
    }));
});

describe('a wish and what it costs more', () => {
  test('the extra leaves with the wish, also on another line', () =>
    told(async ({ buyer, maker }) => {
      await buyer.says(PINK);
      await buyer.taps('Ask the maker');
      await maker.taps('Can do, +$0.50');
      expect(await buyer.taps('Go on with it')).toContain('your wish $0.50');
      const both = await buyer.says('same but white');
      expect(both.match(/your wish/g)).toHaveLength(1);
      expect(await buyer.says('make the first one black')).not.toContain('your wish');
    }));

  test('ordered again the wish costs the same', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(PINK);
      await buyer.taps('Ask the maker');
      await maker.taps('Can do, +$0.50');
      await buyer.taps('Go on with it');
      await buyer.taps('Order this');
      await buyer.says('Sam, 1 Main St, Columbus OH 43004');
      expect(await buyer.says('again K-1001')).toContain('your wish $0.50');
      await buyer.taps('Order this');
      const [first, second] = ['K-1001', 'K-1002'].map((id) => desk().orders[id]?.money.total);
      expect(second).toBe(first);
    }));

  test('what the maker offers in words instead is one tap for the buyer', () =>
    told(async ({ buyer, maker }) => {
      await buyer.says(PINK);
      await buyer.taps('Ask the maker');
      await maker.taps('Reply');
      await maker.says('No glitter here, but orange comes close');
      expect(buyer.sees()).toContain('orange comes close');
      expect(await buyer.taps('Orange')).toMatch(
        /orange[\s\S]*Nothing is ordered yet|Nothing is ordered yet[\s\S]*orange/,
      );
    }));

  test('an offer with a price of its own is no button that forgets the price', () =>
    told(async ({ buyer, maker }) => {
      await buyer.says(PINK);
      await buyer.taps('Ask the maker');
      await maker.taps('Reply');
      await maker.says('orange for 25 cents more');
      expect(buyer.sees()).toContain('25 cents');
      expect(buyer.buttons()).toEqual(['Go on with it']);
    }));

  test('a color chosen meanwhile is not overridden by a late yes', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(PINK);
      await buyer.taps('Ask the maker');
      await buyer.says('black');
      await maker.taps('Can do, +$0.50');
      expect(desk().drafts[201]?.lines[0]).toMatchObject({ spec: { paint: 'black' }, extra: 0 });
    }));
});

describe('words that name a line', () => {
  test('change that line and no other', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(TWO);
      await buyer.says('change line 1 guard to green');
      await buyer.says('make the first one 40');
      await buyer.says('line 2 red');
      await buyer.says('make line 2 35');
      expect(desk().drafts[201]?.lines).toMatchObject([
        { quantity: 40, spec: { guard: 'green', paint: 'green-pumpkin' } },
        { quantity: 35, spec: { paint: 'red' } },
      ]);
      await buyer.says('remove line 1');
      expect(desk().drafts[201]?.lines).toMatchObject([{ quantity: 35, spec: { style: 'ball' } }]);
    }));

  test.each([
    ['drop the first', [{ spec: { style: 'ball' } }]],
    ['black hooks no, brown guard on the first one', [{ spec: { guard: 'brown' } }, { spec: { style: 'ball' } }]],
    ['paint the first one black', [{ spec: { paint: 'black' } }, { spec: { paint: 'white' } }]],
    ['the first in brown', [{ spec: { paint: 'brown' } }, { spec: { paint: 'white' } }]],
    ['20 more of the first', [{ quantity: 40 }, { quantity: 30 }]],
    ['line 7 red', [{ spec: { paint: 'green-pumpkin' } }, { spec: { paint: 'white' } }]],
    ['all of them red', [{ spec: { paint: 'red' } }, { spec: { paint: 'red' } }]],
    ['make it all tin', [{ spec: { metal: 'tin' } }, { spec: { metal: 'tin' } }]],
    ['lines 1 and 2 in black', [{ quantity: 20, spec: { paint: 'green-pumpkin' } }, { quantity: 30 }]],
    [
      'make 10 of them red',
      [{ quantity: 20 }, { quantity: 20, spec: { paint: 'white' } }, { quantity: 10, spec: { paint: 'red' } }],
    ],
  ])('“%s” changes what it names, or nothing', (words, lines) =>
    told(async ({ buyer, desk }) => {
      await buyer.says(TWO);
      await buyer.says(words);
      expect(desk().drafts[201]?.lines).toMatchObject(lines);
    }),
  );

  test('a complaint about the last order is no order', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam, 1 Main St, Columbus OH 43004');
      await buyer.says('the last order had a bent hook');
      expect(desk().drafts[201]?.lines[0]?.quantity ?? null).toBeNull();
    }));

  test('name the guard that changes, not the paint', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(TWO);
      await buyer.says('change guard on line 1 to brown');
      expect(desk().drafts[201]?.lines[0]).toMatchObject({ spec: { guard: 'brown', paint: 'green-pumpkin' } });
    }));
});

describe('a question leaves the draft as it is', () => {
  test('how much for 50 tells the price of 50', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('24 1/4 football, green pumpkin');
      await buyer.says('how much for 50?');
      expect(buyer.chat().at(-2)).toMatch(/50 heads would be about \$54\.00/);
      expect(desk().drafts[201]?.lines[0]?.quantity).toBe(24);
    }));

  test('how long it takes is not answered with a price', () =>
    told(async ({ buyer }) => {
      await buyer.says('24 1/4 football, green pumpkin');
      await buyer.says('how long does it take?');
      expect(buyer.chat().at(-2)).toMatch(/comes with the summary/);
      expect(buyer.chat().join()).not.toContain('$');
    }));

  test('a whole order answers with its own price and day', () =>
    told(async ({ buyer }) => {
      const summary = await buyer.says(WHOLE);
      expect(await buyer.says('how much is it?')).toBe(summary);
      expect(await buyer.says('when would it ship?')).toBe(summary);
    }));
});

describe('nothing that was said is lost', () => {
  test('an order made again takes the place of an open draft only after a tap', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam, 1 Main St, Columbus OH 43004');
      await buyer.says('50 3/8 swim white');
      expect(await buyer.says('again K-1001')).toMatch(/Throw this away and order K-1001 again/);
      expect(desk().drafts[201]?.lines[0]?.spec.style).toBe('swim');
      await buyer.taps('Order K-1001 again');
      expect(desk().drafts[201]?.lines[0]?.spec.style).toBe('football');
    }));

  test('a link to a style adds it to an order that is whole, and begins one that is not', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.says('/start swim');
      expect(desk().drafts[201]?.lines.map(({ spec }) => spec.style)).toEqual(['football', 'swim']);
    }));

  test('a change said where the address is asked for is no address', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('make that 30');
      await buyer.says('same but white');
      expect(desk().orders['K-1001']?.address).toBeNull();
    }));

  test.each(['I will send it later', 'Oops I wanted 30', 'no thanks, cancel it', 'please make the eyes clean'])(
    '“%s” is no address, and the true one after it is taken',
    (words) =>
      told(async ({ buyer, desk }) => {
        await buyer.says(WHOLE);
        await buyer.taps('Order this');
        await buyer.says(words);
        expect(desk().orders['K-1001']?.address).toBeNull();
        expect(await buyer.says('Sam Smith, 12 Main St, Dayton OH 45402')).toContain('The parcel of K-1001 goes to');
      }),
  );

  test('a second whole address takes the place of the first, and begins no order', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam Smith, 12 Main St, Dayton OH 45402');
      await buyer.says('no, Sam Smith\n400 White Oak Dr\nDayton, OH 45402');
      expect(desk().orders['K-1001']?.address).toBe('Sam Smith\n400 White Oak Dr\nDayton, OH 45402');
      expect(desk().drafts[201]).toBeUndefined();
    }));

  test('words under a photo are kept with the head for the maker', () =>
    told(async ({ buyer, rehearsal, settle, desk }) => {
      await buyer.says('24 1/4 football, green pumpkin');
      const eyes = { name: 'p.png', mediaType: 'image/png', bytes: Buffer.from(DOT, 'base64') } as const;
      rehearsal.chats.sendPhoto(201, eyes, 'make the eye bigger like this');
      await settle();
      expect(desk().drafts[201]?.lines[0]?.said.at(-1)).toBe('make the eye bigger like this');
      expect(buyer.chat().join()).not.toContain('did not get that');
    }));

  test('a day that is over is asked again, and no day will do', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      expect(await buyer.says('by dec 1 2025')).toContain('By which day');
      expect(await buyer.says('no date')).toContain('Nothing is ordered yet');
      expect(desk().drafts[201]?.needBy).toBeNull();
    }));
});

describe('en español', () => {
  test('una orden breve se lee en el idioma de quien la escribe', () =>
    told(
      async ({ buyer, desk }) => {
        await buyer.says('24 redonda 3/8 negro, a Ohio');
        expect(desk().drafts[201]).toMatchObject({
          shipTo: 'US-OH',
          lines: [{ quantity: 24, spec: { style: 'ball', weight: '3/8', paint: 'black' } }],
        });
      },
      { language: 'es' },
    ));
});
