import { GrammyError, HttpError } from 'grammy';
import type { Outcome } from '../../app/outcome.ts';

/** What a failed call means. The error itself is never kept: it holds the address with the token, or what was to be sent. */
export function outcomeOf(error: unknown): Outcome {
  if (error instanceof GrammyError) return refusal(error);
  return error instanceof HttpError && isUnsent(error.error) ? { is: 'unsent' } : { is: 'unknown' };
}

function refusal({ error_code: code, description, parameters }: GrammyError): Outcome {
  if (code === 429) return { is: 'wait', seconds: Math.max(1, parameters.retry_after ?? 5) };
  if (code === 401) return { is: 'revoked' };
  if (code >= 500) return { is: 'unknown' };
  return (
    SAYINGS.find(([says]) => says.test(description))?.[1] ??
    (code === 403 ? { is: 'unreachable' } : { is: 'refused', code })
  );
}

/** The platform has one number, 400, for many causes; its words tell them apart. */
const SAYINGS: readonly (readonly [RegExp, Outcome])[] = [
  [/message is not modified/i, { is: 'same' }],
  [/query is too old|query ID is invalid/i, { is: 'same' }],
  [
    /message to edit not found|message can't be edited|MESSAGE_ID_INVALID|there is no text in the message to edit|no caption in the message/i,
    { is: 'gone' },
  ],
  [
    /chat not found|user is deactivated|bot was blocked|user not found|PEER_ID_INVALID|bot can't initiate/i,
    { is: 'unreachable' },
  ],
];

/** No connection came about, so nothing was sent. */
const UNSENT = ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'EHOSTUNREACH', 'ENETUNREACH', 'ENETDOWN', 'EADDRNOTAVAIL'];

const isUnsent = (error: unknown): boolean =>
  typeof error === 'object' && error !== null && 'code' in error && UNSENT.includes(String(error.code));
