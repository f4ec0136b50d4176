import { describe, expect, test } from 'vitest';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { BUYER, MAKER, OTHER, told, type Story } from './story.ts';

const HEADS = '25 quarter ounce football green pumpkin, 3/0, no guard, no skirt, to Minnesota';
/** As a provider's token looks; this one is nobody's. */
const paymentToken = '284685063:TEST:rehearsed-provider';
const waiting = (shop: Shop): Shop => ({
  ...shop,
  payment: { ...shop.payment, startsWhen: 'deposit', deposit: 30_000 },
});

async function ordered({ buyer }: Story): Promise<void> {
  await buyer.says(HEADS);
  await buyer.taps('Order this');
  await buyer.says('Sam Fisher, 12 Shore Road, Duluth, MN 55801');
}

const bills = ({ rehearsal }: Story, person = BUYER) =>
  rehearsal.chats.messagesOf(person).filter(({ invoice }) => invoice !== undefined);

/** Pays the newest bill in a chat, as far as the program lets it. */
async function pays(story: Story, person = BUYER, bill = bills(story).at(-1)): Promise<void> {
  story.rehearsal.chats.pay(person, bill?.message_id ?? 0);
  await story.settle();
  await until(() => story.rehearsal.room.read().queries.every(({ kind }) => kind !== 'checkout'));
  await story.settle();
}

async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 1_000 && !holds(); tries += 1) await new Promise((resolve) => setTimeout(resolve, 3));
}

describe('where a payment provider is set', () => {
  test('a buyer pays the deposit and the rest in the chat; each is noted once and both sides hear', () =>
    told(
      async (story) => {
        const { buyer, maker, desk } = story;
        await ordered(story);
        const due = desk().orders['K-1001']?.money.total ?? 0;
        await buyer.says('K-1001');
        expect(buyer.buttons().filter((label) => label.startsWith('Pay'))).toHaveLength(2);
        await buyer.taps('Pay the deposit here');
        const [bill] = bills(story);
        const deposit = Math.round(due * 0.3);
        expect(bill?.invoice).toMatchObject({
          title: 'Deposit for order K-1001',
          currency: 'USD',
          total_amount: deposit,
        });
        await pays(story);
        expect(desk().orders['K-1001']?.ledger).toMatchObject([{ kind: 'paid', cents: deposit }]);
        expect(desk().held).toEqual([]);
        expect(maker.sees()).toMatch(
          /Sam has paid \$[\d.]+ of K-1001 here in the chat. Still due.*The bench may begin it/,
        );
        const heard = buyer.chat().slice(-2).join('\n');
        expect(heard).toContain('Still due');
        expect(heard).toContain('Order K-1001 has its turn at the bench now. It ships');
        await buyer.says('K-1001');
        await buyer.taps('Pay here');
        await pays(story);
        expect(desk().orders['K-1001']?.ledger.map(({ cents }) => cents)).toEqual([deposit, due - deposit]);
        expect(buyer.sees()).toContain('paid in full');
        await buyer.says('K-1001');
        expect(buyer.buttons().some((label) => label.startsWith('Pay'))).toBe(false);
        expect(await maker.taps('Money of K-1001')).toMatch(
          /goes back at your payment provider: rehearsed-.*, rehearsed-/,
        );
      },
      { paymentToken, shop: waiting },
    ));

  test('a bill that was paid another way meanwhile, or that is somebody else’s, is not let through', () =>
    told(
      async (story) => {
        const { buyer, maker, desk, rehearsal } = story;
        await ordered(story);
        await buyer.taps('Pay here');
        const [bill] = bills(story);
        await maker.says('paid K-1001 5');
        await pays(story);
        expect(buyer.notices().at(-1)).toContain('What is due has changed, so nothing was paid');
        expect(desk().orders['K-1001']?.ledger).toHaveLength(1);
        rehearsal.room.change(
          (chats) =>
            ({
              chats: { ...chats, messages: [...chats.messages, { ...bill, chat: { id: OTHER, type: 'private' } }] },
              result: undefined,
            }) as never,
        );
        await pays(story, OTHER, bill);
        expect(desk().orders['K-1001']?.ledger).toHaveLength(1);
      },
      { paymentToken },
    ));

  test('the same payment told twice counts once, and one that comes for a closed order is told to the maker', () =>
    told(
      async (story) => {
        const { buyer, maker, desk, rehearsal } = story;
        await ordered(story);
        await buyer.taps('Pay here');
        await pays(story);
        const paid = rehearsal.chats.messagesOf(BUYER).find(({ successful_payment }) => successful_payment);
        const again = async (change: object): Promise<void> => {
          const payment = { ...paid?.successful_payment, ...change };
          rehearsal.room.change((chats) => ({
            chats: {
              ...chats,
              nextUpdateId: chats.nextUpdateId + 1,
              updates: [
                ...chats.updates,
                { update_id: chats.nextUpdateId, message: { ...paid, successful_payment: payment } } as never,
              ],
            },
            result: undefined,
          }));
          await story.settle();
        };
        await again({});
        expect(desk().orders['K-1001']?.ledger).toHaveLength(1);
        await again({ telegram_payment_charge_id: 'late', total_amount: 500 });
        expect(desk().orders['K-1001']?.ledger).toHaveLength(2);
        expect(maker.sees()).toContain('To give back: $5.00');
        await again({ telegram_payment_charge_id: 'astray-1', invoice_payload: 'K-9999=whole' });
        expect(maker.sees()).toMatch(/closed or not here[\s\S]*astray-1/);
      },
      { paymentToken },
    ));

  test('the provider’s token is in no log line, no letter and no chat', async () => {
    const logged: string[] = [];
    await told(
      async (story) => {
        await ordered(story);
        await story.buyer.taps('Pay here');
        await pays(story);
        expect(JSON.stringify(story.desk())).not.toContain('rehearsed-provider');
        for (const person of [BUYER, MAKER])
          expect(JSON.stringify(story.rehearsal.chats.messagesOf(person))).not.toContain(paymentToken);
      },
      { paymentToken, log: (...line) => void logged.push(JSON.stringify(line)) },
    );
    expect(logged.length).toBeGreaterThan(0);
    expect(logged.join('\n')).not.toContain('rehearsed-provider');
  });
});

describe('where none is set', () => {
  test('nobody is offered to pay in the chat, and a forged press sends no bill', () =>
    told(async (story) => {
      await ordered(story);
      await story.buyer.says('K-1001');
      expect(story.buyer.buttons().some((label) => label.startsWith('Pay'))).toBe(false);
      await story.buyer.forges('invoice|K-1001|0|whole');
      await story.other.forges('invoice|K-1001|0|whole');
      expect(bills(story)).toEqual([]);
    }));
});
