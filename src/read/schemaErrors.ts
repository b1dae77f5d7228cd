// What a schema finds wrong, said in our codes and plain sentences. Used for scenarios and plans.
import type * as z from 'zod';
import { didYouMean } from './didYouMean.ts';
import type { CodedError } from './inputErrorAt.ts';
import { inputErrorAt } from './inputErrorAt.ts';
import { knownKeys, knownWords } from './knownKeys.ts';
import { placeName, valueAt } from './placeName.ts';
import { pointerOf, type Segment } from './pointer.ts';
import type { Issue, Wrong } from './wrong.ts';
import { countError, numberError } from './wrongAmount.ts';
import { textError } from './wrongText.ts';
import { typeError } from './wrongType.ts';
import { choiceError, rangeError, stepError, unknownKeyError, wordError } from './wrongWord.ts';

function asBeginning(place: string): string {
  return place.charAt(0).toUpperCase() + place.slice(1);
}

function wrongAt(issue: Issue, root: unknown, before: readonly Segment[]): Wrong {
  const own = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
  const path = [...before, ...own];
  return { issue, path, at: pointerOf(path), value: valueAt(root, path), place: asBeginning(placeName(root, path)) };
}

function unionErrors(wrong: Wrong, schema: z.ZodType, root: unknown): readonly CodedError[] {
  const { issue } = wrong;
  if (issue.code !== 'invalid_union') return [];
  if (issue.discriminator === 'do') return [stepError(wrong, root)];
  if (issue.discriminator !== undefined) return [choiceError(wrong, knownWords(schema, root, wrong.path.slice(0, -1)))];
  const { value } = wrong;
  const isPair = Array.isArray(value) && value.length === 2;
  const pairBranch = issue.errors.find((branch) => branch.every((inner) => inner.path.length > 0));
  if (isPair && pairBranch !== undefined) return pairBranch.flatMap((inner) => errorsOf(inner, schema, root, wrong.path));
  return [rangeError(wrong)];
}

function errorsOf(issue: Issue, schema: z.ZodType, root: unknown, before: readonly Segment[]): readonly CodedError[] {
  const wrong = wrongAt(issue, root, before);
  switch (issue.code) {
    case 'invalid_type':
      return [typeError(wrong)];
    case 'too_big':
    case 'too_small':
      return [amountError(wrong)];
    case 'invalid_format':
    case 'invalid_key':
    case 'custom':
      return [textError(wrong)];
    case 'invalid_value':
      return [wordError(wrong)];
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKeyError(wrong, key, knownKeys(schema, root, wrong.path)));
    case 'invalid_union':
      return unionErrors(wrong, schema, root);
    default:
      return [inputErrorAt('WRONG_TYPE', wrong.at, `${wrong.place} cannot be read.`, 'Compare it with docs/scenario.md.')];
  }
}

function amountError(wrong: Wrong): CodedError {
  if (Array.isArray(wrong.value)) return countError(wrong);
  return typeof wrong.value === 'string' ? textError(wrong) : numberError(wrong);
}

/** Places of the keys that unknown keys are likely misspellings of: a key that is there misspelt is not missing too. */
function meantKeys(issues: readonly Issue[], schema: z.ZodType, root: unknown): ReadonlySet<string> {
  const places = issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') return [];
    const { path } = wrongAt(issue, root, []);
    const known = knownKeys(schema, root, path);
    return issue.keys.flatMap((key) => {
      const close = didYouMean(key, known);
      return close === undefined ? [] : [pointerOf([...path, close])];
    });
  });
  return new Set(places);
}

/** Every issue of the schema as an error of ours. `root` is the value that was read. */
export function schemaErrors(issues: readonly Issue[], schema: z.ZodType, root: unknown): readonly CodedError[] {
  const meant = meantKeys(issues, schema, root);
  return issues
    .flatMap((issue) => errorsOf(issue, schema, root, []))
    .filter((error) => error.code !== 'MISSING' || !meant.has(error.path));
}
