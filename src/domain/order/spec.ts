import { z } from 'zod';
import { KEEPERS } from '../shop/words.ts';

const word = z.string().min(1).max(40);

/** One fully stated head. Words are ids of the shop file; `none` and `bare` are the program's own; `~words` was agreed with the maker. */
export const specSchema = z.strictObject({
  style: word,
  weight: word,
  hook: word,
  paint: word,
  guard: word,
  keeper: z.enum(KEEPERS),
  dressing: word,
  metal: word,
});
export type Spec = Readonly<z.infer<typeof specSchema>>;

/** A head that is still being talked about. */
export const partialSpecSchema = specSchema.partial();
export type PartialSpec = Readonly<{ [Slot in keyof Spec]?: Spec[Slot] | undefined }>;

/** So many heads of one spec. */
export const lineSchema = z.strictObject({
  spec: specSchema,
  quantity: z.number().int().positive(),
  /** Cents a head agreed with the maker for what the price list does not hold. */
  extra: z.number().int().min(0).optional(),
});
export type Line = Readonly<z.infer<typeof lineSchema>>;

export const headsOf = (lines: readonly Line[]): number => lines.reduce((sum, { quantity }) => sum + quantity, 0);
