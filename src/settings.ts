import { resolve } from 'node:path';
import { z } from 'zod';

const LONGEST = 16;

const env = z.object({
  BOT_TOKEN: optional(
    z.string().regex(/^\d{3,20}:[\w-]{20,}$/, 'is not a bot token (a number, a colon, and a long code).'),
  ),
  BOT_API_ROOT: optional(z.url({ protocol: /^https?$/, error: 'is not an http or https address.' })),
  MAKER_IDS: optional(
    z
      .string()
      .regex(/^\d{1,16}(\s*,\s*\d{1,16})*$/, 'is not a list of numeric ids with commas between, such as 12345,67890.')
      .transform((text) => text.split(',').map(Number))
      .refine((ids) => ids.every((id) => id > 0 && id < 2 ** 52), 'holds a number that cannot be a person.')
      .refine((ids) => ids.length <= LONGEST, `names more than ${LONGEST} people.`),
  ),
  DATA_DIR: z.string().min(1, 'is empty.').default('data/live'),
  SHOP_FILE: z.string().min(1, 'is empty.').default('data/demo-shop.json'),
  ADDRESS_DAYS: z
    .string()
    .regex(/^\d{1,4}$/, 'is not a number of days.')
    .default('90')
    .transform(Number),
  PAYMENT_TOKEN: optional(
    z.string().regex(/^[\w:.-]{8,200}$/, 'is not the token of a payment provider, as the platform gives it out.'),
  ),
  BACKUP_TO_CHAT: z.enum(['yes', 'no'], 'is neither yes nor no.').default('no'),
  PORT: z
    .string()
    .regex(/^\d{1,5}$/, 'is not a port number.')
    .default('8080')
    .transform(Number)
    .refine((port) => port <= 65_535, 'is not a port number (0 to 65535).'),
  JIGWRIGHT_KEY: optional(z.string().regex(/^[0-9a-f]{64}$/i, 'is not 64 hex digits.')),
  KEY_FILE: optional(z.string().min(1, 'is empty.')),
});

export type Settings = Readonly<{
  /** Null for the rehearsal on this computer. */
  token: string | null;
  apiRoot: string | null;
  makers: readonly number[];
  dataDir: string;
  shopFile: string;
  port: number;
  /** Days for which the address of a shipped order is kept. */
  addressDays: number;
  /** The payment provider's; null where nothing is paid in the chat. */
  paymentToken: string | null;
  /** Whether a sealed backup is sent into the maker's own chat once a day. */
  backupToChat: boolean;
  key: Readonly<{ hex: string }> | Readonly<{ file: string }>;
}>;

export type SettingsRead =
  Readonly<{ ok: true; settings: Settings }> | Readonly<{ ok: false; faults: readonly string[] }>;

/** The environment, checked once. Every fault is a sentence that begins with the variable's name; a value is never repeated, it may be a secret.
 *  A variable that is set to nothing counts as not set. */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): SettingsRead {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value?.trim()));
  const read = env.safeParse(given);
  const faults = [
    ...(read.error?.issues ?? []).map((issue) => `${issue.path.join('.')} ${issue.message}`),
    ...missing(given),
  ];
  return read.success && faults.length === 0 ? { ok: true, settings: settingsOf(read.data) } : { ok: false, faults };
}

const missing = (given: Readonly<Record<string, unknown>>): readonly string[] =>
  given['BOT_TOKEN'] !== undefined && given['MAKER_IDS'] === undefined
    ? ['MAKER_IDS is not set. With BOT_TOKEN it must name the maker, or nobody could see the orders: MAKER_IDS=12345']
    : [];

const settingsOf = (read: z.infer<typeof env>): Settings => ({
  token: read.BOT_TOKEN ?? null,
  apiRoot: read.BOT_API_ROOT?.replace(/\/+$/, '') ?? null,
  makers: read.MAKER_IDS ?? [],
  dataDir: read.DATA_DIR,
  shopFile: read.SHOP_FILE,
  port: read.PORT,
  addressDays: read.ADDRESS_DAYS,
  paymentToken: read.PAYMENT_TOKEN ?? null,
  backupToChat: read.BACKUP_TO_CHAT === 'yes',
  key:
    read.JIGWRIGHT_KEY === undefined
      ? { file: read.KEY_FILE ?? resolve(read.DATA_DIR, '..', 'jigwright.key') }
      : { hex: read.JIGWRIGHT_KEY },
});

function optional<S extends z.ZodType>(schema: S): z.ZodOptional<S> {
  return schema.optional();
}
