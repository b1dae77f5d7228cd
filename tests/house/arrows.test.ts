// The import arrows: the house keeps them, and a wrong import of each kind is caught by the rule that forbids it.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const cruiser = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');

type Violation = { readonly from: string; readonly rule: { readonly name: string } };
type Cruise = { readonly summary: { readonly violations: readonly Violation[]; readonly totalCruised: number } };

function cruise(folder: string): Cruise {
  const words = [cruiser, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', 'src'];
  const { stdout, stderr } = spawnSync(process.execPath, words, { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (stdout === '') throw new Error(stderr);
  return JSON.parse(stdout);
}

/** A wrong import: the file that has it, what it imports, the rule that must name it. */
const WRONG: readonly (readonly [file: string, imports: string, rule: string])[] = [
  ['model/a.ts', '../dough/right.ts', 'arrow-model'],
  ['dough/a.ts', '../check/right.ts', 'arrow-dough'],
  ['read/a.ts', '../check/right.ts', 'arrow-read'],
  ['check/a.ts', '../solver/right.ts', 'arrow-check'],
  ['check/b.ts', '../compile/right.ts', 'arrow-check'],
  ['compile/a.ts', '../check/right.ts', 'arrow-compile'],
  ['solver/a.ts', '../model/right.ts', 'arrow-solver'],
  ['solver/b.ts', '../check/right.ts', 'arrow-solver'],
  ['explain/a.ts', '../solver/right.ts', 'arrow-explain'],
  ['draw/a.ts', '../check/right.ts', 'arrow-draw'],
  ['planning.ts', './questions/right.ts', 'arrow-planning.ts'],
  ['questions/a.ts', '../solver/right.ts', 'arrow-questions'],
  ['store/a.ts', '../draw/right.ts', 'arrow-store'],
  ['web/a.ts', '../check/right.ts', 'arrow-web'],
  ['api/a.ts', '../cli/right.ts', 'arrow-api'],
  ['cli/a.ts', '../solver/right.ts', 'arrow-cli'],
  ['cli/b.ts', 'express', 'package-express'],
  ['draw/b.ts', 'commander', 'package-commander'],
  ['model/b.ts', 'temporal-polyfill', 'package-temporal-polyfill'],
  ['compile/b.ts', 'pure-rand', 'package-pure-rand'],
  ['api/b.ts', 'left-pad', 'package-unlisted'],
  ['read/b.ts', 'node:fs', 'files-and-network'],
  ['solver/c.ts', 'node:perf_hooks', 'files-and-network'],
  ['draw/c.ts', 'fs/promises', 'files-and-network'],
  ['misc/a.ts', '../model/right.ts', 'unknown-folder'],
  ['cli/c.ts', '../../tests/right.ts', 'out-of-the-house'],
  ['check/circleA.ts', './circleB.ts', 'circle'],
  ['check/c.ts', './missing.ts', 'not-found'],
];

const PACKAGES = ['express', 'commander', 'temporal-polyfill', 'pure-rand', 'left-pad'];
const house = mkdtempSync(join(tmpdir(), 'arrows-'));
afterAll(() => rmSync(house, { recursive: true }));

function put(path: string, text: string): void {
  mkdirSync(dirname(join(house, path)), { recursive: true });
  writeFileSync(join(house, path), text);
}

beforeAll(() => {
  for (const file of ['.dependency-cruiser.cjs', 'tsconfig.json']) cpSync(join(root, file), join(house, file));
  put(
    'package.json',
    JSON.stringify({ name: 'house', type: 'module', dependencies: Object.fromEntries(PACKAGES.map((name) => [name, '*'])) }),
  );
  for (const name of PACKAGES) {
    put(`node_modules/${name}/package.json`, JSON.stringify({ name, version: '1.0.0', type: 'module', exports: './index.js' }));
    put(`node_modules/${name}/index.js`, 'export const thing = 1;\n');
  }
  put('tests/right.ts', 'export const thing = 1;\n');
  for (const folder of [
    'dough',
    'read',
    'check',
    'compile',
    'solver',
    'explain',
    'draw',
    'questions',
    'store',
    'web',
    'api',
    'cli',
    'model',
  ])
    put(`src/${folder}/right.ts`, folder === 'model' ? 'export const thing = 1;\n' : "export { thing } from './within.ts';\n");
  for (const folder of ['dough', 'read', 'check', 'compile', 'explain', 'draw', 'questions', 'store', 'web', 'api', 'cli'])
    put(`src/${folder}/within.ts`, "export { thing } from '../model/right.ts';\n");
  put('src/solver/within.ts', 'export const thing = 1;\n');
  put('src/api/express.ts', "export { thing } from 'express';\n");
  put('src/cli/command.ts', "export { readFileSync } from 'node:fs';\nexport { thing } from 'commander';\n");
  put('src/check/circleB.ts', "export type { thing } from './circleA.ts';\n");
  for (const [file, imports] of WRONG) put(`src/${file}`, `export type { thing } from '${imports}';\n`);
});

test('every wrong import is named by its rule, types included, and no right import is', () => {
  const seen = cruise(house).summary.violations.map(({ from, rule }) => `${from} ${rule.name}`);
  const expected = WRONG.map(([file, , rule]) => `src/${file} ${rule}`);
  expect([...new Set(seen)].sort()).toEqual([...expected].sort());
});

test('the house keeps its arrows', () => {
  const { violations, totalCruised } = cruise(root).summary;
  expect(violations.map(({ from, rule }) => `${from} ${rule.name}`)).toEqual([]);
  expect(totalCruised).toBeGreaterThan(10);
});
