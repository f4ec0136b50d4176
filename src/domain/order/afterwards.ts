import { withoutGreeting } from './greeting.ts';

/** Whether words ask after an order that was placed: where it is, whether it is done, whether the money came, how to pay, or to cancel it.
 *  `when` it ships may as well be asked of one that is being put together.
 *  @example asksAfter('hi, where are my jigs?') //=> 'status'
 *  @example asksAfter('when will it ship?') //=> 'when' */
export function asksAfter(text: string): 'status' | 'when' | undefined {
  const said = withoutGreeting(text);
  if (said.length > LONGEST) return undefined;
  if (STATUS.some((words) => words.test(said))) return 'status';
  return WHEN.test(said) ? 'when' : undefined;
}

/** Whether words are about heads ordered before, rather than some to be ordered.
 *  @example speaksOfOwn('can you make the hooks sharper on mine?') //=> true */
export const speaksOfOwn = (text: string): boolean => OWN.test(text.toLowerCase());

const OWN =
  /\bmine\b|\b(?:to|on|in|into|of|from|about|with|change|update|edit|modify|delay|hold) my (?:(?:open|current|last) )?(?:order|jigs|heads|parcel|package|lures)\b|(?<!\p{L})(?:el|la|los|las|lo) m[ií][oa]s?(?!\p{L})|(?<!\p{L})(?:a|en|de|del|sobre|con|cambiar|cambie|modificar) (?:mi pedido|mis (?:cabezas|jigs|anzuelos))(?!\p{L})/u;

/** Whether somebody says that the parcel goes elsewhere now. @example asksToReaddress('I moved, new address') //=> true */
export const asksToReaddress = (text: string): boolean => {
  const said = withoutGreeting(text);
  return said.length <= LONGEST && ADDRESS.test(said);
};

const ADDRESS =
  /^(?:i(?:'ve| have)? (?:just )?moved\b|(?:(?:i have|i've got) a )?new address\b|my (?:new )?address (?:has changed|changed|is)\b|(?:can (?:i|you) |i (?:want|need) to |please )?(?:change|update) (?:my|the) address\b|(?:me mud[eé]|nueva direcci[oó]n|mi (?:nueva )?direcci[oó]n|(?:quiero |puedo |puede )?cambi(?:ar?|e) (?:de|la|mi) direcci[oó]n)(?!\p{L}))/u;

/** Whether somebody asks for a receipt, and of which order, if they name one. @example receiptIn('can I get a receipt?') //=> { order: null } */
export function receiptIn(text: string): Readonly<{ order: string | null }> | undefined {
  const asked = RECEIPT.exec(withoutGreeting(text));
  return asked === null ? undefined : { order: asked[1] === undefined ? null : `K-${asked[1]}` };
}

const RECEIPT =
  /^\/?(?:(?:can i (?:have|get) )?(?:(?:a|the|my) )?receipt|(?:(?:un|el|mi) )?recibo)(?: (?:for|of|de|del pedido))?(?: ?k[\s-]?(\d{3,7}))?(?: please| por favor)?[?.!]*$/i;

/** What an order is called once it is placed. */
const THING = String.raw`(?:it|they|(?:my|the) (?:order|jigs?|heads?|parcel|package|stuff|lures)|k-?\d{3,7})`;
const STATUS: readonly RegExp[] = [
  new RegExp(String.raw`^where(?:'s| is| are) ${THING}\b`),
  new RegExp(
    String.raw`^(?:is|are) ${THING} (?:\w+ )?(?:ready|done|finished|shipped|sent|coming|on (?:its|the|their) way)\b`,
  ),
  new RegExp(String.raw`^(?:has|have|did|was|were) ${THING} (?:\w+ )?(?:ship|shipped|sent|leave|left|go out|gone)\b`),
  /^(?:any (?:news|updates?)|how(?:'s| is) (?:it going|my order))\b/,
  /^(?:i (?:want|need|would like|'d like) to |can i |please )?cancel (?:my|the|this|that) order\b/,
  /^(?:how|where) (?:do|can|should) i pay\b|^can i pay\b|^did (?:you get )?(?:my|the) (?:payment|money)\b/,
  /^d[oó]nde est[aá]n? (?:mi|mis|el|los)\b|^(?:ya )?est[aá]n? (?:ya )?(?:list[oa]s?|enviad[oa]s?|en camino)(?!\p{L})/u,
  /^(?:alguna novedad|hay novedades)(?!\p{L})|^(?:quiero |puedo )?cancelar (?:mi|el) pedido(?!\p{L})|^c[oó]mo (?:puedo )?pag(?:o|ar)(?!\p{L})/u,
];
const WHEN = new RegExp(
  String.raw`^when(?:'s| will| does| do| is| are| can) ${THING} (?:\w+ )?(?:ships?|arrives?|ready|done|come|coming|here|leave|get here)\b|^cu[aá]ndo (?:sale|llega|est[aá]|se env[ií]a)n?(?!\p{L})`,
  'u',
);
/** Longer than this says more than that. */
const LONGEST = 80;
