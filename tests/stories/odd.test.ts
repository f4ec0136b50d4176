import { describe, expect, test } from 'vitest';
import { told } from './story.ts';

const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

describe('what people send that is no order', () => {
  test.each(['photo', 'sticker', 'voice', 'location'] as const)(
    'a %s gets a fitting answer and the draft stays',
    (thing) =>
      told(async ({ buyer, desk }) => {
        await buyer.says('30 swim heads in white');
        const before = desk().drafts['201']?.lines[0]?.spec;
        await buyer.sends(thing);
        expect(buyer.chat().length).toBeGreaterThan(3);
        expect(desk().drafts['201']?.lines[0]?.spec).toEqual(before);
        if (thing === 'photo') expect(desk().drafts['201']?.lines[0]?.photos).toHaveLength(1);
      }),
  );

  test.each([
    ['nothing but spaces', '   '],
    ['unknown words', 'flurble the snorkwidget'],
    ['right-to-left text', 'שלום עולם'],
    ['4,096 characters', 'x'.repeat(4096)],
    ['emoji', '🎣'.repeat(50)],
    ['markup', '<b>bold</b> & _under_ *star* [link](http://example.com)'],
    ['controls and overrides', 'a\u202Eb\u0000c\u2066d'],
  ])('%s: a clear sentence and a way on', (_, text) =>
    told(async ({ buyer, desk }) => {
      await buyer.says('30 swim heads in white');
      const before = desk().drafts['201']?.lines;
      await buyer.says(text);
      expect(buyer.sees()).not.toMatch(/undefined|NaN|Error/);
      expect(buyer.buttons().length).toBeGreaterThan(0);
      expect(desk().drafts['201']?.lines).toEqual(before);
    }),
  );

  test.each([['0 heads'], ['-5 heads'], ['1000000000 heads']])(
    '%s: refused with the numbers that can be made',
    (said) =>
      told(async ({ buyer, desk }) => {
        await buyer.says('1/4 oz football head in black, 3/0, no guard, no skirt');
        await buyer.says(said);
        expect(desk().orders).toEqual({});
        expect(buyer.sees()).toMatch(/how many|5|500/i);
      }),
  );

  test('never the same words three times', () =>
    told(async ({ buyer }) => {
      await buyer.taps('Football head');
      const answers: string[] = [];
      for (const said of ['flurb', 'snork', 'widget']) {
        const before = buyer.chat().length;
        await buyer.says(said);
        answers.push(
          buyer
            .chat()
            .slice(before + 1)
            .join('\n'),
        );
      }
      expect(new Set(answers).size).toBe(3);
      expect(answers[2]).toMatch(/person|maker/i);
    }));

  test('an unknown colour is said back and never dropped', () =>
    told(async ({ buyer }) => {
      await buyer.says('20 1/4 oz football heads in pink glitter, 3/0 hooks');
      expect(buyer.sees()).toContain('pink glitter');
    }));
});

describe('nobody gets in', () => {
  test.each([
    'bench|-|0|-',
    'start|-|0|pour/football-1/4-lead',
    'done|S1|0|-',
    'queue|-|0|-',
    'stock|-|0|-',
    'undo|-|0|-',
    'posted|K-1001|0|-',
    'grant-cancel|K-1001|0|-',
    'reply|Q1|0|-',
    'arrived|-|0|hook:60-flat-heavy:6/0@2026-12-03',
  ])('a buyer who forges %s is refused and nothing changes', (data) =>
    told(async ({ buyer, other, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      const { orders, lots, onHand, sessions } = desk();
      await other.forges(data);
      expect({ ...desk() }).toMatchObject({ orders, lots, onHand, sessions });
      expect(other.notices().at(-1)).toBeTruthy();
    }),
  );

  test.each(['order|K-1001|0|-', 'cancel|K-1001|0|-', 'cancel-yes|K-1001|0|-', 'readdress|K-1001|0|-'])(
    'another buyer who forges %s learns nothing',
    (data) =>
      told(async ({ buyer, other, desk }) => {
        await buyer.says(WHOLE);
        await buyer.taps('Order this');
        await buyer.says('Sam Fisher, 12 Shore Road, Columbus');
        const said = await other.forges(data);
        expect(said).not.toMatch(/football|Shore|Ohio/);
        expect(desk().orders['K-1001']).toBeDefined();
      }),
  );

  test('another buyer who types the order number learns nothing', () =>
    told(async ({ buyer, other }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      expect(await other.says('K-1001')).not.toMatch(/football|Ohio/);
    }));

  test.each([
    '',
    'rubbish',
    'answer|D1|0|style=nosuch',
    'answer|D1|zz|style=ball',
    'take|D1|0|99.99',
    `a|${'x'.repeat(60)}`,
    'answer|D9|0|style=ball',
    '__proto__|constructor|0|-',
  ])('button data “%s” is answered and does no harm', (data) =>
    told(async ({ buyer, desk }) => {
      await buyer.says('30 swim heads in white');
      const before = desk().drafts['201']?.lines;
      await buyer.forges(data);
      expect(desk().drafts['201']?.lines).toEqual(before);
    }),
  );

  test('an old button shows the draft as it is now instead of doing what it said', () =>
    told(async ({ buyer, desk }) => {
      await buyer.taps('Football head');
      await buyer.taps('1/4 oz');
      const old = desk().drafts['201'];
      await buyer.taps('Black');
      await buyer.forges(`answer|${old?.id}|${old?.version}|paint=white`);
      expect(desk().drafts['201']?.lines[0]?.spec.paint).toBe('black');
    }));

  test('a maker’s words typed by a buyer do nothing', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('bench');
      await buyer.says('garage 20');
      expect(desk().garageCelsius).toBeNull();
    }));
});
