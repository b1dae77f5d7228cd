// Builds plausible plans for the drawing tests without any planner: one batch after the other, each thing as soon as
// hands and places are free. The plans are for looking at; nobody claims they are good.
import { clockOf, instantAt, minuteAt } from '../../src/model/clock.ts';
import type { Bakehouse, LeftOut, Plan, PlanBatch, PlanOrder } from '../../src/model/plan.ts';
import { DayMaker, type Draft } from './dayMaker.ts';

export type Goods = {
  readonly id: string;
  readonly name: string;
  readonly dough: string;
  readonly trays: number;
  readonly shape: number;
  readonly retard?: number;
  readonly proof: number;
  readonly bake: number;
  readonly atC: number;
  readonly cool: number;
  readonly readyBy: string;
};

export type DoughDay = {
  readonly id: string;
  readonly name: string;
  readonly startAt: string;
  readonly bulk: number;
  readonly kg: number;
};

export type BakeryDay = {
  readonly name: string;
  readonly date: string;
  readonly timeZone: string;
  readonly from: string;
  readonly until: string;
  readonly decks: Bakehouse['decks'];
  readonly proofers: Bakehouse['proofers'];
  readonly retarders: Bakehouse['retarders'];
  readonly mixers: Bakehouse['mixers'];
  readonly benchPlaces: number | null;
  readonly coolingRackTrays: number | null;
  readonly people: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: string;
    readonly until: string;
    readonly breaks: readonly (readonly [string, string])[];
  }[];
  readonly doughs: readonly DoughDay[];
  readonly goods: readonly Goods[];
  readonly leftOut?: readonly LeftOut[];
  readonly cautions?: Plan['cautions'];
  readonly gap?: number;
};

function makeDay(day: BakeryDay, minute: (clock: string) => number): { readonly maker: DayMaker; readonly batches: PlanBatch[] } {
  const maker = new DayMaker(day, minute);
  const batches: PlanBatch[] = [];
  for (const dough of day.doughs) {
    const batch = `${dough.id}-${batches.filter((made) => made.dough === dough.id).length + 1}`;
    const goods = day.goods.filter((one) => one.dough === dough.id && !maker.tasks.some((task) => task.product === one.id));
    const ready = maker.dough(dough, batch);
    const trays = goods.flatMap((one) =>
      Array.from({ length: one.trays }, (_, k) => ({ id: `${one.id}-${k + 1}`, product: one.id, one })),
    );
    const proofing = trays.map(({ id, one }) => ({ one, make: () => maker.proof(one, id, batch, ready) }));
    if (day.decks.every(({ loading }) => loading === 'together')) {
      const temperatures = new Set(goods.map(({ atC }) => atC));
      for (const atC of temperatures) {
        maker.bakeTogether(proofing.filter(({ one }) => one.atC === atC).map(({ make }) => make()));
      }
    } else {
      for (const { make } of proofing) maker.bake(make());
    }
    batches.push({ id: batch, dough: dough.id, kg: dough.kg, trays: trays.map(({ id, product }) => ({ id, product })) });
  }
  return { maker, batches };
}

function ordersOf(
  day: BakeryDay,
  tasks: readonly Draft[],
  minute: (clock: string) => number,
  at: (minute: number) => string,
): PlanOrder[] {
  return day.goods.map((goods) => {
    const ends = tasks.filter((task) => task.product === goods.id).map((task) => task.end);
    const due = minute(goods.readyBy);
    const isLeftOut = ends.length === 0 || (day.leftOut ?? []).some((left) => left.product === goods.id);
    const ready = Math.max(0, ...ends);
    return {
      product: goods.id,
      pieces: Math.max(1, goods.trays) * 12,
      readyBy: at(due),
      readyAt: isLeftOut ? null : at(ready),
      lateMinutes: isLeftOut ? null : Math.max(0, ready - due),
    };
  });
}

/** A plan for a bakery's day. */
export function planOfDay(day: BakeryDay): Plan {
  const clock = clockOf({ date: day.date, timeZone: day.timeZone, day: { from: day.from, until: day.until } });
  const minute = (text: string) => minuteAt(clock, text);
  const at = (when: number) => instantAt(clock, when);
  const { maker, batches } = makeDay(day, minute);
  const tasks = maker.tasks.map((task) => ({ ...task, startsAt: at(task.start), endsAt: at(task.end) }));
  tasks.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
  const orders = ordersOf(day, maker.tasks, minute, at);
  const leftOut = [...(day.leftOut ?? [])];
  const leftOutTrays = leftOut.reduce((sum, { trays }) => sum + trays, 0);
  const gap = day.gap ?? 0;
  const hands = tasks.flatMap((task) => task.handsOn.map(({ start }) => start));
  return {
    plan: 1,
    scenario: { name: day.name, date: day.date, timeZone: day.timeZone, fingerprint: 'sha256:made-for-tests' },
    day: { startsAt: at(0), endsAt: at(clock.minutes), minutes: clock.minutes },
    stopped: gap === 0 ? 'proved' : 'effort',
    holds: tasks.length === 0 ? 'nothing' : leftOutTrays > 0 ? 'partial' : gap === 0 ? 'optimal' : 'feasible',
    score: {
      cost: 500,
      lowerBound: 500 * (1 - gap),
      gap,
      lateTrayMinutes: orders.reduce((sum, { lateMinutes }) => sum + (lateMinutes ?? 0), 0),
      leftOutTrays,
      finishMinute: Math.max(0, ...tasks.map(({ end }) => end)),
      temperatureChanges: maker.decks.reduce((sum, deck) => sum + Math.max(0, deck.setPoints.length - 1), 0),
      firstHandsOnMinute: Math.min(...(hands.length > 0 ? hands : [tasks[0]?.start ?? 0])),
    },
    bound: { argument: 'LONGEST_CHAIN', says: 'The longest product alone takes so long.' },
    tasks,
    decks: maker.decks.map(({ id, setPoints }) => ({ id, setPoints })),
    batches,
    orders,
    leftOut,
    bakehouse: {
      mixers: day.mixers,
      benchPlaces: day.benchPlaces,
      proofers: day.proofers,
      retarders: day.retarders,
      decks: day.decks,
      coolingRackTrays: day.coolingRackTrays,
      people: day.people.map(({ id, name, from, until, breaks }) => ({
        id,
        name,
        hours: { start: minute(from), end: minute(until) },
        breaks: breaks.map(([start, end]) => ({ start: minute(start), end: minute(end) })),
      })),
      doughs: [...new Map(day.doughs.map(({ id, name }) => [id, { id, name }])).values()],
      products: day.goods.map(({ id, name, dough }) => ({ id, name, dough, piecesPerTray: 12, pieceG: 80 })),
    },
    cautions: [...(day.cautions ?? [])],
    solver: { seed: 1, effort: 100, seconds: 0.1, version: '0.1.0', notes: [] },
  };
}
