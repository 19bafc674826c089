/** What a schema found wrong, in the words of the page: the one writer for questions, requests, records and tables. */
import type { z } from 'zod';
import { type ErrorDetails, InvalidInputError } from '../errors.ts';
import { fieldName, fieldUnit } from '../schema/fieldNames.ts';
import { meantOf } from './meant.ts';

type Issue = z.core.$ZodIssue;

/** A thing that is wrong: which field, what is wrong with it, and what would be right. */
export interface Fault {
  /** Path of the field, with dots; empty for the whole. */
  readonly field: string;
  /** One sentence that names the field. */
  readonly message: string;
  /** The same without the field, for where a column or a place names it. */
  readonly what: string;
  /** What would be right, as a sentence; empty where the message says it. */
  readonly hint: string;
}

/** What was given at a path; undefined where nothing is there. */
const givenAt = (given: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (part, key) =>
      typeof part === 'object' && part !== null ? (part as Record<PropertyKey, unknown>)[key] : undefined,
    given,
  );

/** Longest part of a given text that a refusal repeats. */
const REPEATED = 40;

function quoted(given: unknown): string {
  if (typeof given === 'object' && given !== null)
    return Array.isArray(given) ? 'a list' : 'a group of fields';
  const text = String(given);
  return `“${text.length > REPEATED ? `${text.slice(0, REPEATED)}…` : text}”`;
}

/** What kinds of value are called, by the schema's own names. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  int: 'whole number',
  boolean: 'true or false',
  array: 'list',
  object: 'group of fields',
  record: 'group of fields',
};

/** What is wrong with a value and what would be right; the message goes on from the name of the field. */
function saidOf(issue: Issue, given: unknown, unit: string): { what: string; right: string } {
  if (given === undefined && issue.code !== 'custom' && issue.code !== 'unrecognized_keys')
    return { what: 'is missing', right: 'Fill it in.' };
  const value = quoted(given);
  switch (issue.code) {
    case 'invalid_format':
      return issue.format === 'date'
        ? { what: `${value} is no day of the calendar`, right: 'Give a date such as 2027-05-10.' }
        : { what: `${value} is not written as it should be`, right: `It takes ${formatWords(issue)}.` };
    case 'invalid_type': {
      const kind = KINDS[issue.expected] ?? issue.expected;
      return { what: `${value} is no ${kind}`, right: `Give a ${kind}.` };
    }
    case 'too_small':
    case 'too_big':
      return limitWords(issue, value, unit);
    case 'invalid_value': {
      const choices = issue.values.map(String);
      return {
        what: `${value} is none of the choices`,
        right: (typeof given === 'string' ? meantOf(given, choices) : null) ?? `It takes ${listed(choices)}.`,
      };
    }
    case 'invalid_union':
      return { what: `${value} is none of the choices`, right: '' };
    case 'unrecognized_keys':
      return { what: `nothing is called ${issue.keys.map(quoted).join(' or ')} here`, right: '' };
    default:
      return { what: issue.message, right: '' };
  }
}

const listed = (choices: readonly string[]): string =>
  choices.length === 1 ? choices[0] : `${choices.slice(0, -1).join(', ')} or ${choices[choices.length - 1]}`;

/** Own patterns say in words what they take; others have none to say. */
const formatWords = (issue: Issue): string =>
  /^Invalid/.test(issue.message) ? 'another form' : issue.message;

function limitWords(
  issue: Extract<Issue, { code: 'too_small' | 'too_big' }>,
  value: string,
  unit: string,
): { what: string; right: string } {
  const small = issue.code === 'too_small';
  const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  if (issue.origin === 'string') {
    return small
      ? { what: 'is empty', right: 'Fill it in.' }
      : { what: 'is too long', right: `It takes at most ${limit} characters.` };
  }
  if (issue.origin === 'array') {
    return small
      ? { what: 'has too few entries', right: `It takes at least ${limit}.` }
      : { what: 'has too many entries', right: `It takes at most ${limit}.` };
  }
  const bound =
    issue.inclusive === false ? (small ? 'more than' : 'less than') : small ? 'at least' : 'at most';
  return {
    what: `${value} is too ${small ? 'small' : 'large'}`,
    right: `It takes ${bound} ${limit}${limit === 1 ? unit.replace(/s$/, '') : unit}.`,
  };
}

/** A verb follows the name of a field without a colon; what repeats a value or gives an order has one. */
const VERB = /^(is|has) /;

/** What was found, field by field, in the order of the schema. */
export function faultsOf(issues: readonly Issue[], given: unknown): Fault[] {
  return issues.map((issue) => {
    const field = issue.path.join('.');
    const { what, right } = saidOf(issue, givenAt(given, issue.path), fieldUnit(field));
    const name = field === '' ? '' : fieldName(field);
    const message =
      name === ''
        ? what.charAt(0).toUpperCase() + what.slice(1)
        : VERB.test(what)
          ? `${name} ${what}`
          : `${name}: ${what}`;
    return { field, message: `${message}.`, what, hint: right };
  });
}

/**
 * The refusal of what a schema does not take; `details.field` is the first field at fault, `details.issues` all.
 * @param given what was judged
 * @param hint said where nothing better is known
 */
export function schemaRefusal(
  code: string,
  issues: readonly Issue[],
  given: unknown,
  { hint = '' }: Pick<ErrorDetails, 'hint'> = {},
): InvalidInputError {
  const faults = faultsOf(issues, given);
  const [first] = faults;
  return new InvalidInputError(code, first.message, {
    hint: first.hint || hint,
    details: {
      field: first.field,
      issues: faults.map(({ field, message }) => ({ field, message })),
    },
  });
}
