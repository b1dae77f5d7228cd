// Which units a schedule plans, as part of a model: those that may be left out have a yes-or-no variable each. What a left-out
// unit uses does not count; its times go on keeping its own lags, where they are in nobody's way (optional tasks without uses of
// their own: after Laborie and Rogerie 2008, FLAIRS 21, with ghosts instead of absent intervals). Used by shopModel.ts.
import type { Layout } from '../layout.ts';
import type { ShopProblem } from '../problem.ts';
import type { Twins } from '../twins.ts';
import type { Term } from './engine.ts';
import { isFalse, isTrue, type Literal } from './literal.ts';
import type { ModelDraft } from './modelDraft.ts';

/** Prices of all that is left out may amount to so much. */
const LARGEST_SUM = 500_000_000;

/** Whether a unit is in a model: left away from it, planned in every schedule of it, or in it with a choice. */
export type Part = 'away' | 'planned' | 'open';

export class Presence {
  /** Per unit: the variable that is true when it is left out; -1 where there is no choice. */
  readonly left: Int32Array;
  private readonly problem: ShopProblem;
  private readonly unitOfTask: Int32Array;
  private readonly children: readonly (readonly number[])[];
  /** Per unit: its price when it is left out, times the model's scale; no more than a model can hold. */
  private readonly weight: Int32Array;

  constructor(model: ModelDraft, partOf: (unit: number) => Part) {
    const { problem, unitOfTask } = model.shop;
    this.problem = problem;
    this.unitOfTask = unitOfTask;
    this.children = problem.units.map(() => []);
    problem.units.forEach(({ parent }, u) => {
      if (parent !== null && partOf(u) !== 'away') (this.children[parent] as number[]).push(u);
    });
    const isOpen = (u: number): boolean => {
      const mine = this.children[u] as readonly number[];
      return partOf(u) === 'open' && (mine.length === 0 || mine.every((child) => partOf(child) === 'open'));
    };
    const most = LARGEST_SUM / (problem.units.length + 1);
    this.weight = Int32Array.from(problem.units, ({ omissionPrice }) => Math.min(most, omissionPrice * model.scale));
    this.left = Int32Array.from(problem.units, (_, u) => (isOpen(u) ? model.addFlag() : -1));
    problem.units.forEach(({ parent }, u) => {
      const isIn = this.ofUnit(u);
      if (isIn === null) return;
      const inParent = parent === null ? null : this.ofUnit(parent);
      if (inParent !== null) model.clause(this.isOut(u), inParent);
      const mine = this.children[u] as readonly number[];
      if (mine.length > 0) model.clause(this.isOut(u), ...mine.flatMap((child) => this.ofUnit(child) ?? []));
    });
  }

  /** What is true when a unit is planned; null: it always is. */
  ofUnit(unit: number): Literal | null {
    const variable = unit < 0 ? -1 : (this.left[unit] as number);
    return variable < 0 ? null : isFalse(variable);
  }

  ofTask(task: number): Literal | null {
    return this.ofUnit(this.unitOfTask[task] as number);
  }

  private isOut(unit: number): Literal {
    return isTrue(this.left[unit] as number);
  }

  /** Of alike units the later ones are left out first. */
  addTwinOrder(model: ModelDraft, twins: Twins): void {
    const groups = [...twins.children, ...twins.parents.map((group) => group.map(({ unit }) => unit))];
    for (const group of groups)
      group.slice(1).forEach((unit, i) => {
        const before = this.ofUnit(group[i] as number);
        if (before !== null && this.ofUnit(unit) !== null) model.clause(this.isOut(unit), before);
      });
  }

  /** Whether a task is planned in the solution that stands in the bounds. */
  isIn(model: ModelDraft, task: number): boolean {
    const unit = this.unitOfTask[task] as number;
    const variable = unit < 0 ? -1 : (this.left[unit] as number);
    return variable < 0 || model.engine.max(variable) === 0;
  }

  /** The prices of what is left out, as terms. */
  get terms(): Term[] {
    const terms = [...this.left].map((variable, u) => ({ variable, weight: this.weight[u] as number }));
    return terms.filter(({ variable, weight }) => variable >= 0 && weight > 0);
  }

  /** What the cheapest unit that may be left out adds to the price then; Infinity where none may. */
  get leastWeight(): number {
    const isLeaf = (u: number): boolean => (this.left[u] as number) >= 0 && (this.children[u] as readonly number[]).length === 0;
    return Math.min(...this.problem.units.map((_, u) => (isLeaf(u) ? (this.weight[u] as number) : Number.POSITIVE_INFINITY)));
  }

  /** What the units that a layout leaves out cost by the problem, and by the model. */
  leftOut(layout: Layout): { readonly price: number; readonly weight: number } {
    let price = 0;
    let weight = 0;
    this.problem.units.forEach(({ ready, omissionPrice, tasks }, u) => {
      const isLeft = ready !== null && (layout.start[tasks[0] as number] as number) < 0;
      if (!isLeft || !Number.isFinite(omissionPrice)) return;
      price += omissionPrice;
      if ((this.left[u] as number) >= 0) weight += this.weight[u] as number;
    });
    return { price, weight };
  }

  /** Makes what a layout plans what the engine decides for first. */
  aimAt(model: ModelDraft, layout: Layout): void {
    this.left.forEach((variable, u) => {
      if (variable < 0) return;
      model.engine.target[variable] = (layout.start[this.problem.units[u]?.tasks[0] as number] as number) < 0 ? 1 : 0;
    });
  }
}
