import { z } from 'zod';
import { emptyDesk } from '../../domain/desk/state.ts';
import { quoteLines, type Trade } from '../../domain/desk/quoting.ts';
import { checkLine } from '../../domain/order/check.ts';
import { usualSpec } from '../../domain/order/choices.ts';
import { partialSpecSchema, type Line } from '../../domain/order/spec.ts';
import { Temporal } from 'temporal-polyfill';

const rowSchema = z.object({
  id: z.string().optional(),
  now: z.string(),
  lines: z.array(partialSpecSchema.extend({ quantity: z.number().int() })).min(1),
  shipTo: z.string().nullable(),
  needBy: z.iso.date().nullable().optional(),
});

/** The quote of one JSON row `{"now","lines","shipTo","needBy"}` at an idle bench, or the findings against it.
 *  Slots that a line leaves out stand as usual, as on the summary in chat, and are written out in the answer;
 *  without a place it is quoted to the shop's own, and says so. */
export function quoteRow(trade: Trade, row: unknown): unknown {
  const { shop } = trade;
  const read = rowSchema.safeParse(row);
  if (!read.success) return { error: `This row cannot be read: ${z.prettifyError(read.error)}` };
  const { id, now, lines, shipTo, needBy = null } = read.data;
  const at = instantIn(now);
  if (at === undefined)
    return {
      ...named(id),
      error: `"now" is not an instant with its offset, such as 2026-11-25T18:30:00-06:00: ${now}`,
    };
  const findings = lines.flatMap(({ quantity, ...spec }, index) => checkLine(shop, spec, quantity, index));
  const whole = lines.flatMap(({ quantity, ...spec }): Line[] => {
    const usual = usualSpec(shop, spec);
    return usual === undefined ? [] : [{ spec: usual, quantity }];
  });
  if (findings.length > 0 || whole.length < lines.length) return { ...named(id), findings };
  const asked = { draft: 'row', version: 0, lines: whole, shipTo: shipTo ?? shop.place, passed: [] };
  const quoted = quoteLines(trade, emptyDesk, asked, at);
  if (!quoted.ok) return { ...named(id), findings: quoted.findings, impossible: quoted.impossible };
  const { draft: _draft, version: _version, ...quote } = quoted.quote;
  return {
    ...named(id),
    quote: { ...quote, placeAssumed: shipTo === null, needByMet: needBy === null || quote.promise.ships <= needBy },
    findings: quoted.notes,
  };
}

const named = (id: string | undefined): { id?: string } => (id === undefined ? {} : { id });

function instantIn(text: string): number | undefined {
  try {
    return Temporal.Instant.from(text).epochMilliseconds;
  } catch {
    return undefined;
  }
}
