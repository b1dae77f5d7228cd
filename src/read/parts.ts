// The sound parts of a scenario that may be broken elsewhere, each with its place, so that the cross-checks run on what is there.
import type * as z from 'zod';
import { type Clock, clockOf, isTimeZone } from '../model/clock.ts';
import type { Mixer, Oven, Proofer, Retarder } from '../model/equipment.ts';
import { mixerSchema, ovenSchema, prooferSchema, retarderSchema } from '../model/equipment.ts';
import { type PlanDeck, planDeckSchema } from '../model/plan.ts';
import type { Dough, Order, Person, Product, Scenario } from '../model/scenario.ts';
import { daySchema, doughSchema, orderSchema, personSchema, productSchema, scenarioSchema } from '../model/scenario.ts';
import {
  type OutOfUse,
  outOfUseSchema,
  type Underway,
  type UnderwayTask,
  underwaySchema,
  underwayTaskSchema,
} from '../model/underway.ts';
import { childOf } from './placeName.ts';

/** A sound entry of a list and its JSON Pointer. */
export type Entry<T> = { readonly at: string; readonly value: T };

/** The sound entries of a list; `isWhole` when no entry is broken; `ids` of all entries, broken ones too. */
export type Entries<T> = { readonly sound: readonly Entry<T>[]; readonly isWhole: boolean; readonly ids: readonly string[] };

/** The parts of a day under way; `now` is there when it is sound. */
export type UnderwayParts = {
  readonly now: number | undefined;
  readonly batches: Entries<Underway['batches'][number]>;
  readonly tasks: Entries<UnderwayTask>;
  readonly decks: Entries<PlanDeck>;
  readonly out: Entries<OutOfUse>;
};

export type Parts = {
  readonly root: unknown;
  readonly date: string | undefined;
  readonly timeZone: string | undefined;
  readonly day: Scenario['day'] | undefined;
  /** There when date, time zone and day are sound. */
  readonly clock: Clock | undefined;
  readonly ovens: Entries<Oven>;
  readonly proofers: Entries<Proofer>;
  readonly retarders: Entries<Retarder>;
  /** Undefined when the scenario has no such key: then bowls, or hands, never limit. */
  readonly mixers: Entries<Mixer> | undefined;
  readonly people: Entries<Person> | undefined;
  readonly doughs: Entries<Dough>;
  readonly products: Entries<Product>;
  readonly orders: Entries<Order>;
  /** Undefined when the day is not under way. */
  readonly underway: UnderwayParts | undefined;
};

/** `known`: what the schema makes of the list, where all of it is known to be sound. */
function entriesOf<T>(list: unknown, at: string, schema: z.ZodType<T>, known?: readonly T[]): Entries<T> {
  if (list === undefined) return { sound: [], isWhole: true, ids: [] };
  if (!Array.isArray(list)) return { sound: [], isWhole: false, ids: [] };
  const read = (entry: unknown): readonly T[] => {
    const result = schema.safeParse(entry);
    return result.success ? [result.data] : [];
  };
  const sound = list.flatMap((entry: unknown, index) =>
    (known?.slice(index, index + 1) ?? read(entry)).map((value) => ({ at: `${at}/${index}`, value })),
  );
  const ids = list.map((entry: unknown) => childOf(entry, 'id')).filter((id) => typeof id === 'string');
  return { sound, isWhole: sound.length === list.length, ids };
}

function optionalEntriesOf<T>(list: unknown, at: string, schema: z.ZodType<T>, known?: readonly T[]): Entries<T> | undefined {
  return list === undefined ? undefined : entriesOf(list, at, schema, known);
}

function soundValue<T>(value: unknown, schema: z.ZodType<T>): T | undefined {
  const result = schema.safeParse(value);
  return result.success ? result.data : undefined;
}

function clockWhere(date: string | undefined, timeZone: string | undefined, day: Scenario['day'] | undefined): Clock | undefined {
  if (date === undefined || timeZone === undefined || day === undefined || !isTimeZone(timeZone)) return undefined;
  return clockOf({ date, timeZone, day });
}

function underwayPartsOf(value: unknown): UnderwayParts | undefined {
  if (value === undefined) return undefined;
  const { now, batches } = underwaySchema.shape;
  return {
    now: soundValue(childOf(value, 'now'), now),
    batches: entriesOf(childOf(value, 'batches'), '/underway/batches', batches.element),
    tasks: entriesOf(childOf(value, 'tasks'), '/underway/tasks', underwayTaskSchema),
    decks: entriesOf(childOf(value, 'decks'), '/underway/decks', planDeckSchema),
    out: entriesOf(childOf(value, 'out'), '/underway/out', outOfUseSchema),
  };
}

/** The parts of a plain value that is meant to be a scenario; `known`: the scenario, where all of it is sound. */
export function partsOf(root: unknown, known?: Scenario): Parts {
  const date = soundValue(childOf(root, 'date'), scenarioSchema.shape.date);
  const timeZone = soundValue(childOf(root, 'timeZone'), scenarioSchema.shape.timeZone);
  const day = soundValue(childOf(root, 'day'), daySchema);
  const equipment = childOf(root, 'equipment');
  const { ovens, proofers, retarders, mixers } = known?.equipment ?? {};
  return {
    root,
    date,
    timeZone,
    day,
    clock: clockWhere(date, timeZone, day),
    ovens: entriesOf(childOf(equipment, 'ovens'), '/equipment/ovens', ovenSchema, ovens),
    proofers: entriesOf(childOf(equipment, 'proofers'), '/equipment/proofers', prooferSchema, proofers),
    retarders: entriesOf(childOf(equipment, 'retarders'), '/equipment/retarders', retarderSchema, retarders),
    mixers: optionalEntriesOf(childOf(equipment, 'mixers'), '/equipment/mixers', mixerSchema, mixers),
    people: optionalEntriesOf(childOf(root, 'people'), '/people', personSchema, known?.people),
    doughs: entriesOf(childOf(root, 'doughs'), '/doughs', doughSchema, known?.doughs),
    products: entriesOf(childOf(root, 'products'), '/products', productSchema, known?.products),
    orders: entriesOf(childOf(root, 'orders'), '/orders', orderSchema, known?.orders),
    underway: underwayPartsOf(childOf(root, 'underway')),
  };
}
