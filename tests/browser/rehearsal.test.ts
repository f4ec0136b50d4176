import { existsSync } from 'node:fs';
import type { Bot } from 'grammy';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { pushedClock } from '../../src/adapters/rehearsal/pushedClock.ts';
import { openRehearsal, type Rehearsal } from '../../src/adapters/rehearsal/rehearsal.ts';
import { echoBot } from './echoBot.ts';

const CHROMIUM = '/usr/bin/chromium';
const TOKEN = '77:page';
const [BUYER, MAKER] = [11, 12];
const EVENING = Date.UTC(2026, 2, 3, 0, 40); // Monday 18:40 in Chicago
const PICTURE = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

describe.skipIf(!existsSync(CHROMIUM))('the rehearsal page in a browser (skipped where there is no chromium)', () => {
  let browser: Browser;
  let page: Page;
  let bot: Bot;
  let rehearsal: Rehearsal;
  const pushes: number[] = [];
  const clock = pushedClock({ real: () => EVENING });

  beforeAll(async () => {
    rehearsal = await openRehearsal({
      token: TOKEN,
      people: [
        { id: BUYER, firstName: 'Wren', languageCode: 'en' },
        { id: MAKER, firstName: 'Kettle Bay Jigs', languageCode: 'en' },
      ],
      maker: MAKER,
      zone: 'America/Chicago',
      clock,
      nextDue: () => (pushes.length === 0 ? EVENING + 25 * 60_000 : undefined),
      onPush: async () => void pushes.push(clock.now()),
      tomorrowMorning: () => Date.UTC(2026, 2, 3, 13),
      port: 0,
    });
    rehearsal.chats.start(MAKER);
    bot = echoBot(TOKEN, rehearsal.apiRoot, MAKER);
    void bot.start();
    const quiet = [
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-quic',
    ];
    browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu', ...quiet] });
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(5000);
  }, 30_000);

  afterAll(async () => {
    await browser?.close();
    await bot?.stop();
    await rehearsal?.close();
  });

  beforeEach(async () => void (await page.goto(rehearsal.url)));

  const buyerLog = () => page.getByRole('log', { name: "The buyer's chat" });
  const makerLog = () => page.getByRole('log', { name: "The maker's chat" });
  const visible = (text: string | RegExp, log = buyerLog()) => log.getByText(text).last().waitFor();
  const tap = (name: string) => buyerLog().getByRole('button', { name }).last().click();

  test('a buyer starts, taps two answers and sees the picture of the head; the maker hears of it beside it', async () => {
    await tap('Start');
    await tap('Football');
    await visible('Football head. Which weight?');
    await page.getByRole('status').getByText('football noted').waitFor();
    await tap('3/8 oz');
    await visible(/Weight: 3\/8 oz/);
    const width = await buyerLog()
      .getByRole('img')
      .last()
      .evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth);
    expect(width).toBe(480);
    await visible('A buyer looks at football heads.', makerLog());
  });

  test('what a person writes is shown as words, never run as a page', async () => {
    const said = '<img src=x onerror="document.title=1"> <b>25</b>';
    await page.getByRole('textbox', { name: 'Message' }).first().fill(said);
    await page.keyboard.press('Enter');
    await visible(`You said: ${said}`);
    expect(await page.title()).toBe('Rehearsal');
    expect(await buyerLog().locator('b').count()).toBe(0);
  });

  test('the clock is pushed to the next reminder, ten minutes, and to tomorrow morning', async () => {
    const time = page.locator('#clock');
    await expect.poll(() => time.textContent()).toBe('18:40');
    await page.getByRole('button', { name: /To the next reminder/ }).click();
    await expect.poll(() => time.textContent()).toBe('19:05');
    await page.getByRole('button', { name: /10 minutes/ }).click();
    await expect.poll(() => time.textContent()).toBe('19:15');
    await page.getByRole('button', { name: /To tomorrow morning/ }).click();
    await expect.poll(() => time.textContent()).toBe('07:00');
    expect(pushes).toHaveLength(3);
    expect(await page.getByRole('button', { name: /To the next reminder/ }).isDisabled()).toBe(true);
  });

  test('a buyer sends a picture with words under it', async () => {
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles({ name: 'like-this.png', mimeType: 'image/png', buffer: PICTURE });
    await page.getByRole('textbox', { name: 'Message' }).first().fill('like this one');
    await page.getByRole('button', { name: 'Send' }).first().click();
    await visible('like this one');
    await visible('A picture! I can keep it with the order.');
  });

  test('a second buyer has a chat of their own', async () => {
    await page.getByRole('button', { name: 'Another buyer' }).click();
    await tap('Start');
    await visible('What would you like?');
    expect(await buyerLog().getByText('like this one').count()).toBe(0);
    await page.getByRole('button', { name: 'Wren' }).click();
    await visible('like this one');
  });

  test('a buyer who blocked the bot cannot be written to until it is unblocked', async () => {
    await page.getByRole('button', { name: 'Block the bot', exact: true }).click();
    await page.getByRole('button', { name: 'Unblock the bot' }).waitFor();
    await expect(bot.api.sendMessage(BUYER, 'hello?')).rejects.toThrow('blocked by the user');
    await page.getByRole('button', { name: 'Unblock the bot' }).click();
    await page.getByRole('button', { name: 'Block the bot', exact: true }).waitFor();
    await bot.api.sendMessage(BUYER, 'hello again');
    await visible('hello again');
  });

  test('on a phone one chat is shown at a time, nothing is wider than the screen, and the other side counts what is new', async () => {
    await page.setViewportSize({ width: 390, height: 780 });
    await page.reload();
    await visible('hello again');
    expect(await makerLog().isVisible()).toBe(false);
    await bot.api.sendMessage(MAKER, 'The oven is on.');
    await page.getByRole('button', { name: 'Maker 1 new' }).click();
    await visible('The oven is on.', makerLog());
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  test('the page asks nothing of any other computer and keeps no cookies', async () => {
    const asked: string[] = [];
    page.on('request', (request) => void asked.push(new URL(request.url()).origin));
    await page.reload();
    await visible('hello again');
    expect([...new Set(asked)]).toEqual([new URL(rehearsal.url).origin]);
    expect(await page.context().cookies()).toEqual([]);
  });
});
