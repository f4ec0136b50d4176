// Bubbles and their buttons as page elements. Words from the chats only ever become text, never markup.

/** An element with properties and children; `undefined` children are left out. */
export function element(tag, properties = {}, ...children) {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children.filter((child) => child !== undefined));
  return made;
}

/** One message with its time beside it; `press(button, bubble, pressed)` is called with the button that was tapped. */
export function bubbleElement(bubble, press) {
  const card = element('div', { className: 'card' });
  card.append(
    ...contextOf(bubble),
    ...picturesOf(bubble),
    ...(bubble.runs.length > 0
      ? [element('div', { className: 'text', dir: 'auto' }, ...bubble.runs.map(runElement))]
      : []),
    ...(bubble.thing ? [element('div', { className: 'thing' }, bubble.thing)] : []),
    ...(bubble.buttons.length > 0 ? [buttonsElement(bubble, press)] : []),
  );
  const time = element('time', { className: 'time-sent', dateTime: `${bubble.day}T${bubble.clock}` }, bubble.clock);
  if (bubble.edited) time.append(element('span', {}, 'edited'));
  return element('article', { className: `bubble ${bubble.from}` }, card, time);
}

function contextOf({ answers, forwardedFrom }) {
  const lines = [forwardedFrom && `Forwarded from ${forwardedFrom}`, answers];
  return lines.filter(Boolean).map((line) => element('div', { className: 'context', dir: 'auto' }, line));
}

function picturesOf({ photo, document: file }) {
  if (photo) {
    const { address, width, height } = photo;
    return [element('img', { className: 'photo', src: address, width, height, alt: 'Picture in this message' })];
  }
  return file ? [element('a', { href: file.address, download: file.name }, `File: ${file.name}`)] : [];
}

const TAGS = {
  bold: 'strong',
  italic: 'em',
  underline: 'u',
  strikethrough: 's',
  code: 'code',
  pre: 'code',
  blockquote: 'q',
};

function runElement({ text, looks, href }) {
  const tags = looks.map((look) => TAGS[look]).filter(Boolean);
  const inner = href ? outsideLink(href, text) : document.createTextNode(text);
  return tags.reduce((child, tag) => element(tag, {}, child), inner);
}

const outsideLink = (href, text) => element('a', { href, target: '_blank', rel: 'noopener noreferrer' }, text);

function buttonsElement(bubble, press) {
  const rows = bubble.buttons.map((row) =>
    element('div', {}, ...row.map((button) => buttonElement(button, bubble, press))),
  );
  return element('div', { className: 'buttons' }, ...rows);
}

function buttonElement(button, bubble, press) {
  if (button.kind === 'link') return outsideLink(button.value, button.label);
  const made = element('button', { type: 'button', disabled: button.kind === 'other' }, button.label);
  made.addEventListener('click', () => press(button, bubble, made));
  return made;
}

const DAYS = new Intl.DateTimeFormat('en-GB', {
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** A calendar day (YYYY-MM-DD) in words. */
export const dayInWords = (day) => DAYS.format(new Date(`${day}T12:00:00Z`));
