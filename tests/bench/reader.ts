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

const perSecond = (messages: readonly string[], milliseconds: number): number => {
  const until = performance.now() + milliseconds;
  let count = 0;
  while (performance.now() < until)
    for (const message of messages) count += reader.read(message, NOW + count).lines.length >= 0 ? 1 : 0;
  return Math.round((count * 1000) / milliseconds);
};

perSecond(MESSAGES, 1500);
console.table({
  'messages of every kind': { 'a second': perSecond(MESSAGES, 3000), target: 20_000 },
  'a wall of 4,096 characters': {
    'a second': perSecond(['20 1/4 ball black, '.repeat(215).slice(0, 4096)], 1500),
    target: '',
  },
});
