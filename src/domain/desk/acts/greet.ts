import { cautionsAt } from '../../craft/care.ts';
import type { Draft } from '../../order/draft.ts';
import { draftTap, inRows, wordButton } from '../draftButtons.ts';
import { benchTap } from '../benchButtons.ts';
import { againButton, SURE } from '../orderButtons.ts';
import { card, says, withPerson, type Decision, type Turn } from '../turn.ts';
import { draftOf, newButton, newDraft } from './draft.ts';

/** Asks before a draft is dropped, for good or for an order that is made `again`: words would be lost. */
export function askToDrop(turn: Turn, draft: Draft, again: string | null = null): Decision {
  const drop = again === null ? wordButton('start-over', draftTap(draft, 'start-over')) : againButton(again, SURE);
  const rows = [[drop, wordButton('keep-on', draftTap(draft, 'keep-on'))]];
  return says(turn.desk, card(turn.by.id, { code: 'drop-sure', draft, again }, { rows }));
}

/** Greets and asks the first question; an open draft is offered to go on with, so that silence loses nothing. */
export function welcome(turn: Turn): Decision {
  const draft = draftOf(turn);
  if (draft !== undefined && draft.version > 0) {
    const rows = [
      [wordButton('keep-on', draftTap(draft, 'keep-on')), wordButton('start-over', draftTap(draft, 'start-over'))],
    ];
    return says(turn.desk, card(turn.by.id, { code: 'continue', draft, since: draft.touchedAt }, { rows }));
  }
  const rows = [[wordButton('my-orders', benchTap('orders')), wordButton('help', benchTap('help'))]];
  const first = newDraft(turn, 'below');
  return { ...first, cards: [card(turn.by.id, { code: 'welcome' }, { rows }), ...first.cards] };
}

export function help(turn: Turn): Decision {
  return says(
    turn.desk,
    card(
      turn.by.id,
      { code: 'help' },
      {
        rows: [
          [newButton(), wordButton('my-orders', benchTap('orders'))],
          [wordButton('ask-maker', benchTap('ask-maker'))],
        ],
      },
    ),
  );
}

const MAKER_ROWS = inRows(
  [
    wordButton('bench', benchTap('bench')),
    wordButton('queue', benchTap('queue')),
    wordButton('timers', benchTap('timers')),
    wordButton('stock', benchTap('stock')),
  ],
  2,
);

export function makerHelp(turn: Turn): Decision {
  return says(turn.desk, card(turn.by.id, { code: 'maker-help' }, { rows: MAKER_ROWS }));
}

/** Words of the maker's that are none it knows; those that were meant for a buyer find the button of the newest question at hand. */
export function makerUnclear(turn: Turn): Decision {
  const open = Object.values(turn.desk.questions).filter(({ answeredAt }) => answeredAt === null);
  const reply = open.slice(-1).map(({ id }) => [wordButton('reply', benchTap('reply', id))]);
  return says(turn.desk, card(turn.by.id, { code: 'maker-unclear' }, { rows: [...reply, ...MAKER_ROWS] }));
}

export function makerWelcome(turn: Turn): Decision {
  return says(
    turn.desk,
    card(turn.by.id, { code: 'maker-welcome', cautions: cautionsAt('first-start', []) }, { rows: MAKER_ROWS }),
  );
}

export function otherLanguage(turn: Turn, text: string): Decision {
  const asked = /espa/i.test(text) ? 'es' : /english/i.test(text) ? 'en' : turn.by.language === 'en' ? 'es' : 'en';
  const by = { ...turn.by, language: asked } as const;
  return help({ ...turn, by, desk: withPerson(turn.desk, by) });
}
