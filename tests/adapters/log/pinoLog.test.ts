import { expect, test } from 'vitest';
import { pinoLog } from '../../../src/adapters/log/pinoLog.ts';
import { codeOf, safely } from '../../../src/app/log.ts';

const TOKEN = '123456789:AAF-realistic_but_invented-token-000';

function lines(use: (log: ReturnType<typeof pinoLog>) => void): string[] {
  const out: string[] = [];
  use(pinoLog({ write: (line: string) => void out.push(line) }));
  return out;
}

test('an event is one line of JSON with its numbers and codes', () => {
  const [line = ''] = lines((log) => log('letter', { to: 7, kind: 'digest', outcome: 'sent' }));
  expect(JSON.parse(line)).toMatchObject({ msg: 'letter', to: 7, kind: 'digest', outcome: 'sent' });
});

test('what is not on the list, or is not a code, is left out', () => {
  const [line = ''] = lines((log) =>
    log('letter', { text: 'hello', name: 'Ann', code: '12 Pine St, Duluth', kind: TOKEN, to: null }),
  );
  expect(Object.keys(JSON.parse(line))).toEqual(['level', 'time', 'msg']);
});

test('an error is a sentence without anything that looks like a token', () => {
  const error = new Error(`request to https://api.example/bot${TOKEN}/sendMessage failed`);
  expect(safely(error)).toBe('request to https://api.example/bot[token]/sendMessage failed');
  expect(safely({ token: TOKEN })).not.toContain(TOKEN);
});

test.each([
  [Object.assign(new Error('x'), { code: 'ENOSPC' }), 'ENOSPC'],
  [Object.assign(new Error('x'), { code: 'my secret' }), 'Error'],
  [new TypeError('x'), 'TypeError'],
  ['thrown', 'unknown'],
])('the code of %s is %s', (error, code) => expect(codeOf(error)).toBe(code));
