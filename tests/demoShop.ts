import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lawSchema } from '../src/domain/law/row.ts';
import { shopSchema, type Shop } from '../src/domain/shop/shop.ts';

const read = (name: string): unknown => JSON.parse(readFileSync(join(import.meta.dirname, '..', 'data', name), 'utf8'));

/** The invented shop of the demo. */
export const SHOP: Shop = shopSchema.parse(read('demo-shop.json'));
export const LAW = lawSchema.parse(read('lead-law.json')).rows;

/** The demo shop with some of it changed. */
export const shopWith = (change: (shop: Shop) => Partial<Shop>): Shop => ({ ...SHOP, ...change(SHOP) });
