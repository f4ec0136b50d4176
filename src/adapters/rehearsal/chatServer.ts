import type { Instant } from '../../domain/craft/time.ts';
import { isRefusal, type Refusal } from './call.ts';
import { METHODS } from './methods/table.ts';
import { pathOf } from './methods/showing.ts';
import { parametersOf, type Payload } from './payload.ts';
import { polling, type Deliver } from './polling.ts';
import type { Room } from './room.ts';

/** How a call is to fail: an answer of the test's own, none at all, or a cut line before or after the call took effect. */
export type Fault =
  Readonly<{ status: number; body?: unknown; retryAfter?: number }> | 'hang' | 'drop-before' | 'drop-after';
export type RecordedCall = Readonly<{ method: string; payload: Payload }>;
export type ChatServerParts = Readonly<{
  token: string;
  room: Room;
  now: () => Instant;
  fault?: (method: string, payload: Payload) => Fault | undefined;
  deliver?: Deliver;
}>;
export type ChatServer = Readonly<{
  /** Answers one HTTP request; `Response.error()` stands for a cut line. */
  answer(request: Request): Promise<Response>;
  calls: readonly RecordedCall[];
}>;

/** The platform's HTTP API (`/bot<token>/<method>` and `/file/bot<token>/<path>`) over the chats of one room. */
export function chatServer({
  token,
  room,
  now,
  fault = () => undefined,
  deliver = (batch) => batch,
}: ChatServerParts): ChatServer {
  const calls: RecordedCall[] = [];
  const poll = polling(room, deliver);

  const carryOut = async (name: string, request: Request): Promise<Response> => {
    const parameters = await parametersOf(request);
    if (!parameters) return refusalResponse({ code: 400, description: 'Bad Request: the body cannot be read' });
    const { payload } = parameters;
    calls.push({ method: name, payload });
    const trouble = fault(name, payload);
    if (trouble !== undefined && trouble !== 'drop-after') return troubled(trouble, request.signal);
    const answer = name === 'getUpdates' ? pollResponse(await poll(payload, request.signal)) : call(name, parameters);
    return trouble === 'drop-after' ? Response.error() : answer;
  };

  const call = (name: string, parameters: Parameters): Response => {
    const method = METHODS[name];
    if (!method) return refusalResponse({ code: 404, description: 'Not Found: method not found' });
    const outcome = method(room.read(), { ...parameters, at: now() });
    return isRefusal(outcome) ? refusalResponse(outcome) : resultResponse(room.change(() => outcome));
  };

  return {
    calls,
    async answer(request) {
      const path = decodeURIComponent(new URL(request.url).pathname);
      const [, file, given, rest = ''] = /^\/(file\/)?bot([^/]+)\/(.+)$/.exec(path) ?? [];
      if (given === undefined) return refusalResponse({ code: 404, description: 'Not Found' });
      if (given !== token) return refusalResponse({ code: 401, description: 'Unauthorized' });
      return file === undefined ? carryOut(rest, request) : fileResponse(room, rest);
    },
  };
}

type Parameters = NonNullable<Awaited<ReturnType<typeof parametersOf>>>;

const resultResponse = (result: unknown): Response => Response.json({ ok: true, result });

const pollResponse = (answer: Awaited<ReturnType<ReturnType<typeof polling>>>): Response =>
  'code' in answer ? refusalResponse(answer) : resultResponse(answer);

function refusalResponse({ code, description, retryAfter }: Refusal): Response {
  const parameters = retryAfter === undefined ? {} : { parameters: { retry_after: retryAfter } };
  return Response.json({ ok: false, error_code: code, description, ...parameters }, { status: code });
}

async function troubled(fault: Exclude<Fault, 'drop-after'>, signal: AbortSignal): Promise<Response> {
  if (fault === 'hang' && !signal.aborted) await new Promise((gone) => signal.addEventListener('abort', gone));
  if (fault === 'hang' || fault === 'drop-before') return Response.error();
  const { status, body, retryAfter } = fault;
  if (typeof body === 'string') return new Response(body, { status });
  if (body !== undefined) return Response.json(body, { status });
  const description =
    retryAfter === undefined ? 'Internal Server Error' : `Too Many Requests: retry after ${retryAfter}`;
  return refusalResponse({ code: status, description, ...(retryAfter === undefined ? {} : { retryAfter }) });
}

function fileResponse(room: Room, path: string): Response {
  const file = room.read().files.find((one) => pathOf(one) === path);
  if (!file) return refusalResponse({ code: 404, description: 'Not Found' });
  return new Response(Buffer.from(file.base64, 'base64'), { headers: { 'content-type': file.mediaType } });
}
