// Compiles the learning core (src/solver/learning/core, AssemblyScript) to WebAssembly and writes it, as text, to coreCode.ts beside it.
// Run after a change of the core: `npm run core`. A test fails where that was forgotten.
import { pathToFileURL } from 'node:url';
import asc from 'assemblyscript/asc';
import writeFileAtomic from 'write-file-atomic';
import { root } from './ready.mjs';

const ENTRY = 'src/solver/learning/core/offered.ts';
const CODE = 'src/solver/learning/coreCode.ts';

/** For speed. Memory is never given back (`stub`): a core serves one engine and goes with it. No text of its own, so no `abort`. */
const OPTIONS = ['--runtime', 'stub', '-O3', '--converge', '--noAssert', '--enable', 'simd', '--use', 'abort='];

/** The file and what belongs into it. Faults of the core are thrown with their files and lines. */
export async function compiledCore() {
  const { error, stderr, binary } = await compile([...OPTIONS, '--outFile', 'core.wasm']);
  if (error !== null) throw new Error(`${error.message}\n${stderr}`);
  const text = Buffer.from(binary).toString('base64');
  return {
    path: root + CODE,
    content: `// The learning core (core/), compiled to WebAssembly, in base64. Written by \`npm run core\`.\n\nexport const coreCode =\n  '${text}';\n`,
  };
}

async function compile(options) {
  let binary = null;
  const { error, stderr } = await asc.main([ENTRY, ...options, '--baseDir', root], {
    writeFile(_name, contents) {
      binary = contents;
    },
  });
  return { error, stderr: stderr.toString(), binary };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { path, content } = await compiledCore();
  writeFileAtomic.sync(path, content);
}
