import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { readMultipart } from '../../../src/adapters/rehearsal/multipart.ts';
import { parametersOf } from '../../../src/adapters/rehearsal/payload.ts';
import { pictureSize } from '../../../src/adapters/rehearsal/pictures.ts';
import { pushedClock } from '../../../src/adapters/rehearsal/pushedClock.ts';
import { runsOf } from '../../../src/adapters/rehearsal/runs.ts';
import { commandsFor } from '../../../src/adapters/rehearsal/view.ts';
import { PIXEL } from './standIn.ts';

test('the clock is pushed forward by minutes or to an instant, and never back', () => {
  const clock = pushedClock({ real: () => 1000 });
  let told = 0;
  const stop = clock.onPush(() => void told++);
  clock.push(1.5);
  expect(clock.now()).toBe(91_000);
  clock.pushTo(100_000);
  expect(clock.now()).toBe(100_000);
  clock.pushTo(5);
  clock.push(-10);
  expect(clock.now()).toBe(100_000);
  stop();
  clock.push(1);
  expect([told, clock.ahead()]).toEqual([4, 159_000]);
  expect(pushedClock({ real: () => 1000, ahead: clock.ahead() }).now()).toBe(clock.now());
});

const multipart = (parts: readonly string[]) =>
  Buffer.from(parts.map((part) => `--XX\r\n${part}\r\n`).join('') + '--XX--\r\n', 'latin1');

test('a form is read whether its part headers are spaced and quoted or not', () => {
  const body = multipart([
    'content-disposition:form-data;name="chat_id"\r\n\r\n5',
    'Content-Disposition: form-data; name="caption"\r\n\r\n',
    'content-disposition:form-data;name="a1";filename=one.png\r\ncontent-type:image/png\r\n\r\nbytes\r\n\r\n--X',
    'Content-Disposition: form-data; name="a2"; filename="two b.png"\r\n\r\n',
  ]);
  expect(readMultipart(body, 'multipart/form-data; boundary=XX')).toEqual({
    fields: { chat_id: '5', caption: '' },
    uploads: {
      a1: { name: 'one.png', mediaType: 'image/png', bytes: Buffer.from('bytes\r\n\r\n--X') },
      a2: { name: 'two b.png', mediaType: 'application/octet-stream', bytes: Buffer.alloc(0) },
    },
  });
  expect(readMultipart(body, 'text/plain')).toBeUndefined();
});

test('whatever bytes a browser sends come out as they went in', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), fc.string({ unit: 'grapheme' }), async (bytes, caption) => {
      const form = new FormData();
      form.append('caption', caption);
      form.append('photo', new File([Buffer.from(bytes)], 'p.png'));
      const parameters = await parametersOf(new Request('http://127.0.0.1/', { method: 'POST', body: form }));
      expect(parameters?.uploads['photo']?.bytes).toEqual(Buffer.from(bytes));
      expect(parameters?.payload['caption']).toBe(caption.replaceAll(/\r?\n|\r/g, '\r\n')); // as the standard has browsers send line breaks
    }),
  );
});

test('numbers and lists in a form become values, words stay words', async () => {
  const body = new URLSearchParams({
    chat_id: '5',
    text: '25',
    message_ids: '[1,2]',
    disable_notification: 'true',
    callback_query_id: '99',
  });
  const parameters = await parametersOf(new Request('http://127.0.0.1/?limit=3', { method: 'POST', body }));
  const form = { chat_id: 5, text: '25', message_ids: [1, 2], disable_notification: true, callback_query_id: '99' };
  expect(parameters?.payload).toEqual({ limit: 3, ...form });
});

test('the size of a picture is read from its own bytes', () => {
  const jpeg = Buffer.from('ffd8ffe000040000ffc0000b080010002001011100', 'hex');
  expect(pictureSize(PIXEL)).toEqual({ width: 1, height: 1 });
  expect(pictureSize(jpeg)).toEqual({ width: 32, height: 16 });
  expect(pictureSize(Buffer.from('GIF89a'))).toBeUndefined();
  expect(pictureSize(PIXEL.subarray(0, 12))).toBeUndefined();
});

test('a text is cut where its looks change, nested looks and two-unit characters too', () => {
  const text = '🎣 25 heads';
  const runs = runsOf(text, [
    { type: 'bold', offset: 0, length: 5 },
    { type: 'italic', offset: 3, length: 2 },
  ]);
  expect(runs).toEqual([
    { text: '🎣 ', looks: ['bold'] },
    { text: '25', looks: ['bold', 'italic'] },
    { text: ' heads', looks: [] },
  ]);
  expect(runs.map((run) => run.text).join('')).toBe(text);
});

test('only web addresses become links', () => {
  const link = (url: string) => runsOf('here', [{ type: 'text_link', offset: 0, length: 4, url }])[0]?.href;
  expect(link('https://example.org/x')).toBe('https://example.org/x');
  expect(link('javascript:alert(1)')).toBeUndefined();
});

test("a person's own commands come before those of everyone, and their language before any", () => {
  const list = (scope: string, language: string, command: string) => ({
    scope,
    language,
    commands: [{ command, description: 'd' }],
  });
  const lists = [list('default', '', 'all'), list('default', 'de', 'alle'), list('chat 5', '', 'bench')];
  const seen = (id: number, languageCode: string) =>
    commandsFor(lists, { id, firstName: 'A', languageCode })[0]?.command;
  expect([seen(5, 'de'), seen(6, 'de'), seen(6, 'en'), seen(6, 'fr')]).toEqual(['bench', 'alle', 'all', 'all']);
  expect(commandsFor([], { id: 5, firstName: 'A', languageCode: 'en' })).toEqual([]);
});
