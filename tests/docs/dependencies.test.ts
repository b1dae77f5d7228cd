// docs/dependencies.md lists exactly what package.json does, with the licence each package states.
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

type Package = {
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
};

function packageAt(folder: string): Package {
  return JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
}

const own = packageAt('');
const [, shipped = '', forWork = ''] = readFileSync(join(root, 'docs/dependencies.md'), 'utf8').split(
  /^## (?:Shipped|For work.*)$/m,
);

test.each([
  ['shipped', shipped, own.dependencies],
  ['for work on the project', forWork, own.devDependencies],
])('%s: same packages, same licences', (_, section, packages) => {
  const inDocs = [...section.matchAll(/^\| (\S+) \| .* \| .* \| ([^|]+) \|$/gm)]
    .map(([, name, licence]) => ({ name, licence }))
    .filter(({ name }) => name !== 'package');
  const inPackage = Object.keys(packages ?? {}).map((name) => ({ name, licence: packageAt(`node_modules/${name}`).license }));
  expect(inPackage.length).toBeGreaterThan(5);
  expect(inDocs).toEqual(inPackage);
});
