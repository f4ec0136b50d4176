import { z } from 'zod';
import { attachment, FILE_LIMITS, identity } from '../attachments.ts';
import { badRequest, isRefusal, method, type Call, type Outcome } from '../call.ts';
import { fileOf, sizeOf, type ChatMessage, type Chats, type Content, type KeptFile } from '../chats.ts';
import { CAPTION, captionFlaw, entitiesFlaw, SEND } from '../fields.ts';
import { post, type Sending } from '../post.ts';

type Captioned = z.infer<typeof CAPTION>;
type Item = Captioned & Readonly<{ type: 'photo' | 'document'; media: string }>;

export const sendPhoto = method(SEND.extend({ ...CAPTION.shape, photo: z.string() }), (chats, fields, call) =>
  show(chats, fields, { ...fields, type: 'photo', media: fields.photo }, call),
);

export const sendDocument = method(SEND.extend({ ...CAPTION.shape, document: z.string() }), (chats, fields, call) =>
  show(chats, fields, { ...fields, type: 'document', media: fields.document }, call),
);

const ALBUM = SEND.extend({
  media: z
    .array(CAPTION.extend({ type: z.enum(['photo', 'document']), media: z.string() }))
    .min(2)
    .max(10),
});

/** All of the album or nothing of it. */
export const sendMediaGroup = method(ALBUM, (chats, fields, call): Outcome => {
  if (new Set(fields.media.map(({ type }) => type)).size > 1)
    return badRequest("photos and documents can't be mixed in an album");
  const album = { media_group_id: `album-${chats.nextId}` };
  const messages: ChatMessage[] = [];
  let filled = chats;
  for (const item of fields.media) {
    const shown = show(filled, fields, item, call, album);
    if (isRefusal(shown)) return shown;
    filled = shown.chats;
    messages.push(shown.result);
  }
  return { chats: filled, result: messages };
});

function show(chats: Chats, to: Sending, item: Item, { uploads, at }: Call, more: Content = {}) {
  const flaw = captionFlaw(item.caption) ?? entitiesFlaw(item.caption ?? '', item.caption_entities);
  if (flaw) return flaw;
  const shown = attachment(chats, item.type, item.media, uploads);
  return isRefusal(shown) ? shown : post(shown.chats, to, { ...more, ...shown.result, ...captionContent(item) }, at);
}

/** A caption as a message holds it; an empty one leaves no trace. */
export const captionContent = ({ caption, caption_entities }: Captioned): Content => ({
  ...(caption ? { caption } : {}),
  ...(caption_entities?.length ? { caption_entities } : {}),
});

export const getFile = method(z.object({ file_id: z.string() }), (chats, { file_id }) => {
  const file = fileOf(chats, file_id);
  if (!file) return badRequest('wrong file_id or the file is temporarily unavailable');
  if (sizeOf(file) > FILE_LIMITS.download) return badRequest('file is too big');
  return { chats, result: { ...identity(file), file_path: pathOf(file) } };
});

/** The path under which a file is fetched: its id, with the ending of its name. */
export const pathOf = ({ id, name }: KeptFile): string => `files/${id}${/\.[a-z0-9]{1,8}$/i.exec(name)?.[0] ?? ''}`;
