// KNOWN_NAMES: every name a plan uses is a name of the scenario; no two tasks share an id; a deck is listed once.
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import type { NamedTask } from '../nameTasks.ts';
import { placeIds, roomOf } from '../places.ts';

function unknown(what: string, name: string, where: string, taskIds: readonly string[]): Finding {
  return { says: `${where} names the ${what} "${name}", which the scenario does not have.`, taskIds };
}

/** Names that stand more than once in a list. */
function doubles(names: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const name of names) (seen.has(name) ? twice : seen).add(name);
  return [...twice];
}

/** A place of another kind is PLACE_KIND's to say; here a name is wrong only when no place at all has it. */
function placeFinding(day: JudgedDay, { id, task }: NamedTask, known: ReadonlySet<string>): readonly Finding[] {
  if (task.place === undefined || known.has(task.place.id)) return [];
  if (roomOf(day.scenario, task.place.kind) === undefined) return [];
  return [unknown(task.place.kind, task.place.id, `Task ${id}`, [id])];
}

function taskFindings(
  day: JudgedDay,
  products: ReadonlySet<string>,
  people: ReadonlySet<string> | undefined,
): readonly Finding[] {
  const places = placeIds(day.scenario);
  return day.tasks.flatMap((named) => {
    const { id, task } = named;
    const isUnknownProduct = task.product !== undefined && !products.has(task.product);
    const strangers = new Set(people === undefined ? [] : task.handsOn.map(({ person }) => person).filter((p) => !people.has(p)));
    return [
      ...(isUnknownProduct ? [unknown('product', task.product ?? '', `Task ${id}`, [id])] : []),
      ...[...strangers].map((person) => unknown('person', person, `Task ${id}`, [id])),
      ...placeFinding(day, named, places),
    ];
  });
}

/** Trays of which nothing says what product they are. */
function namelessTrays(day: JudgedDay): readonly Finding[] {
  const said = new Set([
    ...day.trays.map(({ id }) => id),
    ...day.tasks.flatMap(({ task }) => (task.product === undefined ? [] : (task.tray ?? []))),
  ]);
  const trays = new Set(day.tasks.flatMap(({ task }) => task.tray ?? []));
  return [...trays]
    .filter((tray) => !said.has(tray))
    .map((tray) => ({
      says: `Nothing says which product tray ${tray} is.`,
      taskIds: day.tasks.filter(({ task }) => task.tray === tray).map(({ id }) => id),
    }));
}

function listFindings(day: JudgedDay, products: ReadonlySet<string>): readonly Finding[] {
  const { plan, scenario } = day;
  const doughs = new Set(scenario.doughs.map(({ id }) => id));
  const strange = (names: readonly string[], known: ReadonlySet<string>) =>
    [...new Set(names)].filter((name) => !known.has(name));
  return [
    ...strange(
      plan.decks.map(({ id }) => id),
      new Set(day.decks.keys()),
    ).map((deck) => unknown('deck', deck, 'The list of decks', [])),
    ...strange(
      (plan.batches ?? []).map(({ dough }) => dough),
      doughs,
    ).map((dough) => unknown('dough', dough, 'The list of batches', [])),
    ...strange(
      [...(plan.batches ?? []).flatMap(({ trays }) => trays), ...(plan.leftOut ?? [])].map(({ product }) => product),
      products,
    ).map((product) => unknown('product', product, 'The list of batches or of trays left out', [])),
    ...doubles(plan.decks.map(({ id }) => id)).map((id) => ({ says: `Deck ${id} is listed twice.`, taskIds: [] })),
    ...doubles(day.tasks.map(({ id }) => id)).map((id) => ({ says: `More than one task is called "${id}".`, taskIds: [id] })),
  ];
}

export function knownNames(day: JudgedDay): readonly Finding[] {
  const products = new Set(day.scenario.products.map(({ id }) => id));
  const people = day.scenario.people === undefined ? undefined : new Set(day.scenario.people.map(({ id }) => id));
  return [...taskFindings(day, products, people), ...namelessTrays(day), ...listFindings(day, products)];
}
