import { z } from 'zod';
import { ACTS, type Tap } from '../domain/desk/tap.ts';

/** A button carries at most this many bytes. */
export const TAP_BYTES = 64;

const tapSchema = z.strictObject({
  act: z.enum(ACTS),
  on: z.string().regex(/^[\w\-:/#.]{1,32}$/),
  version: z.number().int().min(0),
  arg: z.string().max(48),
});

/** What a button carries: `act|on|version|arg`, the version in base 36.
 *  @throws RangeError when it does not fit into 64 bytes or `on` is not an id.
 *  @example writeTap({ act: 'order', on: 'K-1042', version: 40, arg: '' }) //=> 'order|K-1042|14|' */
export function writeTap(tap: Tap): string {
  const data = [tap.act, tap.on, tap.version.toString(36), tap.arg].join('|');
  if (!tapSchema.safeParse(tap).success || Buffer.byteLength(data) > TAP_BYTES)
    throw new RangeError(`No button can carry ${data}`);
  return data;
}

/** The tap that `data` carries; null unless `writeTap` writes exactly this. Anyone can send anything: it is a claim, not a right. */
export function parseTap(data: string): Tap | null {
  const [act, on, version, ...arg] = data.split('|');
  const tap = tapSchema.safeParse({ act, on, version: parseInt(version ?? '', 36), arg: arg.join('|') }).data;
  return tap !== undefined && Buffer.byteLength(data) <= TAP_BYTES && writeTap(tap) === data ? tap : null;
}
