import type { Instant } from '../craft/time.ts';
import { taught } from '../bench/learned.ts';
import { LANGUAGES, type Language } from '../shop/words.ts';
import { accept } from './acts/accept.ts';
import { again } from './acts/again.ts';
import { reply } from './acts/asks.ts';
import { bench, count, done, look, more, undo } from './acts/bench.ts';
import { apply, propose } from './acts/changes.ts';
import { delay, wait } from './acts/delay.ts';
import { lot } from './acts/lot.ts';
import { toOrder } from './acts/loose.ts';
import { mix } from './acts/mix.ts';
import { photos } from './acts/photos.ts';
import {
  addLine,
  answer,
  offered,
  back,
  change,
  dropLine,
  each,
  keepOn,
  line,
  newDraft,
  onDraft,
  show,
  startOver,
  take,
  usual,
} from './acts/draft.ts';
import { arrived, digest, queue, stock, timers, week } from './acts/maker.ts';
import { pay, unpaid } from './acts/money.ts';
import { checkout, invoice, paidHere } from './acts/payHere.ts';
import { paper, receipt } from './acts/papers.ts';
import { bought, buy, stockIs } from './acts/stockWords.ts';
import { sameAddress } from './acts/answers.ts';
import { cancel, cancelYes, grantCancel, refuseCancel } from './acts/cancel.ts';
import { order, orders, readdress } from './acts/orders.ts';
import { edited, reworded } from './acts/edited.ts';
import { exportOwn, forget, forgetDone, forgetYes } from './acts/privacy.ts';
import { help } from './acts/greet.ts';
import { said } from './acts/said.ts';
import { sent } from './acts/sent.ts';
import { reship } from './acts/reship.ts';
import { posted, tracking, untracked } from './acts/ship.ts';
import { takeSooner } from './acts/sooner.ts';
import { start } from './acts/start.ts';
import { tick } from './acts/tick.ts';
import { askAbout, deny, grant } from './acts/wishes.ts';
import { NOTHING_AROUND, type Around } from './around.ts';
import type { Command } from './command.ts';
import type { Person, Sender } from './person.ts';
import type { Desk } from './state.ts';
import type { ActName, Tap } from './tap.ts';
import { recorded } from './recorded.ts';
import { overtaken } from './undo.ts';
import { isMaker, nothing, withPerson, type Decision, type Turn, type World } from './turn.ts';

type Act = Readonly<{ who: 'anyone' | 'maker'; act: (turn: Turn, tap: Tap) => Decision }>;

/** Who may do what. A tap can be forged, so this table is asked at every tap, whatever buttons were shown. */
const ACT: Readonly<Record<ActName, Act>> = {
  answer: { who: 'anyone', act: onDraft(answer) },
  offered: { who: 'anyone', act: onDraft(offered) },
  change: { who: 'anyone', act: onDraft(change) },
  take: { who: 'anyone', act: onDraft(take) },
  sooner: { who: 'anyone', act: onDraft(takeSooner) },
  line: { who: 'anyone', act: onDraft(line) },
  'add-line': { who: 'anyone', act: onDraft(addLine) },
  'drop-line': { who: 'anyone', act: onDraft(dropLine) },
  usual: { who: 'anyone', act: onDraft(usual) },
  each: { who: 'anyone', act: onDraft(each) },
  back: { who: 'anyone', act: onDraft(back) },
  'start-over': { who: 'anyone', act: onDraft(startOver) },
  'keep-on': { who: 'anyone', act: onDraft(keepOn) },
  show: { who: 'anyone', act: onDraft(show) },
  accept: { who: 'anyone', act: accept },
  'ask-maker': { who: 'anyone', act: askAbout },
  help: { who: 'anyone', act: help },
  new: { who: 'anyone', act: (turn) => newDraft(turn, 'over') },
  orders: { who: 'anyone', act: orders },
  order: { who: 'anyone', act: order },
  cancel: { who: 'anyone', act: cancel },
  'cancel-yes': { who: 'anyone', act: cancelYes },
  readdress: { who: 'anyone', act: readdress },
  'same-address': { who: 'anyone', act: sameAddress },
  reship: { who: 'anyone', act: reship },
  wait: { who: 'anyone', act: wait },
  invoice: { who: 'anyone', act: invoice },
  receipt: { who: 'anyone', act: receipt },
  again: { who: 'anyone', act: again },
  'to-order': { who: 'anyone', act: toOrder },
  reworded: { who: 'anyone', act: reworded },
  export: { who: 'anyone', act: exportOwn },
  forget: { who: 'anyone', act: forget },
  'forget-yes': { who: 'anyone', act: forgetYes },
  bench: { who: 'maker', act: bench },
  start: { who: 'maker', act: start },
  done: { who: 'maker', act: done },
  count: { who: 'maker', act: count },
  more: { who: 'maker', act: more },
  mix: { who: 'maker', act: mix },
  undo: { who: 'maker', act: undo },
  queue: { who: 'maker', act: queue },
  look: { who: 'maker', act: look },
  lot: { who: 'maker', act: lot },
  photos: { who: 'maker', act: photos },
  propose: { who: 'maker', act: propose },
  apply: { who: 'maker', act: apply },
  delay: { who: 'maker', act: delay },
  timers: { who: 'maker', act: timers },
  stock: { who: 'maker', act: stock },
  arrived: { who: 'maker', act: arrived },
  'stock-is': { who: 'maker', act: stockIs },
  buy: { who: 'maker', act: buy },
  bought: { who: 'maker', act: bought },
  pay: { who: 'maker', act: pay },
  unpaid: { who: 'maker', act: unpaid },
  paper: { who: 'maker', act: paper },
  digest: { who: 'maker', act: digest },
  week: { who: 'maker', act: week },
  posted: { who: 'maker', act: posted },
  untracked: { who: 'maker', act: untracked },
  tracking: { who: 'maker', act: tracking },
  'refuse-cancel': { who: 'maker', act: refuseCancel },
  'grant-cancel': { who: 'maker', act: grantCancel },
  reply: { who: 'maker', act: reply },
  grant: { who: 'maker', act: grant },
  deny: { who: 'maker', act: deny },
};

