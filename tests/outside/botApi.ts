import { existsSync, readFileSync } from 'node:fs';

/** The platform's published API in a machine-readable form, as kept outside the project: it checks the calls made, and is never copied.
 *  Source: core.telegram.org/bots/api, Bot API 10.1 of 11 June 2026, as gathered in PaulSonOfLars/telegram-bot-api-spec (`api.json`, MIT). */
const FILE = new URL('../../../shared/data/bot-api.json', import.meta.url);

export type Field = Readonly<{ name: string; types: readonly string[]; required: boolean; description: string }>;
type Shape = Readonly<{ fields?: readonly Field[]; subtypes?: readonly string[]; description?: readonly string[] }>;
export type BotApi = Readonly<{
  version: string;
  methods: Readonly<Record<string, Shape & Readonly<{ returns: readonly string[] }>>>;
  types: Readonly<Record<string, Shape>>;
}>;

/** `undefined` where the file is not there; tests that need it are then skipped by name. */
export const BOT_API = existsSync(FILE) ? (JSON.parse(readFileSync(FILE, 'utf8')) as BotApi) : undefined;
export const SKIP_REASON = 'skipped where the published bot API is not beside the project';

/** Everything in which a call differs from the published method; none when it is sound.
 *  @throws when the published API is not there */
export function violations(method: string, payload: unknown, api = present()): readonly string[] {
  const shape = api.methods[method];
  if (!shape) return [`${method} is no method of the API`];
  return shapeFaults(api, shape, payload ?? {}, method).map(sentence);
}

/** Everything in which an answer's result differs from what the method is said to return. */
export function resultViolations(method: string, result: unknown, api = present()): readonly string[] {
  return unionFaults(api, api.methods[method]?.returns ?? [], result, method).map(sentence);
}

/** Everything in which a value differs from one of the API's own types, such as `Update`. */
export const typeViolations = (type: string, value: unknown, api = present()): readonly string[] =>
  typeFaults(api, type, value, type).map(sentence);

function present(): BotApi {
  if (BOT_API) return BOT_API;
  throw new Error(`${FILE.pathname} is not there, so calls cannot be checked against it.`);
}

/** `isShape` marks that a value is not of this type at all: such branches of a union are the wrong ones to report. */
type Fault = Readonly<{ path: string; says: string; isShape: boolean }>;
const sentence = ({ path, says }: Fault): string => `${path} ${says}`;
const misshapen = (path: string, says: string): Fault => ({ path, says, isShape: true });
const beyond = (path: string, says: string): Fault => ({ path, says, isShape: false });

/** The faults of the branch that comes nearest, so that one mistake is told once. */
function unionFaults(api: BotApi, types: readonly string[], value: unknown, path: string): readonly Fault[] {
  const branches = types.map((type) => typeFaults(api, type, value, path));
  return branches.toSorted((a, b) => distance(a, path) - distance(b, path))[0] ?? [];
}

/** A fault of a value's own shape says more against a type than any number of faults deeper down. */
const distance = (faults: readonly Fault[], path: string): number =>
  faults.reduce((sum, fault) => sum + (fault.isShape && depth(fault.path) <= depth(path) + 1 ? 1000 : 1), 0);
