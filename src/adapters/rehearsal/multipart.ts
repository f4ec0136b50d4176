export type Upload = Readonly<{ name: string; mediaType: string; bytes: Buffer }>;
export type Form = Readonly<{ fields: Readonly<Record<string, string>>; uploads: Readonly<Record<string, Upload>> }>;

/** Reads a multipart/form-data body (RFC 7578); `undefined` when it is none.
 *  Node's own `formData()` refuses part headers without spaces and unquoted file names, which bot libraries send. */
export function readMultipart(body: Buffer, contentType: string): Form | undefined {
  const boundary = /boundary="?([^";]+)"?/i.exec(contentType)?.[1];
  if (boundary === undefined) return undefined;
  const parts = partsOf(body, `--${boundary}`).map(readPart);
  return {
    fields: Object.fromEntries(parts.flatMap((part) => (part.file ? [] : [[part.name, part.bytes.toString()]]))),
    uploads: Object.fromEntries(
      parts.flatMap((part) => (part.file ? [[part.name, { ...part.file, bytes: part.bytes }]] : [])),
    ),
  };
}

function partsOf(body: Buffer, delimiter: string): readonly Buffer[] {
  const parts: Buffer[] = [];
  let start = body.indexOf(delimiter);
  while (start >= 0) {
    const next = body.indexOf(`\r\n${delimiter}`, start);
    if (next < 0) return parts;
    parts.push(body.subarray(body.indexOf('\r\n', start) + 2, next));
    start = next + 2;
  }
  return parts;
}

type Part = Readonly<{ name: string; bytes: Buffer; file?: Omit<Upload, 'bytes'> }>;

function readPart(part: Buffer): Part {
  const end = part.indexOf('\r\n\r\n');
  const head = part.subarray(0, end).toString();
  const name = parameter(head, 'name') ?? '';
  const filename = parameter(head, 'filename');
  const mediaType = /^content-type:\s*(\S+)/im.exec(head)?.[1] ?? 'application/octet-stream';
  const bytes = part.subarray(end + 4);
  return filename === undefined ? { name, bytes } : { name, bytes, file: { name: filename, mediaType } };
}

const parameter = (head: string, name: string): string | undefined => {
  const found = new RegExp(`[;\\s]${name}=(?:"([^"]*)"|([^;\\r\\n]*))`, 'i').exec(head);
  return found?.[1] ?? found?.[2];
};