/** What a command comes to: the next state and what is said. Pure: the same state, command and instant give the same decision. */
export const decide =
  (world: World) =>
  (desk: Desk, command: Command, now: Instant, around: Around = NOTHING_AROUND): Decision =>
    noted(
      world,
      command,
      desk,
      recorded(
        world.shop,
        desk,
        command,
        decideIn({ ...world, shop: taught(world.shop, desk.learned) }, desk, command, now, around),
        now,
      ),
    );

const noted = (world: World, command: Command, before: Desk, decision: Decision): Decision =>
  command.type === 'tick' || !isMaker(world, command.by.id)
    ? decision
    : { ...decision, desk: overtaken(before, decision.desk) };

function decideIn(world: World, desk: Desk, command: Command, now: Instant, around: Around): Decision {
  if (command.type === 'tick') return forgetDone(tick(world, desk, now, around));
  const by = personOf(world, desk, command.by, now);
  const turn: Turn = { world, desk: withPerson(desk, by), now, by, around };
  switch (command.type) {
    case 'said':
      return belowWords(said(turn, command.text), by);
    case 'edited':
      return edited(turn, command.text);
    case 'tapped':
      return tapped(turn, command.tap);
    case 'sent':
      return sent(turn, command);
    case 'checkout':
      return checkout(turn, command);
    case 'paid':
      return paidHere(turn, command);
    case 'reach':
      return nothing(withPerson(desk, { ...by, unreachable: !command.reachable }));
  }
}

/** What answers words stands below them: a card far above, written over, would not be seen. Other cards that changed stay where they are. */
const belowWords = ({ cards, ...decision }: Decision, { id }: Person): Decision => ({
  ...decision,
  cards: cards.map((one) => (one.to === id && !one.slot?.startsWith('lot:') ? { ...one, place: 'below' } : one)),
});

function tapped(turn: Turn, tap: Tap | null): Decision {
  if (tap === null) return { ...nothing(turn.desk), toast: 'unreadable' };
  const { who, act } = ACT[tap.act];
  if (who === 'maker' && !isMaker(turn.world, turn.by.id)) return { ...nothing(turn.desk), toast: 'not-yours' };
  return act(turn, tap);
}

/** The sender as the desk knows them; someone new speaks the language of their client, if the program does. */
function personOf({ shop }: World, desk: Desk, { id, name, language }: Sender, now: Instant): Person {
  const known = desk.people[id];
  if (known) return { ...known, name, unreachable: false, seenAt: now };
  return {
    id,
    name,
    language: languageOf(language) ?? shop.language,
    unreachable: false,
    asked: null,
    place: null,
    past: [],
    album: null,
    reworded: null,
    albumFor: null,
    loose: null,
    seenAt: now,
  };
}

const languageOf = (tag: string | null): Language | undefined =>
  LANGUAGES.find((language) => tag?.toLowerCase().split(/[-_]/)[0] === language);
