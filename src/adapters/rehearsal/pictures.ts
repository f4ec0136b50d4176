export type PictureSize = Readonly<{ width: number; height: number }>;

/** Width and height in pixels of a PNG (W3C PNG, IHDR) or a JPEG (ITU-T T.81, start of frame); `undefined` for anything else. */
export function pictureSize(bytes: Buffer): PictureSize | undefined {
  if (bytes.subarray(0, 8).equals(PNG))
    return bytes.length < 24 ? undefined : { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
  return bytes.subarray(0, 2).equals(JPEG) ? jpegSize(bytes) : undefined;
}

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const JPEG = Buffer.from([0xff, 0xd8]);

/** Segments follow one another, each with its length; the frame's own segment holds the size. */
function jpegSize(bytes: Buffer): PictureSize | undefined {
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff; at += 2 + bytes.readUInt16BE(at + 2))
    if (startsFrame(bytes[at + 1] ?? 0))
      return { width: bytes.readUInt16BE(at + 7), height: bytes.readUInt16BE(at + 5) };
  return undefined;
}

const NOT_FRAMES = [0xc4, 0xc8, 0xcc];
const startsFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && !NOT_FRAMES.includes(marker);
