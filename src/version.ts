import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** The program's own version, as its package says. */
export const VERSION: string = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(join(import.meta.dirname, '..', 'package.json'), 'utf8'))).version;
