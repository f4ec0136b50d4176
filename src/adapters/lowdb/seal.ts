import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';
import { z } from 'zod';

/** What stands in the clear before a sealed value: nothing that anyone said. */
export type Label = Readonly<{ format: string; version: number; serial: number; writtenAt: number }>;

export type Opened =
  | Readonly<{ ok: true; label: Label; json: string }>
  /** `damaged`: not the bytes that were written. `key`: the bytes are whole, but this key did not write them. */
  | Readonly<{ ok: false; why: 'damaged' | 'key'; label: Label | null }>;

const headSchema = z.strictObject({
  format: z.string(),
  version: z.number().int().min(0),
  serial: z.number().int().min(0),
  writtenAt: z.number(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  iv: z.string().regex(/^[0-9a-f]{24}$/),
  tag: z.string().regex(/^[0-9a-f]{32}$/),
});

const CIPHER = 'aes-256-gcm';

/** One line of JSON in the clear, then the value under AES-256-GCM; the label is part of what the seal vouches for. */
export function seal(json: string, label: Label, key: Uint8Array): Buffer {
  const iv = randomBytes(12);
  const cipher = createCipheriv(CIPHER, key, iv).setAAD(vouched(label));
  const body = Buffer.concat([cipher.update(json, 'utf8'), cipher.final()]);
  const seals = { iv: iv.toString('hex'), tag: cipher.getAuthTag().toString('hex') };
  const head = { ...label, sha256: sum(label, seals, body), ...seals };
  return Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), body]);
}

/** The value again, if every byte is as it was written and `key` wrote it. */
export function open(bytes: Buffer, key: Uint8Array): Opened {
  const end = bytes.indexOf(10);
  const head = headOf(bytes.subarray(0, Math.max(0, end)));
  if (head === null) return { ok: false, why: 'damaged', label: null };
  const { sha256, iv, tag, ...label } = head;
  const body = bytes.subarray(end + 1);
  if (sum(label, { iv, tag }, body) !== sha256) return { ok: false, why: 'damaged', label };
  try {
    const cipher = createDecipheriv(CIPHER, key, Buffer.from(iv, 'hex'), { authTagLength: 16 });
    cipher.setAAD(vouched(label)).setAuthTag(Buffer.from(tag, 'hex'));
    return { ok: true, label, json: Buffer.concat([cipher.update(body), cipher.final()]).toString('utf8') };
  } catch {
    return { ok: false, why: 'key', label };
  }
}

const headOf = (line: Buffer): z.infer<typeof headSchema> | null => {
  try {
    return headSchema.safeParse(JSON.parse(line.toString('utf8'))).data ?? null;
  } catch {
    return null;
  }
};

const vouched = ({ format, version, serial, writtenAt }: Label): Buffer =>
  Buffer.from(JSON.stringify([format, version, serial, writtenAt]));

/** Over the head as well, so that damage there is not taken for another key. */
const sum = (label: Label, { iv, tag }: Readonly<{ iv: string; tag: string }>, body: Uint8Array): string =>
  createHash('sha256').update(vouched(label)).update(iv).update(tag).update(body).digest('hex');
