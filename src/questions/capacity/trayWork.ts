// What one tray, and one batch, asks of each kind of place and of hands: shortest minutes, how soon, how long before ready.
// Used by workLimit.
import type { Dough, Product, Scenario } from '../../model/scenario.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { rangeOf } from '../../model/units.ts';

type Step = BatchStep | TrayStep;

export const WORK_KINDS = ['deck', 'steam', 'shelf', 'retarder', 'bench', 'bowl', 'rack', 'person'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Work that begins at least `head` minutes after the start of the day and ends at least `tail` minutes before its tray is ready. */
export type Work = { readonly kind: WorkKind; readonly minutes: number; readonly head: number; readonly tail: number };

type Part = { readonly step: Step; readonly before: number; readonly minutes: number; readonly after: number };

function partOf(step: Step): Part {
  const minutes = 'minutesPerTray' in step ? step.minutesPerTray : rangeOf(step.minutes).min;
  return step.do === 'bake' ? { step, before: step.load, minutes, after: step.unload } : { step, before: 0, minutes, after: 0 };
}

const lengthOf = ({ before, minutes, after }: Part): number => before + minutes + after;

/** Sooner than this no deck of the scenario is as hot, or as cool, as the bake asks. */
function heatHead(scenario: Scenario, step: Extract<Step, { do: 'bake' }>): number {
  const { min, max } = rangeOf(step.temperatureC);
  const heads = scenario.equipment.ovens.flatMap((oven) =>
    oven.decks.map(({ startsAtC }) => {
      if (startsAtC < min) return (min - startsAtC) / oven.heatUpCPerMinute;
      return startsAtC > max ? (startsAtC - max) / oven.coolDownCPerMinute : 0;
    }),
  );
  return Math.floor(Math.min(...heads, Number.MAX_SAFE_INTEGER));
}

/** A load that goes in together is loaded once for all its trays: its hands are not counted by the tray. */
function hasLoadsTogether(scenario: Scenario): boolean {
  return scenario.equipment.ovens.some(({ loading }) => loading === 'together');
}

function bakeWork(scenario: Scenario, part: Part & { step: Extract<Step, { do: 'bake' }> }, head: number, tail: number): Work[] {
  const { before, minutes, after, step } = part;
  const begins = Math.max(head + before, heatHead(scenario, step));
  const bake = { minutes, head: begins, tail: tail + after };
  const hands: Work[] = hasLoadsTogether(scenario)
    ? []
    : [
        { kind: 'person', minutes: before, head: begins - before, tail: tail + after + minutes },
        { kind: 'person', minutes: after, head: begins + minutes, tail },
      ];
  return [{ kind: 'deck', ...bake }, ...(step.steam ? [{ kind: 'steam', ...bake } as const] : []), ...hands];
}

function stepWork(scenario: Scenario, part: Part, head: number, tail: number): Work[] {
  const { step, minutes } = part;
  const own = { minutes, head, tail };
  switch (step.do) {
    case 'mix':
      return [
        { kind: 'bowl', ...own },
        { kind: 'person', minutes: step.handsOn ?? minutes, head, tail: tail + minutes - (step.handsOn ?? minutes) },
      ];
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return [
        { kind: 'bench', ...own },
        { kind: 'person', ...own },
      ];
    case 'bulk':
      return step.where === 'retarder' ? [{ kind: 'retarder', ...own }] : [];
    case 'retard':
      return [{ kind: 'retarder', ...own }];
    case 'proof':
      return [{ kind: 'shelf', ...own }];
    case 'bake':
      return bakeWork(scenario, { ...part, step }, head, tail);
    case 'cool':
      return [{ kind: 'rack', ...own }];
    case 'rest':
      return [];
  }
}

function chainWork(scenario: Scenario, parts: readonly Part[], head: number, tail: number): Work[] {
  let at = head;
  let left = tail + parts.reduce((sum, part) => sum + lengthOf(part), 0);
  return parts.flatMap((part) => {
    left -= lengthOf(part);
    const work = stepWork(scenario, part, at, left);
    at += lengthOf(part);
    return work;
  });
}

const total = (steps: readonly Step[]): number => steps.reduce((sum, step) => sum + lengthOf(partOf(step)), 0);

/** The work of one tray of a product. */
export function workOfTray(scenario: Scenario, dough: Dough, product: Product): readonly Work[] {
  return chainWork(scenario, product.steps.map(partOf), total(dough.steps), 0);
}

/** The work of one batch of a dough, whichever of the products is its quickest. */
export function workOfBatch(scenario: Scenario, dough: Dough, products: readonly Product[]): readonly Work[] {
  const tail = Math.min(...products.map(({ steps }) => total(steps)));
  return chainWork(scenario, dough.steps.map(partOf), 0, tail);
}
