// NO_PROOFER_FITS, NO_RETARDER_FITS: every proof has a shelf, and every retarder step a place, at a suitable temperature.
import { type CelsiusOrRange, rangeOf } from '../../model/units.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Entries, Parts } from '../parts.ts';
import { shown } from '../shown.ts';

type Cabinet = { readonly id: string; readonly shelves: number; readonly temperatureC: number };
type Need = { readonly at: string; readonly what: string; readonly temperatureC: CelsiusOrRange | undefined };

function heatOf(temperatureC: CelsiusOrRange | undefined): string {
  if (temperatureC === undefined) return 'any temperature';
  const { min, max } = rangeOf(temperatureC);
  return min === max ? `${min} C` : `${min} to ${max} C`;
}

function needErrors(kind: 'proofer' | 'retarder', cabinets: Entries<Cabinet>, needs: readonly Need[]): readonly CodedError[] {
  if (!cabinets.isWhole) return [];
  const withRoom = cabinets.sound.map(({ value }) => value).filter(({ shelves }) => shelves > 0);
  const offers = withRoom.map(({ id, temperatureC }) => `${shown(id)} ${temperatureC} C`).slice(0, 8);
  const code = kind === 'proofer' ? 'NO_PROOFER_FITS' : 'NO_RETARDER_FITS';
  return needs.flatMap(({ at, what, temperatureC }) => {
    const range = temperatureC === undefined ? undefined : rangeOf(temperatureC);
    const fits = withRoom.some(
      (each) => range === undefined || (range.min <= each.temperatureC && each.temperatureC <= range.max),
    );
    if (fits) return [];
    const why = withRoom.length === 0 ? `there is no ${kind} with shelves` : `no ${kind} is kept at that: ${offers.join(', ')}`;
    const doThis = `Add a ${kind} with shelves at ${heatOf(temperatureC)}, or change the step.`;
    return [inputErrorAt(code, at, `${what} needs a ${kind} at ${heatOf(temperatureC)}, and ${why}.`, doThis)];
  });
}

export function cabinetsFit({ proofers, retarders, doughs, products }: Parts): readonly CodedError[] {
  const ofTrays = (kind: 'proof' | 'retard'): readonly Need[] =>
    products.sound.flatMap(({ at, value }) =>
      value.steps.flatMap((step, index) =>
        step.do === kind
          ? [{ at: `${at}/steps/${index}`, what: `The ${kind} of product ${shown(value.id)}`, temperatureC: step.temperatureC }]
          : [],
      ),
    );
  const ofBatches: readonly Need[] = doughs.sound.flatMap(({ at, value }) =>
    value.steps.flatMap((step, index) =>
      step.do === 'bulk' && step.where === 'retarder'
        ? [{ at: `${at}/steps/${index}`, what: `The bulk of dough ${shown(value.id)}`, temperatureC: step.temperatureC }]
        : [],
    ),
  );
  return [
    ...needErrors('proofer', proofers, ofTrays('proof')),
    ...needErrors('retarder', retarders, [...ofBatches, ...ofTrays('retard')]),
  ];
}
