// The results of the main benchmark on disk: read at the start, written after every plan, so that a run may be stopped and go on.
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { z } from 'zod';
import { PLANNERS, type Row, SETS } from '../planners/instance.ts';
import { type Machine, machineSchema } from './machine.ts';

const FOLDER = resolve(import.meta.dirname, '..');

const rowSchema = z.strictObject({
  set: z.enum(SETS),
  scenario: z.string(),
  trays: z.int(),
  planner: z.enum(PLANNERS),
  limitSeconds: z.number(),
  cost: z.number().nullable(),
  lowerBound: z.number(),
  lateTrayMinutes: z.number(),
  leftOutTrays: z.number(),
  finishMinute: z.number(),
  isProved: z.boolean(),
  seconds: z.number(),
  cores: z.number().nullable(),
  peakMb: z.number().nullable(),
  source: z.string(),
});

const resultsSchema = z.strictObject({
  machine: machineSchema,
  references: z.record(z.string(), z.strictObject({ cost: z.number(), bound: z.number() })),
  rows: z.array(rowSchema),
});

export type Results = {
  readonly machine: Machine;
  /** Scenario to the price and floor known of it from elsewhere. */
  readonly references: Readonly<Record<string, { readonly cost: number; readonly bound: number }>>;
  readonly rows: readonly Row[];
};

/** Writes a file of this folder whole or not at all. */
export function writeJson(name: string, value: unknown): void {
  const file = resolve(FOLDER, name);
  writeFileSync(`${file}.${process.pid}`, `${JSON.stringify(value, null, 1)}\n`);
  renameSync(`${file}.${process.pid}`, file);
}

/** Reads a file of this folder; null when there is none. */
export function readJson<T>(name: string, schema: z.ZodType<T>): T | null {
  const file = resolve(FOLDER, name);
  return existsSync(file) ? schema.parse(JSON.parse(readFileSync(file, 'utf8'))) : null;
}

export const readResults = (): Results | null => readJson('results.json', resultsSchema);
export const writeResults = (results: Results): void => writeJson('results.json', results);

export const keyOf = (row: Pick<Row, 'set' | 'scenario' | 'planner' | 'limitSeconds'>): string =>
  `${row.set} ${row.scenario} ${row.planner} ${row.limitSeconds}`;

/** The rows with new ones in the place of old. */
export function withRows(rows: readonly Row[], added: readonly Row[]): Row[] {
  const fresh = new Set(added.map(keyOf));
  return [...rows.filter((row) => !fresh.has(keyOf(row))), ...added];
}
