import type { PhotoSize } from 'grammy/types';
import { badRequest, isRefusal, type Refusal } from './call.ts';
import { fileOf, keepFile, sizeOf, type Chats, type Content, type KeptFile, type Step } from './chats.ts';
import type { Uploads } from './payload.ts';
import { pictureSize } from './pictures.ts';

const MEGABYTE = 1024 * 1024;
export const FILE_LIMITS = { photo: 10 * MEGABYTE, document: 50 * MEGABYTE, download: 20 * MEGABYTE } as const;

/** The part of a message that shows this picture or document; `source` is `attach://name` or a known file id. */
export function attachment(
  chats: Chats,
  kind: 'photo' | 'document',
  source: string,
  uploads: Uploads,
): Step<Content> | Refusal {
  const kept = keptFile(chats, source, uploads);
  if (isRefusal(kept)) return kept;
  if (sizeOf(kept.result) > FILE_LIMITS[kind]) return badRequest('file is too big');
  const result = kind === 'photo' ? photoContent(kept.result) : documentContent(kept.result);
  return isRefusal(result) ? result : { chats: kept.chats, result };
}

function keptFile(chats: Chats, source: string, uploads: Uploads): Step<KeptFile> | Refusal {
  const known = fileOf(chats, source);
  if (known) return { chats, result: known };
  const upload = uploads[source.replace(/^attach:\/\//, '')];
  if (!source.startsWith('attach://') || !upload) return badRequest('wrong file identifier/HTTP URL specified');
  if (upload.bytes.length === 0) return badRequest('file must be non-empty');
  return keepFile(chats, { name: upload.name, mediaType: upload.mediaType, base64: upload.bytes.toString('base64') });
}

/** A picture as a message holds it, refused when it cannot be shown. */
export function photoContent(file: KeptFile): Content | Refusal {
  const size = pictureSize(Buffer.from(file.base64, 'base64'));
  if (!size) return badRequest('IMAGE_PROCESS_FAILED');
  if (size.width + size.height > 10_000) return badRequest('PHOTO_INVALID_DIMENSIONS');
  const photo: PhotoSize = { ...identity(file), ...size };
  return { photo: [photo] };
}

export const documentContent = (file: KeptFile): Content => ({
  document: { ...identity(file), file_name: file.name, mime_type: file.mediaType },
});

/** The ids and the size that every kind of file carries. */
export const identity = (file: KeptFile): Readonly<{ file_id: string; file_unique_id: string; file_size: number }> => ({
  file_id: file.id,
  file_unique_id: `same-${file.id}`,
  file_size: sizeOf(file),
});
