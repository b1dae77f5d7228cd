// Words that are none of the choices, keys that mean nothing, steps that do not exist, and numbers that are no range, in words.
import { batchStepSchema, STEP_KINDS, trayStepSchema } from '../model/steps.ts';
import { CLOCK_PATTERN } from '../model/units.ts';
import { didYouMean } from './didYouMean.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { valueAt } from './placeName.ts';
import { pointerOf } from './pointer.ts';
import { choiceOf, shown } from './shown.ts';
import type { Wrong } from './wrong.ts';
import { timeError } from './wrongText.ts';

const BATCH_STEPS = batchStepSchema.options.map((option) => option.shape.do.value);
const TRAY_STEPS = trayStepSchema.options.map((option) => option.shape.do.value);

function suggestion(word: string, choices: readonly string[], otherwise: string): string {
  const close = didYouMean(word, choices);
  return close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`;
}

/** A key that means nothing where it stands. */
export function unknownKeyError(wrong: Wrong, key: string, known: readonly string[]): CodedError {
  const where = wrong.path.length === 0 ? 'The file' : wrong.place;
  const otherwise = known.length === 0 ? 'Take it out.' : `Keys that can stand there: ${known.join(', ')}.`;
  const says = `${where} has a key ${shown(key)}, which means nothing there.`;
  return inputErrorAt('UNKNOWN_KEY', pointerOf([...wrong.path, key]), says, suggestion(key, known, otherwise));
}

/** A word that should choose one of several kinds and is none of their words. */
export function choiceError(wrong: Wrong, words: readonly string[]): CodedError {
  const otherwise = `Write ${choiceOf(words)}.`;
  if (wrong.value === undefined) return inputErrorAt('MISSING', wrong.at, `${wrong.place} is missing.`, otherwise);
  const says = `${wrong.place} is ${shown(wrong.value)}, which is none of the choices.`;
  return inputErrorAt(
    'UNKNOWN_WORD',
    wrong.at,
    says,
    suggestion(typeof wrong.value === 'string' ? wrong.value : '', words, otherwise),
  );
}

/** A word that is none of the choices, or a wrong version of the format. */
export function wordError(wrong: Wrong): CodedError {
  const values = wrong.issue.code === 'invalid_value' ? wrong.issue.values.map(String) : [];
  const otherwise = `Write ${choiceOf(values)}.`;
  if (wrong.value === undefined) return inputErrorAt('MISSING', wrong.at, `${wrong.place} is missing.`, otherwise);
  if (wrong.path.length === 1 && ['scenario', 'plan', 'addition'].includes(String(wrong.path[0]))) {
    const says = `${wrong.place} is ${shown(wrong.value)}, a version of the format that is not known.`;
    return inputErrorAt('BAD_VERSION', wrong.at, says, `Write ${wrong.path[0]}: 1.`);
  }
  const says = `${wrong.place} is ${shown(wrong.value)}, which is none of the choices.`;
  const word = typeof wrong.value === 'string' ? wrong.value : '';
  return inputErrorAt('UNKNOWN_WORD', wrong.at, says, suggestion(word, values, otherwise));
}

/** A step whose `do` is missing, misspelt, or belongs to the other kind of steps. */
export function stepError(wrong: Wrong, root: unknown): CodedError {
  const isOfDough = wrong.path[0] === 'doughs';
  const [own, others] = isOfDough ? [BATCH_STEPS, TRAY_STEPS] : [TRAY_STEPS, BATCH_STEPS];
  const [kind, otherKind] = isOfDough ? ['dough', 'product'] : ['product', 'dough'];
  const otherwise = `Steps of a ${kind}: ${own.join(', ')}.`;
  const doing = valueAt(root, wrong.path);
  if (doing === undefined) return inputErrorAt('MISSING', wrong.at, `${wrong.place} is missing.`, otherwise);
  const word = typeof doing === 'string' ? doing : '';
  if (others.some((step) => step === word)) {
    const says = `${wrong.place} is "${word}", which is a step of a ${otherKind}.`;
    return inputErrorAt('UNKNOWN_STEP', wrong.at, says, `Move it to the steps of the ${otherKind}. ${otherwise}`);
  }
  const says = `${wrong.place} is ${shown(doing)}, which is no step.`;
  const close = didYouMean(word, own) ?? didYouMean(word, STEP_KINDS);
  return inputErrorAt('UNKNOWN_STEP', wrong.at, says, close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`);
}

/** Something else where one number or [at least, at most] is needed; in a plan, where a minute or a clock time is. */
export function rangeError(wrong: Wrong): CodedError {
  const { issue, value, at, place } = wrong;
  const branches = issue.code === 'invalid_union' ? issue.errors.flat() : [];
  const isTime = branches.some((inner) => inner.code === 'invalid_format' && inner.pattern === String(CLOCK_PATTERN));
  if (isTime) return timeError(wrong);
  const isDegrees = wrong.path.at(-1) === 'temperatureC';
  const form = isDegrees
    ? 'Write degrees C: one number, or [at least, at most].'
    : 'Write whole minutes: one number, or [at least, at most].';
  if (value === undefined) return inputErrorAt('MISSING', at, `${place} is missing.`, form);
  if (value === null) return inputErrorAt('MISSING', at, `${place} has nothing after it.`, form);
  if (typeof value === 'number') return inputErrorAt('NOT_WHOLE', at, `${place} is ${shown(value)}.`, form);
  return inputErrorAt('BAD_RANGE', at, `${place} is ${shown(value)}, neither one number nor a pair of them.`, form);
}
