import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pushedClock } from '../../src/adapters/rehearsal/pushedClock.ts';
import { instantOf } from '../../src/domain/craft/time.ts';
import { openStage, type Stage } from '../../src/rehearse.ts';
import { readSettings } from '../../src/settings.ts';
import { SHOP } from '../demoShop.ts';

const CHROMIUM = '/usr/bin/chromium';
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync'.split(
    ' ',
  );
/** Set to a path, the README's picture is taken anew. */
const PICTURE = process.env['REHEARSAL_PICTURE'];

describe.skipIf(!existsSync(CHROMIUM))(
  'an order on the rehearsal page, in a browser (skipped where there is no chromium)',
  { timeout: 60_000 },
  () => {
    let home: string, stage: Stage, listening: Promise<void>, browser: Browser, page: Page;
    const buyer = () => page.getByRole('log', { name: "The buyer's chat" });
    const maker = () => page.getByRole('log', { name: "The maker's chat" });
    const taps = (side: ReturnType<typeof buyer>, name: string | RegExp) =>
      side.getByRole('button', { name }).last().click();
    /** The picture for the README, once the short notes are gone that cover the newest message. */
    const taken = async (path: string): Promise<void> => {
      await expect.poll(() => page.getByRole('status').filter({ visible: true }).count()).toBe(0);
      await page.screenshot({ path });
    };
    const says = async (side: 0 | 1, text: string): Promise<void> => {
      await page.getByRole('textbox', { name: 'Message' }).nth(side).fill(text);
      await page.getByRole('button', { name: 'Send' }).nth(side).click();
    };

    beforeAll(async () => {
      home = mkdtempSync(join(tmpdir(), 'jigwright-browser-'));
      const read = readSettings({ DATA_DIR: join(home, 'book'), KEY_FILE: join(home, 'key'), PORT: '0' });
      if (!read.ok) throw new Error(read.faults.join());
      const clock = pushedClock({ real: () => instantOf('2026-11-30', '18:35', SHOP.zone) });
      stage = await openStage({
        settings: read.settings,
        shop: SHOP,
        clock,
        saved: undefined,
        log: () => {},
        say: () => {},
      });
      listening = stage.program.listen(() => {});
      browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--headless', ...FLAGS] });
      page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
      page.setDefaultTimeout(10_000);
      await page.goto(stage.rehearsal.url);
    }, 60_000);

    afterAll(async () => {
      await browser?.close();
      await stage?.program.stop();
      await listening;
      await stage?.close();
      rmSync(home, { recursive: true, force: true });
    });

    test('the buyer orders by taps and the maker hears of it', async () => {
      await taps(maker(), 'Start');
      await taps(buyer(), 'Start');
      for (const name of ['Football head', '1/4 oz', 'Green pumpkin', 'As usual, 25 heads', 'Minnesota'])
        await taps(buyer(), name);
      await buyer().getByText('Nothing is ordered yet').waitFor();
      await expect.poll(() => buyer().getByRole('img').count()).toBeGreaterThan(0);
      await taps(buyer(), 'Order this');
      await buyer().getByText('Its number is K-1001').waitFor();
      await maker().getByText('New order K-1001').waitFor();
    });

    test('the maker pours to the oven, the clock is pushed, and the reminder comes', async () => {
      await says(1, 'bench');
      for (const work of [/^Pour/, /^Trim/, /^Paint/, /^Clear eyes/]) {
        await taps(maker(), work);
        await taps(maker(), 'Done, all good');
      }
      await taps(maker(), /^Bake/);
      await maker().getByText('until the heads are up to heat').waitFor();
      await page.getByRole('button', { name: /To the next reminder/ }).click();
      await page.getByRole('button', { name: /To the next reminder/ }).click();
      await taps(maker(), '5 more minutes');
      await page.getByRole('button', { name: /10 minutes/ }).click();
      await maker().getByRole('button', { name: 'Done', exact: true }).last().waitFor();
      if (PICTURE) await taken(PICTURE);
      await taps(maker(), 'Done');
      await maker().getByText('Bake: done').waitFor();
    });
  },
);
