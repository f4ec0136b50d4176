import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readerFor } from '../../../../src/domain/order/reader/read.ts';
import { SHOP } from '../../../demoShop.ts';
import { scoreOf, type Labelled, type Score } from './score.ts';

const reader = readerFor(SHOP);
const scored = (file: string): Score => scoreOf(rowsOf(file), ({ said, now }) => reader.read(said, Date.parse(now)));

const rowsOf = (file: string): readonly Labelled[] =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter((row) => row.trim() !== '')
    .map((row) => JSON.parse(row) as Labelled);

const OURS = join(import.meta.dirname, 'messages.jsonl');
/** Further labelled messages that may lie beside the project. */
const THEIRS = join(import.meta.dirname, '..', '..', '..', '..', '..', 'shared', 'reading', 'examples.jsonl');

describe('hundreds of messages as buyers write them', () => {
  test('nearly all are written down whole', () => {
    const { whole, missed } = scored(OURS);
    expect(whole, `not whole:\n${missed.join('\n')}`).toBeGreaterThanOrEqual(0.995);
  });

  test('a slot that is written down is right, and what is not understood is said back', () => {
    const { precision, dropped } = scored(OURS);
    expect(precision).toBeGreaterThanOrEqual(0.999);
    expect(dropped).toBe(0);
  });

  test('every label copies its unclear words from its message', () => {
    const rows = rowsOf(OURS);
    expect(rows.length).toBeGreaterThanOrEqual(1000);
    for (const { said, unclear } of rows) for (const one of unclear) expect(said).toContain(one.said);
  });

  test.skipIf(!existsSync(THEIRS))('the examples beside the project are read as well', () => {
    const { whole, wrong, dropped, missed } = scored(THEIRS);
    expect(whole, `not whole:\n${missed.join('\n')}`).toBeGreaterThanOrEqual(0.97);
    expect(wrong).toBeLessThanOrEqual(2);
    expect(dropped).toBe(0);
  });
});

describe('messages that are hardly messages', () => {
  test.each([
    ['nothing', ''],
    ['only a smile', '🙂👍🏽'],
    ['only marks', '?!…,,//--'],
    ['right to left', 'مرحبا 20 שלום'],
    ['a wall of noughts', '0'.repeat(4096)],
    ['a wall of fractions', '1/4 '.repeat(1024)],
    ['a wall of commas', ','.repeat(4096)],
    ['a wall of one word', 'x'.repeat(4096)],
  ])('%s is read without harm', (_, said) => {
    const reading = reader.read(said, Date.parse('2026-05-12T19:30:00-05:00'));
    expect(reading.needBy).toBeNull();
    expect(reading.shipTo).toBeNull();
  });
});
