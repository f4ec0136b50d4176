import { z } from 'zod';
import { anyOf, faultAt, sayPath, type Fault, type Path } from './fault.ts';
import { mended } from './mended.ts';
import { nearestOf } from './nearest.ts';
import { valueAt } from './sound.ts';

type Issue = z.core.$ZodIssue;

/** What the schema says is wrong in `json`, each with the nearest right word where there is one. */
export const schemaFaults = (schema: z.ZodType, json: unknown, issues: readonly Issue[]): Fault[] =>
  issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => strangeName(schema, json, issue.path, key))
      : [faultAt(issue.path, foundBy(issue, json), issue.message, nearestBy(issue, json))],
  );

/** The places that an issue spoils. */
export const faultyPaths = (issue: Issue): Path[] =>
  issue.code === 'unrecognized_keys' ? issue.keys.map((key) => [...issue.path, key]) : [issue.path];

/** What is allowed where the schema found an issue and has no words of its own for it. */
export function allowedWords(issue: z.core.$ZodRawIssue): string {
  const rule = issue as Issue;
  switch (rule.code) {
    case 'invalid_type':
      return KINDS[rule.expected] ?? rule.expected;
    case 'invalid_value':
      return anyOf(rule.values.map(String));
    case 'invalid_format':
      return FORMATS[rule.format] ?? `text that fits ${rule.pattern ?? rule.format}`;
    case 'too_small':
      return SMALLEST[rule.origin] ?? `${rule.inclusive === false ? 'more than' : 'at least'} ${rule.minimum}`;
    case 'too_big':
      return `at most ${rule.maximum}${rule.origin === 'string' ? ' letters' : ''}`;
    case 'invalid_key':
      return rule.issues.map(({ message }) => message).join(', ');
    default:
      return 'another value';
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text in double quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list [ ]',
  tuple: 'a list [ ]',
  object: 'a group { }',
  record: 'a group { }',
};
const FORMATS: Readonly<Record<string, string>> = { date: 'a day of the calendar as YYYY-MM-DD' };
const SMALLEST: Readonly<Record<string, string>> = { string: 'text that is not empty', array: 'a longer list' };

/** A name that the group does not have; the nearest is sought first among those that are still missing from it. */
function strangeName(schema: z.ZodType, json: unknown, path: Path, key: string): Fault {
  const known = namesIn(path.reduce<unknown>(within, schema));
  const missing = known.filter((name) => valueAt(json, [...path, name]) === undefined);
  const where = path.length === 0 ? '' : ` in ${sayPath(path)}`;
  const nearest = nearestOf(key, missing) ?? nearestOf(key, known);
  return faultAt([...path, key], key, `the names${where}: ${anyOf(known)}`, nearest);
}

const foundBy = (issue: Issue, json: unknown): unknown =>
  issue.code === 'invalid_key' ? issue.path.at(-1) : valueAt(json, issue.path);

function nearestBy(issue: Issue, json: unknown): string | undefined {
  const found = foundBy(issue, json);
  if (typeof found !== 'string') return undefined;
  return issue.code === 'invalid_value' ? nearestOf(found, issue.values.map(String)) : mended(issue.message, found);
}

function within(schema: unknown, step: PropertyKey): unknown {
  const bare = unwrapped(schema);
  if (bare instanceof z.ZodObject) return (bare.shape as Readonly<Record<PropertyKey, unknown>>)[step];
  if (bare instanceof z.ZodArray) return bare.element;
  return bare instanceof z.ZodRecord ? bare.valueType : undefined;
}

function namesIn(schema: unknown): readonly string[] {
  const bare = unwrapped(schema);
  if (bare instanceof z.ZodUnion) return bare.options.flatMap(namesIn);
  if (bare instanceof z.ZodObject) return Object.keys(bare.shape);
  return bare instanceof z.ZodRecord && bare.keyType instanceof z.ZodEnum ? bare.keyType.options.map(String) : [];
}

const unwrapped = (schema: unknown): unknown =>
  schema instanceof z.ZodDefault || schema instanceof z.ZodOptional || schema instanceof z.ZodNullable
    ? unwrapped(schema.unwrap())
    : schema;
