// The machine a benchmark ran on, named beside every table.
import { cpus, totalmem } from 'node:os';
import { z } from 'zod';

export const machineSchema = z.strictObject({ cpu: z.string(), cores: z.int(), memoryGb: z.int(), node: z.string() });
export type Machine = z.infer<typeof machineSchema>;

export function thisMachine(): Machine {
  const all = cpus();
  return {
    cpu: all[0]?.model.trim() ?? 'unknown',
    cores: all.length,
    memoryGb: Math.round(totalmem() / 2 ** 30),
    node: process.version,
  };
}

export function sayMachine({ cpu, cores, memoryGb, node }: Machine): string {
  return `${cpu}, ${cores} ${cores === 1 ? 'core' : 'cores'}, ${memoryGb} GB, Node ${node.replace(/^v/, '')}`;
}
