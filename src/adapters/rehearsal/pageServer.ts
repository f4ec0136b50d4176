import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import type { Picture } from './acts.ts';
import { fileOf, messageOf } from './chats.ts';
import type { HumanSide } from './humanSide.ts';
import { parametersOf, type Parameters } from './payload.ts';
import { pictureSize } from './pictures.ts';
import type { Room } from './room.ts';
import type { View } from './view.ts';
import { viewStream } from './viewStream.ts';

export const PUSHES = ['next-reminder', 'ten-minutes', 'tomorrow-morning'] as const;
export type Push = (typeof PUSHES)[number];
export type PageParts = Readonly<{
  room: Room;
  people: HumanSide;
  view: () => View;
  push: (how: Push) => Promise<void>;
}>;

/** The web page of the rehearsal and what it does, from Request to Response. */
export function pageServer(parts: PageParts): (request: Request) => Promise<Response> {
  return async (request) => {
    if (!isFromThisComputer(request)) return problem(403, 'This page is for the computer it runs on.');
    const { pathname } = new URL(request.url);
    const response =
      request.method === 'POST' ? await act(parts, pathname, request) : await show(parts, pathname, request);
    return response ?? problem(404, `There is nothing at ${pathname}.`);
  };
}

/** A page from elsewhere must not act here through the visitor's browser, whatever name it gave this address. */
function isFromThisComputer({ url, headers }: Request): boolean {
  const { hostname, origin } = new URL(url);
  return ['127.0.0.1', 'localhost', '[::1]'].includes(hostname) && [null, origin].includes(headers.get('origin'));
}

async function show({ room, view }: PageParts, path: string, request: Request): Promise<Response | undefined> {
  const page = PAGES[path];
  if (page)
    return new Response(await readFile(new URL(`page/${page.file}`, import.meta.url)), {
      headers: { ...SAFE, 'content-type': page.mediaType },
    });
  if (path === '/chat/view') return Response.json(view(), { headers: SAFE });
  if (path === '/chat/events') return viewStream(room, view, request.signal);
  const file = path.startsWith('/chat/file/')
    ? fileOf(room.read(), decodeURIComponent(path.slice('/chat/file/'.length)))
    : undefined;
  return (
    file &&
    new Response(Buffer.from(file.base64, 'base64'), {
      headers: { ...SAFE, ...fileHeaders(file.mediaType, file.base64) },
    })
  );
}

const PAGES: Readonly<Record<string, Readonly<{ file: string; mediaType: string }>>> = {
  '/': { file: 'page.html', mediaType: 'text/html; charset=utf-8' },
  '/page.css': { file: 'page.css', mediaType: 'text/css; charset=utf-8' },
  '/page.js': { file: 'page.js', mediaType: 'text/javascript; charset=utf-8' },
  '/chatPane.js': { file: 'chatPane.js', mediaType: 'text/javascript; charset=utf-8' },
  '/bubbles.js': { file: 'bubbles.js', mediaType: 'text/javascript; charset=utf-8' },
  '/icon.svg': { file: 'icon.svg', mediaType: 'image/svg+xml' },
};

const SAFE = {
  'cache-control': 'no-store',
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
};

/** Only what is a picture by its bytes is shown in place; any other file is handed over to be saved. */
const fileHeaders = (mediaType: string, base64: string): Record<string, string> =>
  pictureSize(Buffer.from(base64, 'base64'))
    ? { 'content-type': mediaType.startsWith('image/') && !mediaType.includes('svg') ? mediaType : 'image/png' }
    : { 'content-type': 'application/octet-stream', 'content-disposition': 'attachment' };

async function act(parts: PageParts, path: string, request: Request): Promise<Response | undefined> {
  const deed = DEEDS[path];
  if (!deed) return undefined;
  const parameters = await parametersOf(request);
  if (!parameters) return problem(400, 'The request cannot be read.');
  try {
    const result = await deed(parts, parameters);
    return Response.json({ ok: true, result }, { headers: SAFE });
  } catch (error) {
    return problem(
      400,
      error instanceof z.ZodError ? z.prettifyError(error) : error instanceof Error ? error.message : 'It failed.',
    );
  }
}

const problem = (status: number, sentence: string): Response =>
  Response.json({ ok: false, problem: sentence }, { status, headers: SAFE });

type Deed = (parts: PageParts, parameters: Parameters) => unknown;

const PERSON = z.object({ personId: z.int() });
const SAYING = PERSON.extend({ text: z.string().min(1), replyTo: z.int().optional() });
const TAP = PERSON.extend({ messageId: z.int(), data: z.string() });

const DEEDS: Readonly<Record<string, Deed>> = {
  '/chat/say': ({ people }, { payload }) => {
    const { personId, text, replyTo } = SAYING.parse(payload);
    return people.say(personId, text, replyTo === undefined ? {} : { replyTo });
  },
  '/chat/edit': ({ people }, { payload }) => {
    const { messageId, text } = z.object({ messageId: z.int(), text: z.string().min(1) }).parse(payload);
    return people.edit(messageId, text);
  },
  '/chat/tap': (parts, { payload }) => tapOffered(parts, TAP.parse(payload)),
  '/chat/pay': ({ people }, { payload }) => {
    const { personId, messageId } = PERSON.extend({ messageId: z.int() }).parse(payload);
    return people.pay(personId, messageId);
  },
  '/chat/attach': ({ people }, { payload, uploads }) => {
    const { personId, caption } = PERSON.extend({ caption: z.string().default('') }).parse(payload);
    return attach(people, personId, Object.values(uploads), caption);
  },
  '/chat/block': ({ people }, { payload }) => people.block(PERSON.parse(payload).personId),
  '/chat/unblock': ({ people }, { payload }) => people.unblock(PERSON.parse(payload).personId),
  '/chat/people': ({ room, people }, { payload }) => {
    const { firstName } = z.object({ firstName: z.string().trim().min(1).max(64) }).parse(payload);
    const id = Math.max(...room.read().people.map((person) => person.id)) + 1;
    people.addPerson({ id, firstName, languageCode: 'en' });
    return id;
  },
  '/chat/clock': ({ push }, { payload }) => push(z.object({ to: z.enum(PUSHES) }).parse(payload).to),
};

/** The page offers only the buttons that are there, so anything else is an old page. */
function tapOffered({ room, people }: PageParts, { personId, messageId, data }: z.infer<typeof TAP>): string {
  const buttons = messageOf(room.read(), personId, messageId)?.reply_markup?.inline_keyboard.flat() ?? [];
  const isOffered = buttons.some((button) => 'callback_data' in button && button.callback_data === data);
  if (!isOffered) throw new Error('That button is gone; use the newest card.');
  return people.tap(personId, messageId, data);
}

function attach(people: HumanSide, personId: number, files: readonly Picture[], caption: string): unknown {
  const [first] = files;
  if (!first) throw new Error('Choose a file first.');
  if (files.every(({ bytes }) => pictureSize(bytes))) return people.sendAlbum(personId, files, caption);
  return files.map((file) => people.sendDocument(personId, file));
}
