// What bars show: every product, and every dough, with its name, short tag, colour and hatch. Colour goes by dough.
import type { Plan } from '../model/plan.ts';
import { nameIn } from './names.ts';
import { PALETTE } from './palette.ts';
import { shortTags } from './shortTags.ts';

export type Kind = {
  /** Names the kind among all: its sort and id. */
  readonly key: string;
  /** Id of the product or dough. */
  readonly id: string;
  readonly sort: 'product' | 'dough';
  readonly name: string;
  readonly tag: string;
  /** Colour of its dough. */
  readonly colour: string;
  /** Number of its hatch, from 0; products of any plan and doughs each have their own. */
  readonly hatch: number;
};

export type Kinds = {
  readonly all: readonly Kind[];
  readonly ofProduct: (productId: string) => Kind;
  readonly ofBatch: (batchId: string) => Kind;
};

type Named = { readonly id: string; readonly name: string; readonly dough: string; readonly sort: Kind['sort'] };

function withNoun(name: string): string {
  return /\bdough$/i.test(name) ? name : `${name} dough`;
}

function usedProducts(plan: Plan): ReadonlySet<string> {
  const planned = plan.tasks.flatMap((task) => (task.product === undefined ? [] : [task.product]));
  return new Set([...planned, ...plan.orders.map((order) => order.product)]);
}

function namedThings(plan: Plan): readonly Named[] {
  const used = usedProducts(plan);
  const products = plan.bakehouse.products
    .filter((product) => used.has(product.id))
    .map((product) => ({ ...product, name: nameIn(plan.bakehouse.products, product.id), sort: 'product' as const }));
  const batched = new Set(plan.batches.map((batch) => batch.dough));
  const doughs = plan.bakehouse.doughs
    .filter((dough) => batched.has(dough.id))
    .map((dough) => ({
      id: dough.id,
      name: withNoun(nameIn(plan.bakehouse.doughs, dough.id)),
      dough: dough.id,
      sort: 'dough' as const,
    }));
  return [...products, ...doughs];
}

function found(kind: Kind | undefined, what: string): Kind {
  if (kind === undefined) throw new RangeError(`the plan's bakehouse does not name ${what}`);
  return kind;
}

/** Kinds of a plan, products first, each in the order the bakehouse names them. */
export function kindsOf(plan: Plan): Kinds {
  const things = namedThings(plan);
  const tags = shortTags(things);
  const doughIds = plan.bakehouse.doughs.map((dough) => dough.id);
  const all = things.map((thing, index) => ({
    key: `${thing.sort} ${thing.id}`,
    id: thing.id,
    sort: thing.sort,
    name: thing.name,
    tag: tags[index] ?? '',
    colour: PALETTE[Math.max(0, doughIds.indexOf(thing.dough)) % PALETTE.length] ?? PALETTE[0],
    hatch: index,
  }));
  const byProduct = new Map(all.filter((kind) => kind.sort === 'product').map((kind) => [kind.id, kind]));
  const byDough = new Map(all.filter((kind) => kind.sort === 'dough').map((kind) => [kind.id, kind]));
  const doughOfBatch = new Map(plan.batches.map((batch) => [batch.id, batch.dough]));
  return {
    all,
    ofProduct: (productId) => found(byProduct.get(productId), `product ${productId}`),
    ofBatch: (batchId) => found(byDough.get(doughOfBatch.get(batchId) ?? ''), `the dough of batch ${batchId}`),
  };
}
