import { describe, expect, test } from 'vitest';
import { told } from '../stories/story.ts';
import { BOT_API, SKIP_REASON } from './botApi.ts';

describe.skipIf(!BOT_API)(`every call of every story is one of the published API (${SKIP_REASON})`, () => {
  // Each story of tests/stories checks its calls as it ends; this one runs through every kind of call that the program makes.
  test('talk, pictures, edits, taps, menus', () =>
    told(async ({ buyer, maker, rehearsal }) => {
      await buyer.says('25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
      await buyer.taps('Change something');
      await buyer.taps('Color');
      await buyer.taps('Black');
      await buyer.taps('Order this');
      await maker.says('bench');
      await maker.taps('Pour');
      const made = new Set(rehearsal.calls.map(({ method }) => method));
      for (const method of [
        'getUpdates',
        'sendMessage',
        'sendPhoto',
        'editMessageMedia',
        'answerCallbackQuery',
        'setMyCommands',
      ])
        expect([...made]).toContain(method);
    }));
});
