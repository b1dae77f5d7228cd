// `npm run check`, what a change must pass: types, lint and format, import arrows, docs, tests. Runs them all and counts.
import { spawnSync } from 'node:child_process';
import { ready, root } from './ready.mjs';

ready();

const CHECKS = [
  { name: 'types', run: ['node_modules/typescript/bin/tsc', '--noEmit'] },
  { name: 'lint and format', run: ['node_modules/@biomejs/biome/bin/biome', 'ci', '--error-on-warnings', '.'] },
  {
    name: 'import arrows',
    run: ['node_modules/dependency-cruiser/bin/dependency-cruise.mjs', '--config', '.dependency-cruiser.cjs', 'src'],
  },
  { name: 'docs', run: ['scripts/docs.mjs'] },
  { name: 'tests', run: ['scripts/test.mjs'] },
];

const failed = CHECKS.filter(({ name, run: [script, ...words] }) => {
  console.log(`\n== ${name}`);
  return (
    spawnSync(process.execPath, [root + script, ...words], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] }).status !== 0
  );
});
console.log(failed.length === 0 ? '\nAll checks passed.' : `\nFailed: ${failed.map(({ name }) => name).join(', ')}`);
process.exit(failed.length === 0 ? 0 : 1);
