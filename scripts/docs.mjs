// The docs check, part of `npm run check`: links and files exist, examples do what the pages say.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './build.mjs';
import { exampleFolder, removeExampleFolder, wrongExamples } from './docExamples.mjs';
import { docFindings } from './docFindings.mjs';
import { ready, root } from './ready.mjs';

ready();
build();
const { readScenario } = await import('../dist/program/readScenario.js');

const pages = [
  ...readdirSync(root).filter((name) => name.endsWith('.md')),
  ...readdirSync(join(root, 'docs'), { recursive: true })
    .filter((name) => name.endsWith('.md'))
    .map((name) => join('docs', name)),
].map((name) => join(root, name));

const folder = exampleFolder(root);
const wrong = pages.flatMap((page) => [...docFindings(root, page), ...wrongExamples(page, folder, readScenario)]);
removeExampleFolder(folder);
for (const line of wrong) console.error(line);
console.log(`${pages.length} pages, ${wrong.length === 0 ? 'nothing wrong' : `${wrong.length} things wrong`}`);
process.exit(wrong.length === 0 ? 0 : 1);
