// How long a dough or a tray may stand, as limits that can be lifted: the most minutes of bulk, rest, proof and cold, the waits
// between steps, and how soon all trays of a batch must be begun. Used by clash.
import type { Dough, Product, Scenario } from '../../model/scenario.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { MAX_DAY_MINUTES, rangeOf } from '../../model/units.ts';
import type { Limit } from './limit.ts';

type Ranged = { readonly minutes: number | [number, number] };

const longer = (step: Ranged): { minutes: [number, number] } => ({ minutes: [rangeOf(step.minutes).min, MAX_DAY_MINUTES] });

function patientBatchStep(step: BatchStep): BatchStep {
  const waits = { waitUpTo: MAX_DAY_MINUTES };
  return step.do === 'bulk' ? { ...step, ...longer(step), ...waits } : { ...step, ...waits };
}

function patientTrayStep(step: TrayStep): TrayStep {
  const waits = { waitUpTo: MAX_DAY_MINUTES };
  switch (step.do) {
    case 'rest':
    case 'retard':
    case 'proof':
    case 'cool':
      return { ...step, ...longer(step), ...waits };
    default:
      return { ...step, ...waits };
  }
}

const isStanding = (
  step: BatchStep | TrayStep,
): step is Extract<BatchStep | TrayStep, { do: 'bulk' | 'rest' | 'retard' | 'proof' }> =>
  step.do === 'bulk' || step.do === 'rest' || step.do === 'retard' || step.do === 'proof';

/** "bulk 100 min at most, the next step at once". */
function sayMost(steps: readonly (BatchStep | TrayStep)[]): string {
  const most = steps.filter(isStanding).map((step) => `${step.do} ${rangeOf(step.minutes).max} min at most`);
  const wait = Math.max(0, ...steps.map((step) => step.waitUpTo));
  return [...most, wait === 0 ? 'no waiting between steps' : `no step waits longer than ${wait} min`].join(', ');
}

function productLimit({ id, name, steps }: Product): Limit {
  return {
    kind: 'product-standing',
    rule: steps.some(isStanding) ? 'STEP_MINUTES' : 'STEP_ORDER',
    of: id,
    says: `how long ${name ?? id} may stand: ${sayMost(steps)}`,
    lifted: 'it may stand as long as it takes',
    lift: (scenario) => ({
      ...scenario,
      products: scenario.products.map((one) => (one.id === id ? { ...one, steps: one.steps.map(patientTrayStep) } : one)),
    }),
  };
}

function doughLimit({ id, name, steps, shapeWithin }: Dough): Limit {
  return {
    kind: 'dough-standing',
    rule: steps.some(isStanding) ? 'STEP_MINUTES' : 'SHAPE_WITHIN',
    of: id,
    says: `how long ${name ?? id} may stand: ${sayMost(steps)}, all trays begun within ${shapeWithin} min of the first`,
    lifted: 'it may stand as long as it takes',
    lift: (scenario) => ({
      ...scenario,
      doughs: scenario.doughs.map((one) =>
        one.id === id ? { ...one, shapeWithin: MAX_DAY_MINUTES, steps: one.steps.map(patientBatchStep) } : one,
      ),
    }),
  };
}

/** Of every product that is ordered and of its dough. */
export function standingLimits({ products, doughs, orders }: Scenario): readonly Limit[] {
  const ordered = products.filter(({ id }) => orders.some((order) => order.product === id));
  const mixed = doughs.filter(({ id }) => ordered.some((product) => product.dough === id));
  return [...ordered.map(productLimit), ...mixed.map(doughLimit)];
}
