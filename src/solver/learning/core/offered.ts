// What the core offers to the engine that drives it (../engine.ts). AssemblyScript.
import { Crowd } from './crowd';
import { Energy } from './energy';
import { addPropagator } from './engine';
import { WeightedSum } from './weightedSum';

export { sharedWords } from '../../assembly/memory';
export { addArc } from './arcs';
export { addVariable, leastOf, mostOf } from './bounds';
export { addClause } from './clauses';
export { assertRise, conflictCount, freeze, search, targetAddress } from './engine';

export function addCrowd(capacity: usize, instants: i32, uses: usize, count: i32): void {
  addPropagator(new Crowd(capacity, instants, uses, count));
}

export function addEnergy(capacity: usize, instants: i32, uses: usize, count: i32): void {
  addPropagator(new Energy(capacity, instants, uses, count));
}

export function addSum(total: i32, terms: usize, count: i32): void {
  addPropagator(new WeightedSum(total, terms, count));
}
