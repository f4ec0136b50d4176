import { GrammyError, HttpError } from 'grammy';
import { expect, test } from 'vitest';
import { outcomeOf } from '../../../src/adapters/telegram/outcome.ts';

const refused = (error_code: number, description: string, parameters = {}) =>
  new GrammyError('Call failed', { ok: false, error_code, description, parameters }, 'sendMessage', { text: 'secret' });
const network = (code?: string) =>
  new HttpError('Network request failed', Object.assign(new Error('x'), code === undefined ? {} : { code }));

// The platform's wordings are from memory of its answers; its documentation does not list them.
test.each([
  [refused(429, 'Too Many Requests: retry after 7', { retry_after: 7 }), { is: 'wait', seconds: 7 }],
  [refused(429, 'Too Many Requests'), { is: 'wait', seconds: 5 }],
  [refused(400, 'Bad Request: message is not modified: specified new message content …'), { is: 'same' }],
  [refused(400, 'Bad Request: query is too old and response timeout expired or query ID is invalid'), { is: 'same' }],
  [refused(400, 'Bad Request: message to edit not found'), { is: 'gone' }],
  [refused(400, "Bad Request: message can't be edited"), { is: 'gone' }],
  [refused(400, 'Bad Request: there is no text in the message to edit'), { is: 'gone' }],
  [refused(400, 'Bad Request: message is too long'), { is: 'refused', code: 400 }],
  [refused(400, "Bad Request: can't parse entities"), { is: 'refused', code: 400 }],
  [refused(400, 'Bad Request: chat not found'), { is: 'unreachable' }],
  [refused(403, 'Forbidden: bot was blocked by the user'), { is: 'unreachable' }],
  [refused(403, 'Forbidden: user is deactivated'), { is: 'unreachable' }],
  [refused(403, 'Forbidden: something new'), { is: 'unreachable' }],
  [refused(401, 'Unauthorized'), { is: 'revoked' }],
  [refused(500, 'Internal Server Error'), { is: 'unknown' }],
  [refused(502, 'Bad Gateway'), { is: 'unknown' }],
  [network('ECONNREFUSED'), { is: 'unsent' }],
  [network('ENOTFOUND'), { is: 'unsent' }],
  [network('ECONNRESET'), { is: 'unknown' }],
  [network('ETIMEDOUT'), { is: 'unknown' }],
  [network(), { is: 'unknown' }],
  [new TypeError('a bug'), { is: 'unknown' }],
])('%s', (error, outcome) => expect(outcomeOf(error)).toEqual(outcome));