const depth = (path: string): number => path.split(/[.[]/).length;

const PRIMITIVES: Readonly<Record<string, (value: unknown) => boolean>> = {
  Integer: (value) => Number.isSafeInteger(value),
  Float: (value) => typeof value === 'number',
  String: (value) => typeof value === 'string',
  Boolean: (value) => typeof value === 'boolean',
  InputFile: (value) => typeof value === 'string' && value.startsWith('attach://'),
};

function typeFaults(api: BotApi, type: string, value: unknown, path: string): readonly Fault[] {
  const item = /^Array of (.+)$/.exec(type)?.[1];
  if (item !== undefined) return arrayFaults(api, item, value, path);
  const holds = PRIMITIVES[type];
  if (holds) return holds(value) ? [] : [misshapen(path, `should be ${type}`)];
  const shape = api.types[type];
  if (!shape) return [misshapen(path, `should be ${type}, which the API does not describe`)];
  return shape.subtypes ? unionFaults(api, shape.subtypes, value, path) : shapeFaults(api, shape, value, path);
}

const arrayFaults = (api: BotApi, item: string, value: unknown, path: string): readonly Fault[] =>
  Array.isArray(value)
    ? value.flatMap((one, index) => typeFaults(api, item, one, `${path}[${index}]`))
    : [misshapen(path, `should be an array of ${item}`)];

function shapeFaults(api: BotApi, shape: Shape, value: unknown, path: string): readonly Fault[] {
  if (!isRecord(value)) return [misshapen(path, 'should be an object')];
  const { fields = [] } = shape;
  const unknown = Object.keys(value).filter((name) => !fields.some((field) => field.name === name));
  return [
    ...unknown.map((name) => misshapen(`${path}.${name}`, 'is not known to the API')),
    ...fields.flatMap((field) => fieldFaults(api, field, value[field.name], `${path}.${field.name}`)),
    ...choiceFaults(shape, value, path),
  ];
}

function fieldFaults(api: BotApi, field: Field, value: unknown, path: string): readonly Fault[] {
  if (value === undefined) return field.required ? [misshapen(path, 'is missing')] : [];
  const faults = unionFaults(api, field.types, value, path);
  return faults.length > 0 ? faults : [...constantFaults(field, value, path), ...limitFaults(field, value, path)];
}

/** "Type of the media, must be photo" and the like are said in prose only. */
function constantFaults({ name, description }: Field, value: unknown, path: string): readonly Fault[] {
  if (!['type', 'status', 'source'].includes(name)) return [];
  const constant = /(?:must be|always) ["“]?(\w+)["”]?\.?$/.exec(description)?.[1];
  return constant === undefined || value === constant ? [] : [misshapen(path, `must be ${constant}`)];
}

const characters = (value: unknown): number | undefined => (typeof value === 'string' ? [...value].length : undefined);
const bytes = (value: unknown): number | undefined =>
  typeof value === 'string' ? Buffer.byteLength(value) : undefined;
const items = (value: unknown): number | undefined => (Array.isArray(value) ? value.length : undefined);
const amount = (value: unknown): number | undefined => (typeof value === 'number' ? value : undefined);

/** How the prose says a limit (least and most are the two groups), and what it limits. */
const LIMITS = [
  { prose: /(\d+)-(\d+) characters/i, unit: 'characters', measure: characters },
  { prose: /(\d+)-(\d+) bytes/i, unit: 'bytes', measure: bytes },
  { prose: /(\d+)-(\d+) (?:items|identifiers)/, unit: 'items', measure: items },
  { prose: /()At most (\d+) (?:commands|suggested)/, unit: 'items', measure: items },
  { prose: /Values between (\d+)-(\d+)/, unit: 'as its value', measure: amount },
];

function limitFaults({ description }: Field, value: unknown, path: string): readonly Fault[] {
  return LIMITS.flatMap(({ prose, unit, measure }) => {
    const [said, least, most] = prose.exec(description) ?? [];
    const size = measure(value);
    if (said === undefined || size === undefined || (size >= Number(least) && size <= Number(most))) return [];
    return [beyond(path, `has ${size} ${unit}, allowed are ${Number(least)} to ${most}`)];
  });
}

/** "Exactly one of the fields other than text and style must be used": what makes a button a button. */
function choiceFaults(
  { description = [] }: Shape,
  value: Readonly<Record<string, unknown>>,
  path: string,
): readonly Fault[] {
  const others = /Exactly one of the fields other than ([\w, ]+?) must be used/.exec(description.join(' '))?.[1];
  if (others === undefined) return [];
  const beside = others.split(/, and |, | and /);
  const used = Object.keys(value).filter((name) => !beside.includes(name));
  return used.length === 1 ? [] : [beyond(path, `must do exactly one thing, not ${used.length}`)];
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
