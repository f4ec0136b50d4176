import { readMultipart, type Upload } from './multipart.ts';

/** A call's parameters as values, whichever way they travelled: query, form, multipart or JSON. */
export type Payload = Readonly<Record<string, unknown>>;
export type Uploads = Readonly<Record<string, Upload>>;
export type Parameters = Readonly<{ payload: Payload; uploads: Uploads }>;

/** Reads a call's parameters; `undefined` when the body cannot be read. */
export async function parametersOf(request: Request): Promise<Parameters | undefined> {
  const query = typed(Object.fromEntries(new URL(request.url).searchParams));
  const body = Buffer.from(await request.arrayBuffer());
  const sent =
    body.length === 0 ? { payload: {}, uploads: {} } : readBody(body, request.headers.get('content-type') ?? '');
  return sent && { payload: { ...query, ...sent.payload }, uploads: sent.uploads };
}

function readBody(body: Buffer, contentType: string): Parameters | undefined {
  if (/^application\/json/i.test(contentType)) {
    const value = jsonOf(body.toString());
    return isRecord(value) ? { payload: value, uploads: {} } : undefined;
  }
  if (/^application\/x-www-form-urlencoded/i.test(contentType))
    return { payload: typed(Object.fromEntries(new URLSearchParams(body.toString()))), uploads: {} };
  const form = readMultipart(body, contentType);
  if (!form) return undefined;
  const inline = Object.keys(form.uploads).map((name) => [name, `attach://${name}`]);
  return { payload: { ...Object.fromEntries(inline), ...typed(form.fields) }, uploads: form.uploads };
}

/** Parameters that are words even when they look like a number or like JSON. */
const WORDS = new Set(
  ['text', 'caption', 'title', 'description', 'short_description', 'payload', 'error_message'].concat([
    'callback_query_id',
    'pre_checkout_query_id',
    'file_id',
    'photo',
    'document',
    'currency',
    'provider_data',
  ]),
);

const typed = (fields: Readonly<Record<string, string>>): Payload =>
  Object.fromEntries(
    Object.entries(fields).map(([name, value]) => [name, WORDS.has(name) ? value : (jsonOf(value) ?? value)]),
  );

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Payload =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
