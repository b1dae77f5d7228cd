// Loads a program that is one CommonJS file together with what V8 made of it at an earlier start (its code cache): compiling it anew
// costs a tenth of a second each time. Copied beside the program by build.mjs.
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

/**
 * What V8 11, that of Node 20, is told: its optimizing compiler to wait several times as long before it takes up a function of
 * JavaScript, to write fewer called functions into it, and to take up WebAssembly sooner; and the heap of young objects to grow in larger
 * steps. Left alone the compiler spends about three of the four seconds that two cores have in a plan of
 * two on compiling, each function for each thread. Newer ones know other names, compile less by themselves and gained nothing measurable.
 */
const V8_11_FLAGS = [
  '--interrupt-budget=600000',
  '--max-inlined-bytecode-size-cumulative=200',
  '--wasm-tiering-budget=200000',
  '--semi-space-growth-factor=16',
];

/** Functions not called for a while are let go of: only what a short run has compiled is worth keeping. */
const MOST_SECONDS = 5;

/** Undefined where there is none to be read: then the start is slower, and that is all. */
function kept(file) {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

function keep(file, script) {
  const beside = `${file}.${process.pid}`;
  try {
    writeFileSync(beside, script.createCachedData());
    renameSync(beside, file);
  } catch {
    // A folder that cannot be written, a full disk: the next start is as slow.
    rmSync(beside, { force: true });
  }
}

/**
 * What the program exports.
 *
 * @param name - its file, beside this one; its name changes with its content.
 * @param isTypical - whether this run calls what most runs call: what it compiled is kept when none is yet.
 */
export function load(name, isTypical) {
  if (process.versions.v8.startsWith('11.')) for (const flag of V8_11_FLAGS) setFlagsFromString(flag);
  const file = fileURLToPath(new URL(name, import.meta.url));
  const require = createRequire(file);
  if (process.env.OVENWARD_DEBUG === '1') {
    // Faults are told by the lines of the sources. Node reads the maps of what it loads itself, and loads from now on.
    process.setSourceMapsEnabled(true);
    return require(file);
  }
  const cache = `${file}.${process.versions.v8}-${process.arch}.cache`;
  const cachedData = kept(cache);
  const script = new Script(`(function (exports, require, module, __filename, __dirname) {${readFileSync(file, 'utf8')}\n})`, {
    filename: file,
    cachedData,
  });
  const module = { exports: {} };
  script.runInThisContext()(module.exports, require, module, file, dirname(file));
  if (isTypical && (cachedData === undefined || script.cachedDataRejected))
    process.once('exit', () => {
      if (process.uptime() < MOST_SECONDS) keep(cache, script);
    });
  return module.exports;
}
