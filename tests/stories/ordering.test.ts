import { describe, expect, test } from 'vitest';
import { told } from './story.ts';

const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

describe('ordering', () => {
  test('taps only: six taps to a usual order', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.taps('Football head');
      await buyer.taps('1/2 oz');
      await buyer.taps('Green pumpkin');
      await buyer.taps('As usual, 25');
      const summary = await buyer.taps('Minnesota');
      expect(summary).toContain('Nothing is ordered yet');
      expect(summary).toContain('25 × 1/2 oz football head, 4/0 hook, green pumpkin');
      expect(summary).toContain('wire keeper');
      expect(await buyer.taps('Order this')).toContain('K-1001');
      expect(buyer.count()).toEqual({ taps: 6, said: 0 });
      expect(maker.sees()).toContain('New order K-1001 from Sam');
      expect(Object.keys(desk().orders)).toEqual(['K-1001']);
      const address = await buyer.says('Sam Fisher\n12 Shore Road\nDuluth, MN 55800');
      expect(address).toContain('12 Shore Road');
      expect(maker.sees()).toContain('12 Shore Road');
    }));

  test('one message only: said once, confirmed once', () =>
    told(async ({ buyer, desk }) => {
      const summary = await buyer.says(WHOLE);
      expect(summary).toContain('25 × 1/4 oz football head, 3/0 hook, green pumpkin, black guard');
      expect(summary).toContain('TOTAL: $');
      expect(summary).toMatch(/Ships \w+day, \w+ \d+/);
      expect(await buyer.taps('Order this')).toContain('K-1001');
      expect(buyer.count()).toEqual({ taps: 1, said: 1 });
      expect(desk().lots['K-1001-1']?.spec).toEqual({
        style: 'football',
        weight: '1/4',
        hook: '3/0',
        paint: 'green-pumpkin',
        guard: 'black',
        keeper: 'wire',
        dressing: 'none',
        metal: 'lead',
      });
    }));

  test('mixed: what was said is not asked again', () =>
    told(async ({ buyer, desk }) => {
      const weight = await buyer.says('30 swim heads in white');
      expect(weight).toContain('What weight?');
      await buyer.taps('3/8 oz');
      expect(buyer.buttons()).toContain('As usual');
      await buyer.taps('Choose each part');
      await buyer.says('3/0');
      await buyer.taps('Clear');
      await buyer.taps('White skirt');
      expect(await buyer.says('wisconsin')).toContain('Postage to Wisconsin');
      await buyer.says('order it');
      expect(desk().lots['K-1001-1']?.spec).toMatchObject({
        style: 'swim',
        weight: '3/8',
        hook: '3/0',
        guard: 'clear',
        dressing: 'skirt-white',
      });
    }));

  test('several lines in one message, priced together', () =>
    told(async ({ buyer, desk }) => {
      const summary = await buyer.says(
        '25 1/8 ball heads and 25 1/4 ball heads, all black, size 1 hooks, ship to Iowa',
      );
      expect(summary).toContain('1/8 oz ball head');
      expect(summary).toContain('1/4 oz ball head');
      await buyer.taps('Order this');
      expect(Object.keys(desk().lots)).toEqual(['K-1001-1', 'K-1001-2']);
    }));

  test('a slot changed at the summary, and back to the summary', () =>
    told(async ({ buyer }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Change something');
      expect(await buyer.taps('Color')).toContain('What color?');
      const again = await buyer.taps('White');
      expect(again).toContain('white');
      expect(again).toContain('Nothing is ordered yet');
      expect(await buyer.says('make that 30')).toContain('30 × 1/4 oz football head');
      expect(await buyer.says('black guards instead of that, and ship it to Texas')).toContain('Postage to Texas');
    }));

  test('a second line added by button, and taken out again', () =>
    told(async ({ buyer }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Add another head');
      const both = await buyer.says('10 1/16 ball heads, #4, red');
      expect(both).toContain('1/16 oz ball head');
      await buyer.taps('Change something');
      await buyer.taps('Take line 2 out');
      expect(buyer.sees()).not.toContain('1/16 oz');
    }));

  test('a refusal with its reason, and the way out taken', () =>
    told(async ({ buyer, desk }) => {
      const refusal = await buyer.says('25 1/4 ball heads black 2/0 with a black weedguard to Ohio');
      expect(refusal).toMatch(/no (guard|base)?.*hole/i);
      await buyer.taps('Make it no guard');
      expect(buyer.sees()).toContain('Nothing is ordered yet');
      await buyer.taps('Order this');
      expect(desk().lots['K-1001-1']?.spec.guard).toBe('none');
    }));

  test('painted bismuth-tin is refused because it would melt in the oven', () =>
    told(async ({ buyer }) => {
      expect(await buyer.says('20 3/8 swim black bismuth 4/0 no guard no skirt to Ohio')).toMatch(/oven|bake|melt/i);
      await buyer.taps('Make it unpainted');
      expect(buyer.sees()).toContain('Nothing is ordered yet');
    }));

  test('lead to New Hampshire is refused, tin is offered and can be ordered', () =>
    told(async ({ buyer, desk }) => {
      const refusal = await buyer.says('25 quarter ounce football black, 3/0, no guard, no skirt, to New Hampshire');
      expect(refusal).toContain('New Hampshire');
      expect(refusal).toMatch(/check your local rules/i);
      await buyer.taps('Make it tin');
      await buyer.taps('Order this');
      expect(desk().lots['K-1001-1']?.spec.metal).toBe('tin');
    }));

  test('stock that waits: the quote says for what and until when', () =>
    told(async ({ buyer }) => {
      const summary = await buyer.says('100 1 oz flipping heads, 6/0, black, no guard, no skirt, to Ohio');
      expect(summary).toContain('6/0');
      expect(summary).toContain('Dec 3');
      // Not before the hooks are here, and with room for a late delivery.
      expect(summary).toMatch(/Ships \w+day, December (?:[5-9]|1\d)\./);
    }));

  test.each([
    ['Canada', 'Canada'],
    ['to the US', 'United States'],
  ])('“%s” for a place is asked on from, for the state or province', (said, country) =>
    told(async ({ buyer }) => {
      await buyer.says('24 quarter ounce football green pumpkin, 3/0, black guard, no skirt');
      expect(await buyer.says(said)).toContain(`Which state or province of ${country}?`);
      expect(buyer.sees()).not.toContain('did not understand');
      expect(await buyer.says('Ontario')).toMatch(/Postage to Ontario/);
    }),
  );

  test('the quote says that one head more is free, where it is', () =>
    told(async ({ buyer }) => {
      const summary = await buyer.says('24 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
      expect(summary).toMatch(/less \$0\.38 for quantity = \$35\.62\n25 would cost the same: 1 more is free\./);
      expect(await buyer.says('make it 25')).toContain('= $35.62');
      expect(buyer.sees()).not.toContain('would cost the same');
    }));

  test('cancelled before the first pour: stock is free again, a second press changes nothing', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await buyer.says('Sam Fisher, 12 Shore Road, Columbus');
      await buyer.says('K-1001');
      await buyer.taps('Cancel this order');
      expect(Object.keys(desk().orders)).toEqual(['K-1001']);
      await buyer.taps('Yes, cancel it');
      expect(desk().orders).toEqual({});
      expect(desk().lots).toEqual({});
      expect(maker.sees()).toContain('K-1001');
      await buyer.forges('cancel-yes|K-1001|0|-');
      expect(desk().orders).toEqual({});
    }));

  test('cancelled after the first pour: a question to the maker', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says(WHOLE);
      await buyer.taps('Order this');
      await maker.says('bench');
      await maker.taps('Pour');
      await buyer.says('K-1001');
      await buyer.taps('Cancel this order');
      await buyer.taps('Yes, cancel it');
      expect(desk().orders['K-1001']).toBeDefined();
      await maker.taps('Keep making it');
      expect(buyer.sees()).toContain('K-1001');
      expect(desk().orders['K-1001']?.cancelAskedAt).toBeNull();
    }));

  test('accepted twice is ordered once', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says(WHOLE);
      const draft = desk().drafts['201'];
      await buyer.taps('Order this');
      await buyer.forges(`accept|${draft?.id}|${draft?.version.toString(36)}|-`);
      expect(Object.keys(desk().orders)).toEqual(['K-1001']);
    }));

  test('days of silence lose nothing', () =>
    told(async ({ buyer, later }) => {
      await buyer.says('30 swim heads in white');
      await later(3 * 24 * 60);
      expect(await buyer.says('/start')).toMatch(/swim/);
      await buyer.taps('Go on with it');
      expect(buyer.sees()).toContain('What weight?');
    }));

  test('back, help, start over and a person work in the middle of an order', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.taps('Football head');
      await buyer.taps('1/4 oz');
      expect(await buyer.says('back')).toContain('What weight?');
      await buyer.says('help');
      await buyer.says('ask the maker');
      await buyer.says('Do you ever pour 5/16?');
      expect(maker.sees()).toContain('Do you ever pour 5/16?');
      await maker.taps('Reply');
      await maker.says('Next spring, when the new mold is here.');
      expect(buyer.sees()).toContain('Next spring');
      await buyer.taps('Go on with it');
      expect(buyer.sees()).toContain('What weight?');
      await buyer.says('cancel');
      await buyer.taps('Start over');
      expect(desk().drafts['201']).toBeUndefined();
    }));
});
