// Fingerprints of the code behind a row, so that figures of an older program are measured anew and not mixed with new ones.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../planners/childProcess.ts';
import type { Planner } from '../planners/instance.ts';

const SCENARIOS = ['benchmarks/scenarios'];
const READ_BACK = ['src/compile', 'src/model', 'src/solver/moves.ts', 'benchmarks/planners'];

const FOLDERS: Readonly<Record<Planner, readonly string[]>> = {
  ovenward: [...SCENARIOS, 'src', 'benchmarks/planners/ownChild.mjs', 'benchmarks/planners/ownCommand.mjs'],
  'cp-sat': [...SCENARIOS, ...READ_BACK, 'benchmarks/cpsat'],
  rule: [...SCENARIOS, ...READ_BACK, 'benchmarks/rule'],
};

function filesOf(path: string): string[] {
  if (statSync(join(root, path)).isFile()) return [path];
  const names = readdirSync(join(root, path), { recursive: true, encoding: 'utf8' });
  return names.map((name) => join(path, name)).filter((name) => statSync(join(root, name)).isFile());
}

/** Twelve hexadecimal digits that change when the planner's code does. */
export function sourceOf(planner: Planner): string {
  const hash = createHash('sha256');
  for (const file of FOLDERS[planner].flatMap(filesOf).sort()) hash.update(file).update(readFileSync(join(root, file)));
  return hash.digest('hex').slice(0, 12);
}
