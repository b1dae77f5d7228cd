// Steps that have moved, in lines people can call: what all moves by as much is one line, the rest step by step. Used by moved.ts.
import { sayMinutes } from '../../check/sayMinute.ts';
import type { HandsOn } from '../../model/plan.ts';
import type { ChangeLine } from '../../model/replanAnswer.ts';
import type { StepKind } from '../../model/steps.ts';
import type { MovedStep } from './movedSteps.ts';
import type { TrayNames } from './trayNames.ts';

type Words = { readonly names: TrayNames; readonly says: (minute: number) => string };

/** Steps somebody does: these are called. What rests or proofs follows them. */
const CALLED: Partial<Readonly<Record<StepKind, { readonly does: string; readonly they: string }>>> = {
  mix: { does: 'mixes', they: 'mix' },
  fold: { does: 'folds', they: 'fold' },
  divide: { does: 'divides', they: 'divide' },
  shape: { does: 'shapes', they: 'shape' },
  bake: { does: 'loads', they: 'load' },
  finish: { does: 'finishes', they: 'finish' },
};

const IN_WORDS: Partial<Readonly<Record<StepKind, string>>> = { proof: 'proof', retard: 'retard', bulk: 'leave', cool: 'cool' };

const ownerOf = ({ tray, batch }: MovedStep): string => tray ?? batch;

function nameOf(steps: readonly MovedStep[], { names }: Words): string {
  const trays = [...new Set(steps.flatMap(({ tray }) => tray ?? []))];
  const batches = [...new Set(steps.flatMap(({ tray, batch }) => (tray === undefined ? [batch] : [])))];
  return [...batches.map(names.batch), ...(trays.length === 0 ? [] : [names.trays(trays)])].join(', ');
}

function lineOf(steps: readonly MovedStep[], all: readonly MovedStep[], says: string): ChangeLine {
  return {
    kind: 'moved',
    minute: Math.min(...steps.map(({ step }) => step.to.start)),
    says,
    trays: [...new Set(steps.flatMap(({ tray }) => tray ?? []))],
    batches: [...new Set(steps.flatMap(({ tray, batch }) => (tray === undefined ? [batch] : [])))],
    steps: all.map(({ step }) => step),
  };
}

const personFor = (hands: readonly HandsOn[], what: (one: HandsOn) => boolean): string | undefined => hands.find(what)?.person;

/** "Marek instead of Odile", where it is somebody else. */
function whoInstead({ handsBefore, hands }: MovedStep, isUnload: boolean, { names }: Words): string {
  const does = (one: HandsOn): boolean => (one.for === 'unload') === isUnload;
  const [before, now] = [personFor(handsBefore, does), personFor(hands, does)];
  if (before === now || now === undefined) return '';
  return before === undefined ? names.person(now) : `${names.person(now)} instead of ${names.person(before)}`;
}

function whereWords({ step, kind, isElsewhere }: MovedStep, { names }: Words): string {
  const { from, to } = step;
  if (to.place === undefined) return '';
  if (isElsewhere && from.place !== undefined) return `${names.place(to.place.id)} instead of ${names.place(from.place.id)}`;
  return kind === 'bake' && !names.isOneDeck ? names.place(to.place.id) : '';
}

/** "load at 06:10 instead of 05:52, Lower deck". */
function doing(moved: MovedStep, words: Words): string {
  const { step, kind, shiftMinutes } = moved;
  const verb = CALLED[kind]?.they ?? IN_WORDS[kind] ?? kind;
  const when = `${verb} at ${words.says(step.to.start)}${shiftMinutes === 0 ? '' : ` instead of ${words.says(step.from.start)}`}`;
  const [loader, unloader] = [whoInstead(moved, false, words), whoInstead(moved, true, words)];
  const who =
    loader === unloader && loader !== '' ? [`in and out by ${loader}`] : [loader, unloader === '' ? '' : `out by ${unloader}`];
  return [when, whereWords(moved, words), ...who].filter((part) => part !== '').join(', ');
}

