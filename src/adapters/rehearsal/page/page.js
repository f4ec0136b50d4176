// The rehearsal page: two chats, the clock, and who is shown.
import { dayInWords, element } from './bubbles.js';
import { chatPane } from './chatPane.js';

const desk = document.querySelector('#desk');
const sections = Object.fromEntries([...desk.children].map((section) => [section.dataset.role, section]));
const panes = Object.fromEntries(Object.entries(sections).map(([role, section]) => [role, chatPane(section, send)]));
const state = { view: undefined, buyerId: undefined, seen: {} };

/** Posts an act; answers with its result, or with the problem in a sentence. */
async function send(path, body) {
  const sent =
    body instanceof FormData
      ? { body }
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
  try {
    return await (await fetch(path, { method: 'POST', ...sent })).json();
  } catch {
    return { ok: false, problem: 'The program is not answering, so nothing was sent.' };
  }
}

function showAll() {
  const { view } = state;
  const buyers = view.chats.filter(({ role }) => role === 'buyer');
  // Someone who was just added is shown as soon as the view brings them.
  state.buyerId ??= buyers[0]?.id;
  const buyer = buyers.find(({ id }) => id === state.buyerId) ?? buyers[0];
  const maker = view.chats.find(({ role }) => role === 'maker');
  showClock(view.clock);
  if (buyer) {
    panes.buyer.show(buyer);
    showPeople(buyers, buyer);
  }
  if (maker) panes.maker.show(maker);
  showUnseen({ buyer, maker });
}

function showClock({ day, clock, zone, nextReminder }) {
  const time = document.querySelector('#clock');
  time.textContent = clock;
  time.dateTime = `${day}T${clock}`;
  document.querySelector('#day').textContent = dayInWords(day);
  document.querySelector('#day').title = zone;
  document.querySelector('#next-reminder').textContent = nextReminder ? `at ${nextReminder}` : 'none is set';
  document.querySelector('[data-push="next-reminder"]').disabled = !nextReminder;
}

function showPeople(buyers, shown) {
  const block = sections.buyer.querySelector('[data-part="block"]');
  block.textContent = shown.blocked ? 'Unblock the bot' : 'Block the bot';
  const group = sections.buyer.querySelector('[data-part="people"]');
  const key = JSON.stringify([shown.id, buyers.map(({ id, name }) => [id, name])]);
  if (group.dataset.key === key) return;
  group.dataset.key = key;
  group.replaceChildren(...(buyers.length > 1 ? buyers.map((buyer) => personButton(buyer, shown)) : []));
}

function personButton({ id, name }, shown) {
  const button = element('button', { type: 'button' }, name);
  button.setAttribute('aria-pressed', String(id === shown.id));
  button.addEventListener('click', () => {
    state.buyerId = id;
    showAll();
  });
  return button;
}

/** On a phone only one chat is seen; the other side's button counts what came there meanwhile. */
function showUnseen(chats) {
  for (const side of document.querySelectorAll('[data-side]')) {
    const role = side.dataset.side;
    const bubbles = chats[role]?.bubbles ?? [];
    const isShown = desk.dataset.shown === role;
    if (isShown || state.seen[role] === undefined) state.seen[role] = bubbles.at(-1)?.id ?? 0;
    const count = bubbles.filter(({ id, from }) => from === 'bot' && id > state.seen[role]).length;
    side.querySelector('b').hidden = count === 0;
    side.querySelector('b').textContent = `${count} new`;
    side.setAttribute('aria-pressed', String(isShown));
  }
}

for (const side of document.querySelectorAll('[data-side]'))
  side.addEventListener('click', () => {
    desk.dataset.shown = side.dataset.side;
    showAll();
  });

for (const button of document.querySelectorAll('[data-push]'))
  button.addEventListener('click', async () => {
    button.setAttribute('aria-busy', 'true');
    await send('/chat/clock', { to: button.dataset.push });
    button.removeAttribute('aria-busy');
  });

sections.buyer.querySelector('[data-part="add"]').addEventListener('click', async () => {
  const count = state.view.chats.filter(({ role }) => role === 'buyer').length;
  const { ok, result } = await send('/chat/people', { firstName: `Buyer ${count + 1}` });
  if (!ok) return;
  state.buyerId = result;
  showAll();
});

sections.buyer.querySelector('[data-part="block"]').addEventListener('click', () => {
  const isBlocked = state.view.chats.find(({ id }) => id === state.buyerId)?.blocked;
  void send(isBlocked ? '/chat/unblock' : '/chat/block', { personId: state.buyerId });
});

const events = new EventSource('/chat/events');
events.addEventListener('message', ({ data }) => {
  document.querySelector('#lost').hidden = true;
  state.view = JSON.parse(data);
  showAll();
});
events.addEventListener('error', () => (document.querySelector('#lost').hidden = false));
