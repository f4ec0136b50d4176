import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import type { Reader } from '../../domain/order/reader/read.ts';

const rowSchema = z.object({ id: z.string(), now: z.iso.datetime({ offset: true }), said: z.string().max(20_000) });

/** One row `{"id","now","said"}` read: `{"id","lines","needBy","shipTo","unclear"}`, or `{"id","error"}` with a sentence saying what is wrong with the row. */
export function readRow(reader: Reader, row: unknown): unknown {
  const parsed = rowSchema.safeParse(row);
  if (!parsed.success) return { id: idOf(row), error: `This row cannot be read. ${z.prettifyError(parsed.error)}` };
  const { id, now, said } = parsed.data;
  const { lines, needBy, shipTo, unclear } = reader.read(said, Temporal.Instant.from(now).epochMilliseconds);
  return { id, lines, needBy, shipTo, unclear };
}

const idOf = (row: unknown): string | null => z.object({ id: z.string() }).safeParse(row).data?.id ?? null;
