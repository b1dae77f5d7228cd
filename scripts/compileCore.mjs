// Compiles the cores of the solver (src/solver/learning/core and src/solver/beam/core, AssemblyScript) to WebAssembly and writes each, as
// text, to coreCode.ts beside it. Run after a change of a core: `npm run core`. A test fails where that was forgotten.
import { pathToFileURL } from 'node:url';
import asc from 'assemblyscript/asc';
import writeFileAtomic from 'write-file-atomic';
import { root } from './ready.mjs';

/** Folders with a core: it begins at core/offered.ts, and what comes of it is coreCode.ts. */
export const CORES = ['src/solver/learning', 'src/solver/beam'];

/** For speed. Memory is never given back (`stub`): a core serves one solver and goes with it. No text of its own, so no `abort`. */
const OPTIONS = ['--runtime', 'stub', '-O3', '--converge', '--noAssert', '--enable', 'simd', '--use', 'abort='];

/** The file of a folder and what belongs into it. Faults of the core are thrown with their files and lines. */
export async function compiledCore(folder) {
  const { error, stderr, binary } = await compile(`${folder}/core/offered.ts`, [...OPTIONS, '--outFile', 'core.wasm']);
  if (error !== null) throw new Error(`${error.message}\n${stderr}`);
  const text = Buffer.from(binary).toString('base64');
  return {
    path: `${root}${folder}/coreCode.ts`,
    content: `// The core (core/), compiled to WebAssembly, in base64. Written by \`npm run core\`.\n\nexport const coreCode =\n  '${text}';\n`,
  };
}

async function compile(entry, options) {
  let binary = null;
  const { error, stderr } = await asc.main([entry, ...options, '--baseDir', root], {
    writeFile(_name, contents) {
      binary = contents;
    },
  });
  return { error, stderr: stderr.toString(), binary };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  for (const folder of CORES) {
    const { path, content } = await compiledCore(folder);
    writeFileAtomic.sync(path, content);
  }
}
