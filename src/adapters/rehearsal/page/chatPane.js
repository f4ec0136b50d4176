// One chat on the page: its messages, the words to be said, and what a tap was answered with.
import { bubbleElement, dayInWords, element } from './bubbles.js';

const NOTICE_SHOWN = 6000;

/** Fills a chat's section; `send(path, body)` carries out what is done there and answers whether it was, or the problem. */
export function chatPane(section, send) {
  section.querySelector('[data-part="below"]').append(document.querySelector('#below').content.cloneNode(true));
  const part = (name) => section.querySelector(`[data-part="${name}"]`);
  const pane = { part, send, chat: undefined, shown: new Map(), noticeId: 0, fading: undefined, isAtEnd: true };
  part('form').addEventListener('submit', (event) => {
    event.preventDefault();
    void say(pane);
  });
  part('words').addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
    event.preventDefault();
    void say(pane);
  });
  part('file').addEventListener('change', () => showFiles(pane));
  stayAtEnd(pane);
  return { show: (chat) => show(pane, chat) };
}

function show(pane, chat) {
  const isOther = pane.chat?.id !== chat.id;
  if (isOther) {
    pane.shown.clear();
    pane.part('log').replaceChildren();
    pane.noticeId = pane.chat ? (chat.notice?.id ?? 0) : 0;
  }
  const isFirst = pane.chat === undefined;
  pane.chat = chat;
  pane.part('name').textContent = chat.name;
  if (isOther) pane.isAtEnd = true;
  showKeys(pane);
  showCommands(pane);
  showBubbles(pane);
  for (const name of ['words', 'file', 'send']) pane.part(name).disabled = chat.blocked;
  pane.part('words').placeholder = chat.blocked ? 'The bot is blocked here' : 'Write a message';
  if (chat.notice && chat.notice.id > pane.noticeId && !isFirst) tell(pane, chat.notice.text);
  pane.noticeId = chat.notice?.id ?? pane.noticeId;
}

function showBubbles(pane) {
  const log = pane.part('log');
  const wanted = itemsOf(pane);
  for (const [key, old] of pane.shown) {
    if (wanted.some((item) => item.key === key)) continue;
    old.made.remove();
    pane.shown.delete(key);
  }
  wanted.forEach((item, index) => place(pane, item, log, index));
  toEnd(pane);
}

/** Who reads the newest message keeps reading the newest; who has scrolled back is left in peace. */
function stayAtEnd(pane) {
  const log = pane.part('log');
  log.addEventListener('scroll', () => {
    pane.isAtEnd = log.scrollHeight - log.scrollTop - log.clientHeight < 60;
  });
  new ResizeObserver(() => toEnd(pane)).observe(log);
}

function toEnd(pane) {
  if (pane.isAtEnd) pane.part('log').scrollTop = pane.part('log').scrollHeight;
}

/** Puts an item in its place, made anew only when it has changed, so that the keyboard's place is kept. */
function place(pane, item, log, index) {
  const old = pane.shown.get(item.key);
  if (old?.text === item.text)
    return void (log.children[index] === old.made || log.insertBefore(old.made, log.children[index] ?? null));
  const made = item.make();
  old?.made.remove();
  log.insertBefore(made, log.children[index] ?? null);
  pane.shown.set(item.key, { text: item.text, made });
}

function itemsOf(pane) {
  const { bubbles } = pane.chat;
  if (bubbles.length === 0) return [{ key: 'empty', text: '', make: () => emptyElement(pane) }];
  return bubbles.flatMap((bubble, index) => {
    const message = {
      key: `m${bubble.id}`,
      text: JSON.stringify(bubble),
      make: () => bubbleElement(bubble, (...tap) => press(pane, ...tap)),
    };
    if (bubbles[index - 1]?.day === bubble.day) return [message];
    const words = dayInWords(bubble.day);
    return [{ key: `d${bubble.id}`, text: words, make: () => element('div', { className: 'day' }, words) }, message];
  });
}

const FIRST_WORDS = {
  buyer: 'You are the buyer here. Press Start, or write what you want.',
  maker: 'You are the maker here. Press Start, so that the bot can write to you.',
};

function emptyElement(pane) {
  const start = element('button', { type: 'button' }, 'Start');
  start.addEventListener('click', () => deliver(pane, '/chat/say', { text: '/start' }));
  return element('div', { className: 'empty' }, element('div', {}, FIRST_WORDS[pane.chat.role]), start);
}

async function press(pane, button, bubble, pressed) {
  if (button.kind === 'copy') return void navigator.clipboard.writeText(button.value).then(() => tell(pane, 'Copied.'));
  pressed.setAttribute('aria-busy', 'true');
  if (button.kind === 'pay') await deliver(pane, '/chat/pay', { messageId: bubble.id });
  else await deliver(pane, '/chat/tap', { messageId: bubble.id, data: button.value });
  setTimeout(() => pressed.removeAttribute('aria-busy'), 1200);
}

async function say(pane) {
  const [words, file] = [pane.part('words'), pane.part('file')];
  const text = words.value;
  if (file.files.length > 0) {
    if (!(await deliver(pane, '/chat/attach', formOf(pane, file.files, text)))) return;
    file.value = '';
    showFiles(pane);
  } else if (text.trim() === '' || !(await deliver(pane, '/chat/say', { text }))) return;
  if (words.value === text) words.value = '';
}

function formOf(pane, files, caption) {
  const form = new FormData();
  form.append('personId', pane.chat.id);
  form.append('caption', caption);
  [...files].forEach((file, index) => form.append(`file${index}`, file));
  return form;
}

/** Carries out an act of this chat's person; says so in the chat when it cannot be done. */
async function deliver(pane, path, body) {
  const { ok, problem } = await pane.send(path, body instanceof FormData ? body : { personId: pane.chat.id, ...body });
  if (!ok) tell(pane, problem);
  return ok;
}

function tell(pane, text) {
  const notice = pane.part('notice');
  notice.textContent = text;
  notice.hidden = false;
  clearTimeout(pane.fading);
  pane.fading = setTimeout(() => (notice.hidden = true), NOTICE_SHOWN);
}

function showFiles(pane) {
  const names = [...pane.part('file').files].map(({ name }) => name);
  const remove = element('button', { type: 'button' }, 'Remove');
  remove.addEventListener('click', () => {
    pane.part('file').value = '';
    showFiles(pane);
  });
  pane.part('files').hidden = names.length === 0;
  pane.part('files').replaceChildren(`To send: ${names.join(', ')}`, remove);
}

function showKeys(pane) {
  const keys = pane.chat.keys.flat();
  if (pane.keysShown === keys.join('\n')) return;
  pane.keysShown = keys.join('\n');
  pane.part('keys').hidden = keys.length === 0;
  pane.part('keys').replaceChildren(...keys.map((text) => sayButton(pane, text, text)));
}

function showCommands(pane) {
  const { commands } = pane.chat;
  if (pane.commandsShown === JSON.stringify(commands)) return;
  pane.commandsShown = JSON.stringify(commands);
  pane.part('commands').hidden = commands.length === 0;
  const buttons = commands.map(({ command, description }) =>
    sayButton(pane, `/${command}`, `/${command} ${description}`),
  );
  pane.part('command-list').replaceChildren(...buttons);
}

function sayButton(pane, text, label) {
  const button = element('button', { type: 'button' }, label);
  button.addEventListener('click', () => deliver(pane, '/chat/say', { text }));
  return button;
}
