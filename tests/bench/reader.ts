import { readerFor } from '../../src/domain/order/reader/read.ts';
import { SHOP } from '../demoShop.ts';

/** Messages a second that the reader reads on one core, and the same for the longest message that a chat can bring. */
const MESSAGES = [
  'can I grab 2 doz 3/8 oz swim jigs, white, white skirts, clear guards, need em by the 30th, shipping to Madison WI',
  '100 eighth oz mushrooms: half purple half orange, 1/0 hooks',
  'cna i get 25 flippng heads 1/2oz 5/0 chartruese, balck gaurd',
  'make that 30 not 20',
  'Thanks so much, the box came today and they look great!',
  '15 black, 15 white, 15 chart - all 1/4 ball 2/0',
  'Howdy, long message sorry. My dad and I fish a little river where everything is rock and you lose ten jigs a day. Let us do 50 mushroom heads in 1/8 and another 50 in 3/32, all of them with 1/0 hooks, unpainted.',
  'by the end of June',
];
const NOW = Date.parse('2026-05-12T20:00:00-05:00');
const reader = readerFor(SHOP);

/** The best of many short rounds: what else the machine does can only slow a round down. */
const perSecond = (messages: readonly string[], milliseconds: number): number => {
  const until = performance.now() + milliseconds;
  let best = 0;
  for (let now = NOW; performance.now() < until; now += 1) {
    const start = performance.now();
    for (let round = 0; round < 20; round += 1) for (const message of messages) reader.read(message, now);
    best = Math.max(best, (20_000 * messages.length) / (performance.now() - start));
  }
  return Math.round(best);
};

perSecond(MESSAGES, 2000);
console.table({
  'messages of every kind': { 'a second': perSecond(MESSAGES, 6000), target: 20_000 },
  'a wall of 4,096 characters': {
    'a second': perSecond(['20 1/4 ball black, '.repeat(215).slice(0, 4096)], 1500),
    target: '',
  },
});
