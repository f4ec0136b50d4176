import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { Halt } from './app/exit.ts';
import { codeOf } from './app/log.ts';
import { lawSchema, type LawRow } from './domain/law/row.ts';
import { sayFault } from './domain/shop/fault.ts';
import { readShopText } from './domain/shop/faults.ts';
import type { Shop } from './domain/shop/shop.ts';

/** The shop file, whole and sound. @throws Halt that names every fault in it: where, what was found, what is allowed. */
export function openShopFile(path: string): Shop {
  const read = readShopText(textOf(path, 'SHOP_FILE'));
  if (read.ok) return read.shop;
  const faults = read.faults.map((fault) => `  ${sayFault(fault)}`);
  const count = faults.length === 1 ? 'one fault' : `${faults.length} faults`;
  throw new Halt('settings', `The shop file ${path} (SHOP_FILE) has ${count}:\n${faults.join('\n')}`);
}

const LAW_FILE = join(import.meta.dirname, '..', 'data', 'lead-law.json');

/** The rules on lead that come with the program. @throws Halt when the file is not whole. */
export function openLawFile(path = LAW_FILE): readonly LawRow[] {
  const read = lawSchema.safeParse(JSON.parse(textOf(path, 'the rules on lead')));
  if (read.success) return read.data.rows;
  throw new Halt('settings', `The rules on lead in ${path} are not whole:\n${z.prettifyError(read.error)}`);
}

function textOf(path: string, what: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new Halt('settings', `The file ${path} (${what}) cannot be read (${codeOf(error)}). Name one that can.`);
  }
}