/** One step of one or more trays, all moved in the same way. */
function stepLine(steps: readonly MovedStep[], words: Words): ChangeLine {
  const [first] = steps;
  if (first === undefined) throw new RangeError('a line about no step');
  const { kind, shiftMinutes, isElsewhere, step } = first;
  const name = nameOf(steps, words);
  const at = words.says(step.to.start);
  const called = CALLED[kind];
  const [loader, unloader] = [whoInstead(first, false, words), whoInstead(first, true, words)];
  const isOne = steps.length === 1;
  if (shiftMinutes === 0 && !isElsewhere && called !== undefined) {
    const from = isOne ? `at ${at}` : `from ${at} on`;
    const out = unloader === '' ? '' : loader === unloader ? ' and takes it out' : `; ${unloader} takes it out`;
    if (loader !== '') return lineOf(steps, steps, `${loader} ${called.does} ${name} ${from}${out}.`);
    if (unloader !== '') return lineOf(steps, steps, `${unloader} takes ${name} out of the oven; loaded ${from}.`);
  }
  if (isOne || shiftMinutes === 0) return lineOf(steps, steps, `${name}: ${doing(first, words)}.`);
  const by = `${sayMinutes(Math.abs(shiftMinutes))} ${shiftMinutes > 0 ? 'later' : 'earlier'}`;
  return lineOf(steps, steps, `${name}: ${called?.they ?? kind} ${by}; the first: ${doing(first, words)}.`);
}

/** All that is left of one or more trays or batches, moved by as much. */
function wholeLine(steps: readonly MovedStep[], all: readonly MovedStep[], words: Words): ChangeLine {
  const [first] = steps;
  if (first === undefined) throw new RangeError('a line about no step');
  const owners = new Set(steps.map(ownerOf));
  const name = nameOf(steps, words);
  if (steps.length === 1) return lineOf(steps, all, `${name}: ${doing(first, words)}.`);
  const by = `${sayMinutes(Math.abs(first.shiftMinutes))} ${first.shiftMinutes > 0 ? 'later' : 'earlier'}`;
  const next = owners.size === 1 ? doing(first, words) : `${nameOf([first], words)}, ${doing(first, words)}`;
  return lineOf(steps, all, `${name}: all ${by}; ${owners.size === 1 ? 'next' : 'the first'}: ${next}.`);
}

function groupedBy<T>(things: readonly T[], keyOf: (thing: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const thing of things) groups.set(keyOf(thing), [...(groups.get(keyOf(thing)) ?? []), thing]);
  return [...groups.values()];
}

const wayOf = (moved: MovedStep, words: Words): string =>
  JSON.stringify([
    moved.kind,
    moved.shiftMinutes,
    whereWords(moved, words),
    whoInstead(moved, false, words),
    whoInstead(moved, true, words),
  ]);

/** Lines for moved steps. `stepsLeft`: how many steps somebody does are still to come of a tray or batch, by its id. */
export function movedLines(
  moved: readonly MovedStep[],
  stepsLeft: ReadonlyMap<string, number>,
  words: Words,
): readonly ChangeLine[] {
  const isCalled = ({ kind, isElsewhere }: MovedStep): boolean => CALLED[kind] !== undefined || isElsewhere;
  const byOwner = groupedBy(moved, ownerOf);
  const isWhole = (own: readonly MovedStep[]): boolean => {
    const called = own.filter(isCalled);
    const [first] = called;
    const isSame = called.every(
      ({ shiftMinutes, isElsewhere, isByOthers }) => shiftMinutes === first?.shiftMinutes && !isElsewhere && !isByOthers,
    );
    return first !== undefined && isSame && first.shiftMinutes !== 0 && called.length === stepsLeft.get(ownerOf(first));
  };
  const whole = byOwner.filter(isWhole);
  const rest = byOwner.filter((own) => !isWhole(own)).flat();
  const byShift = groupedBy(whole, (own) => String(own.find(isCalled)?.shiftMinutes));
  const byWay = groupedBy(rest.filter(isCalled), (one) => `${one.tray === undefined} ${wayOf(one, words)}`);
  return [
    ...byShift.map((owners) => wholeLine(byStart(owners.flat().filter(isCalled)), byStart(owners.flat()), words)),
    ...byWay.map((steps) => stepLine(steps, words)),
  ];
}

function byStart(steps: readonly MovedStep[]): readonly MovedStep[] {
  return [...steps].sort((a, b) => a.step.to.start - b.step.to.start);
}
