import { Bot, InlineKeyboard, InputFile } from 'grammy';
import { Resvg } from '@resvg/resvg-js';

/** A small bot for the page's own test: it has a card with choices, a picture, a note and words from people. */
export function echoBot(token: string, apiRoot: string, maker: number): Bot {
  const bot = new Bot(token, { client: { apiRoot } });
  bot.command('start', (ctx) =>
    ctx.reply('What would you like? Tap a style, or write it in your own words.', { reply_markup: STYLES }),
  );
  bot.callbackQuery(/^style:(\w+)$/, async (ctx) => {
    const style = ctx.match[1] ?? '';
    await ctx.editMessageText(`${style[0]?.toUpperCase()}${style.slice(1)} head. Which weight?`, {
      reply_markup: WEIGHTS,
    });
    await ctx.answerCallbackQuery(`${style} noted`);
    await bot.api.sendMessage(maker, `A buyer looks at ${style} heads.`);
  });
  bot.callbackQuery(/^weight:(.+)$/, async (ctx) => {
    const text = `Style: football\nWeight: ${ctx.match[1]} oz\nTotal: $31.25`;
    const caption_entities = [{ type: 'bold' as const, offset: text.indexOf('Total'), length: 13 }];
    await ctx.replyWithPhoto(new InputFile(PICTURE, 'head.png'), {
      caption: text,
      caption_entities,
      reply_markup: ORDER,
    });
    await ctx.answerCallbackQuery();
  });
  bot.callbackQuery('order', (ctx) => ctx.answerCallbackQuery('Ordered'));
  bot.on('message:photo', (ctx) => ctx.reply('A picture! I can keep it with the order.'));
  bot.on('message:text', (ctx) =>
    ctx.reply(`You said: ${ctx.message.text}`, { reply_parameters: { message_id: ctx.msgId } }),
  );
  bot.catch(() => undefined);
  return bot;
}

const STYLES = new InlineKeyboard()
  .text('Ball', 'style:ball')
  .text('Football', 'style:football')
  .row()
  .text('Swim', 'style:swim')
  .text('Ask the maker', 'ask');
const WEIGHTS = new InlineKeyboard()
  .text('1/4 oz', 'weight:1/4')
  .text('3/8 oz', 'weight:3/8')
  .text('1/2 oz', 'weight:1/2');
const ORDER = new InlineKeyboard()
  .text('Order these', 'order')
  .row()
  .text('Change something', 'change')
  .text('Cancel', 'cancel');

const PICTURE = new Resvg(
  `<svg xmlns="http://www.w3.org/2000/svg" width="480" height="240"><rect width="480" height="240" fill="#dfe5e3"/>
   <path d="M170 122h190v52a44 44 0 0 1-72 32" fill="none" stroke="#6b757b" stroke-width="9" stroke-linecap="round"/>
   <ellipse cx="160" cy="116" rx="70" ry="46" fill="#5d6a2b"/><circle cx="132" cy="100" r="11" fill="#fff"/><circle cx="132" cy="100" r="5"/></svg>`,
)
  .render()
  .asPng();
