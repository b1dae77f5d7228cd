// A scenario as a shop problem, with the key to read its schedules back: which task is which step of which batch or tray.
import { type Clock, clockOf } from '../model/clock.ts';
import type { Product, Scenario } from '../model/scenario.ts';
import type { Burst, Family, FirstMark, Link, ShopProblem, ShopTask, Unit } from '../solver/problem.ts';
import { type Batch, batchesOf } from './batches.ts';
import { type ShopPools, shopPoolsOf } from './shopPools.ts';
import { handMarks, lagBetween, marginsOf, type Step, taskOf } from './shopTasks.ts';
import { type ProductTrays, traysOf } from './trays.ts';

/** A step of a batch (tray null) or of a tray, and the task that stands for it. */
export type StepTask = {
  readonly task: number;
  readonly step: Step;
  readonly batch: number;
  readonly tray: number | null;
  readonly ordinal: number;
};

export type TrayKey = {
  readonly product: Product;
  readonly batch: number;
  readonly unit: number;
  readonly tasks: readonly number[];
};

export type Compiled = {
  readonly problem: ShopProblem;
  readonly clock: Clock;
  readonly shop: ShopPools;
  readonly products: readonly ProductTrays[];
  readonly batches: readonly Batch[];
  readonly trays: readonly TrayKey[];
  readonly stepOfTask: readonly StepTask[];
  readonly batchUnits: readonly number[];
};

class Draft {
  readonly tasks: ShopTask[] = [];
  readonly links: Link[] = [];
  readonly bursts: Burst[] = [];
  readonly units: Unit[] = [];
  readonly firstMarks: FirstMark[] = [];
  readonly stepOfTask: StepTask[] = [];
  readonly trays: TrayKey[] = [];
  readonly batchUnits: number[] = [];
  private readonly shop: ShopPools;
  private readonly scenario: Scenario;
  private readonly horizon: number;

  constructor(scenario: Scenario, shop: ShopPools, horizon: number) {
    this.scenario = scenario;
    this.shop = shop;
    this.horizon = horizon;
  }

  private chain(id: string, steps: readonly Step[], batch: number, tray: number | null, kg: number): number[] {
    const numbers = steps.map((step, i) => {
      const task = this.tasks.length;
      const isLast = tray !== null && i === steps.length - 1;
      this.tasks.push(taskOf(this.shop, `${id}/${step.do}`, step, kg, this.horizon, isLast, this.scenario.people !== undefined));
      const ordinal = steps.slice(0, i).filter((earlier) => earlier.do === step.do).length + 1;
      this.stepOfTask.push({ task, step, batch, tray, ordinal });
      for (const mark of handMarks(step)) this.firstMarks.push({ task, ...mark });
      return task;
    });
    for (let i = 1; i < steps.length; i++) {
      this.links.push(lagBetween(numbers[i - 1] as number, steps[i - 1] as Step, numbers[i] as number, steps[i] as Step));
    }
    return numbers;
  }

  addBatch(batch: Batch, b: number, familyOf: ReadonlyMap<string, number>): void {
    const trunk = this.chain(`batch ${b}`, batch.dough.steps, b, null, batch.kg);
    const unit = this.units.length;
    this.units.push({ id: `batch ${b}`, tasks: trunk, parent: null, omissionPrice: 0, ready: null, family: -1 });
    this.batchUnits.push(unit);
    const firsts = batch.trays.map((product) => this.addTray(product, b, unit, batch.kg, familyOf.get(product.id) ?? -1));
    this.addBurst(batch, trunk[trunk.length - 1] as number, firsts);
  }

  private addBurst(batch: Batch, after: number, firsts: readonly number[]): void {
    const last = batch.dough.steps[batch.dough.steps.length - 1] as Step;
    const members = firsts.map((task) => ({ task, lead: marginsOf((this.stepOfTask[task] as StepTask).step).before }));
    const wait = last.do === 'mix' || last.do === 'fold' ? last.waitUpTo : 0;
    this.bursts.push({ after, members, within: batch.dough.shapeWithin, wait });
  }

  private addTray(product: Product, b: number, parent: number, kg: number, family: number): number {
    const tray = this.trays.length;
    const tasks = this.chain(`tray ${tray}`, product.steps, b, tray, kg);
    const last = tasks[tasks.length - 1] as number;
    const offset = marginsOf(product.steps[product.steps.length - 1] as Step).after;
    const ready = { task: last, edge: 'end' as const, offset };
    this.trays.push({ product, batch: b, unit: this.units.length, tasks });
    this.units.push({ id: `tray ${tray}`, tasks, parent, omissionPrice: this.scenario.goals.leftOutTray, ready, family });
    return tasks[0] as number;
  }
}

/** Compiles a scenario that has been read and found sound. */
export function compileScenario(scenario: Scenario): Compiled {
  const clock = clockOf(scenario);
  const shop = shopPoolsOf(scenario, clock);
  const products = traysOf(scenario, clock);
  const batches = batchesOf(scenario, products);
  const families: Family[] = products.map(({ dues }) => ({ dues, latePrice: scenario.goals.lateTrayMinute }));
  const familyOf = new Map(products.map(({ product }, f) => [product.id, f]));
  const draft = new Draft(scenario, shop, clock.minutes);
  batches.forEach((batch, b) => {
    draft.addBatch(batch, b, familyOf);
  });
  const { tasks, links, bursts, units, firstMarks, trays, stepOfTask, batchUnits } = draft;
  const prices = {
    makespan: scenario.goals.finishMinute,
    stateChange: scenario.goals.temperatureChange,
    fromFirstMark: scenario.goals.aim === 'start-late',
  };
  const { pools, chambers } = shop;
  const problem = { horizon: clock.minutes, tasks, links, bursts, pools, chambers, units, families, firstMarks, prices };
  return { problem, clock, shop, products, batches, trays, stepOfTask, batchUnits };
}
