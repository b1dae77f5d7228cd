// UNKNOWN_DOUGH, UNKNOWN_PRODUCT, UNKNOWN_PERSON, TRAY_OF_ANOTHER_DOUGH, DUPLICATE_ID: doughs, products, people and trays that a
// day under way names are there, each tray once and of the dough of its batch.
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts, UnderwayParts } from '../parts.ts';
import { shown } from '../shown.ts';
import { unknownAmong } from './unknownAmong.ts';

type Tray = { readonly at: string; readonly id: string; readonly product: string; readonly dough: string };

function traysOf({ batches }: UnderwayParts): readonly Tray[] {
  return batches.sound.flatMap(({ at, value }) =>
    value.trays.map(({ id, product }, index) => ({ at: `${at}/trays/${index}`, id, product, dough: value.dough })),
  );
}

function trayErrors({ products }: Parts, trays: readonly Tray[]): readonly CodedError[] {
  const doughOf = new Map(products.sound.map(({ value }) => [value.id, value.dough]));
  const seen = new Set<string>();
  return trays.flatMap(({ at, id, product, dough }) => {
    const errors: CodedError[] = [];
    if (seen.has(id)) {
      const says = `More than one tray under way has the id ${shown(id)}.`;
      errors.push(inputErrorAt('DUPLICATE_ID', `${at}/id`, says, 'Give one of them another id.'));
    }
    seen.add(id);
    const own = doughOf.get(product);
    if (own !== undefined && own !== dough) {
      const says = `Tray ${shown(id)} is of ${shown(product)}, made of ${shown(own)}, and its batch is of ${shown(dough)}.`;
      errors.push(inputErrorAt('TRAY_OF_ANOTHER_DOUGH', `${at}/product`, says, 'Put the tray in a batch of its dough.'));
    }
    return errors;
  });
}

function peopleErrors({ people }: Parts, { tasks }: UnderwayParts): readonly CodedError[] {
  if (people === undefined) return [];
  const named = tasks.sound.flatMap(({ at, value }) =>
    value.handsOn.map(({ person }, index) => ({
      at: `${at}/handsOn/${index}/person`,
      id: person,
      says: `A step under way, the ${value.step} of ${shown(value.tray ?? value.batch)}, names the person ${shown(person)}`,
    })),
  );
  return unknownAmong('UNKNOWN_PERSON', 'person', people.ids, named);
}

export function underwayNames(parts: Parts): readonly CodedError[] {
  const { underway, doughs, products } = parts;
  if (underway === undefined) return [];
  const trays = traysOf(underway);
  const ofBatches = underway.batches.sound.map(({ at, value }) => ({
    at: `${at}/dough`,
    id: value.dough,
    says: `Batch ${shown(value.id)} under way names the dough ${shown(value.dough)}`,
  }));
  const ofTrays = trays.map(({ at, id, product }) => ({
    at: `${at}/product`,
    id: product,
    says: `Tray ${shown(id)} under way names the product ${shown(product)}`,
  }));
  return [
    ...unknownAmong('UNKNOWN_DOUGH', 'dough', doughs.ids, ofBatches),
    ...unknownAmong('UNKNOWN_PRODUCT', 'product', products.ids, ofTrays),
    ...trayErrors(parts, trays),
    ...peopleErrors(parts, underway),
  ];
}
