import type { z } from 'zod';
import type { Instant } from '../../domain/craft/time.ts';
import type { Chats, Step } from './chats.ts';
import type { Parameters } from './payload.ts';

/** The platform's "no": an HTTP status and a sentence. The sentences are not published; they are those seen in practice, from memory. */
export type Refusal = Readonly<{ code: number; description: string; retryAfter?: number }>;
export type Outcome = Step<unknown> | Refusal;
export type Call = Parameters & Readonly<{ at: Instant }>;
/** One method of the API: what it makes of the chats, or why it refuses. */
export type Method = (chats: Chats, call: Call) => Outcome;

/** A method whose parameters must first pass `schema`; parameters it does not name are ignored, as on the platform. */
export const method =
  <T>(schema: z.ZodType<T>, act: (chats: Chats, fields: T, call: Call) => Outcome): Method =>
  (chats, call) => {
    const parsed = schema.safeParse(call.payload);
    if (parsed.success) return act(chats, parsed.data, call);
    const [issue] = parsed.error.issues;
    return badRequest(`parameter ${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'cannot be read'}`);
  };

export const badRequest = (what: string): Refusal => ({ code: 400, description: `Bad Request: ${what}` });
export const forbidden = (what: string): Refusal => ({ code: 403, description: `Forbidden: ${what}` });

export const isRefusal = (value: object): value is Refusal => 'code' in value && 'description' in value;

export const done = (chats: Chats): Outcome => ({ chats, result: true });
