// Turns src/*.ts into a few files of JavaScript in dist/program/, with the packages the command always loads in them: some seven hundred
// files read one by one cost a plan of two seconds a tenth of its time. Types are stripped, not checked: `npm run check` checks them.
// Used by scripts/ovenward.mjs, demo.mjs and check.mjs.
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ready, root } from './ready.mjs';

/** Files of src that others start or import by name: dist/program/NAME.js. All in one folder, for threads are looked for beside their starter. */
const ENTRIES = [
  'cli/main.ts',
  'planning.ts',
  'read/readScenario.ts',
  'solver/laneThread.ts',
  'api/jobs/workThread.ts',
  'store/storeThread.ts',
];

/** Packages built in. Others stay where they are: native ones, those that ask where they lie or start threads, those of the service alone. */
const BUILT_IN = ['commander', 'fastest-levenshtein', 'picocolors', 'pure-rand', 'rfc6902', 'temporal-polyfill', 'yaml', 'zod'];

/** Some packages built in are CommonJS and ask for modules of Node. */
const BANNER =
  "import { createRequire as requireFromHere } from 'node:module';\nconst require = requireFromHere(import.meta.url);";

/** What the files were built from, and when that was last changed. */
const STAMP = 'built-from.json';

/** A service that runs loads parts of itself later: those of an older build stay for so long. */
const KEPT_MS = 7 * 24 * 3600 * 1000;

function filesUnder(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(folder.length))
    .sort();
}

/** Every source with its time, and what else decides what is built: a file brought back older by git is a change too. */
function sources(src) {
  const beside = ['package-lock.json', 'scripts/build.mjs'].filter((name) => existsSync(root + name));
  const files = [...filesUnder(src).map((name) => [name, src + name]), ...beside.map((name) => [`../${name}`, root + name])];
  return JSON.stringify(files.map(([name, file]) => [name, statSync(file).mtimeMs]));
}

function writeWhole(file, content) {
  mkdirSync(dirname(file), { recursive: true });
  // Beside and renamed: two commands that start at once must not read each other's half-written files.
  const beside = `${file}.${process.pid}`;
  writeFileSync(beside, content);
  renameSync(beside, file);
}

/** The licences of the packages built in, which want to be handed on with them. */
function licences(inputs) {
  const folders = new Set(
    Object.keys(inputs).flatMap((file) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? []),
  );
  const texts = [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${root}${folder}/package.json`, 'utf8'));
    const file = readdirSync(root + folder).find((each) => /^licen[cs]e/i.test(each));
    const text = file === undefined ? license : readFileSync(`${root}${folder}/${file}`, 'utf8').trim();
    return `${name} ${version}\n\n${text}\n`;
  });
  return `${texts.join('\n----\n\n')}`;
}

function bundle(src, dist, entries) {
  // Only when something has to be built.
  const { buildSync } = createRequire(import.meta.url)('esbuild');
  const { dependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  return buildSync({
    entryPoints: entries.map((name) => src + name),
    outdir: dist,
    entryNames: '[name]',
    chunkNames: 'part-[hash]',
    absWorkingDir: root,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: Object.keys(dependencies).filter((name) => !BUILT_IN.includes(name)),
    banner: { js: BANNER },
    sourcemap: 'linked',
    sourcesContent: false,
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
}

/** Parts of builds long gone. */
function tidy(dist, wanted) {
  for (const name of readdirSync(dist)) {
    const isOld = Date.now() - (statSync(dist + name, { throwIfNoEntry: false })?.mtimeMs ?? 0) > KEPT_MS;
    if (!wanted.has(name) && isOld) rmSync(dist + name, { force: true });
  }
}

/**
 * Brings `dist` up to date with `src` (folders ending in a slash); true when it had to be built. A fault in a source is thrown with its
 * file and line, and what was built before stays.
 */
export function build(src = `${root}src/`, dist = `${root}dist/program/`, entries = ENTRIES) {
  const from = sources(src);
  const stamp = dist + STAMP;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === from) return false;
  const { outputFiles, metafile } = bundle(src, dist, entries);
  const isEntry = ({ path }) => !basename(path).startsWith('part-');
  // Parts first: whoever reads an entry finds all that it names.
  for (const file of [...outputFiles].sort((a, b) => isEntry(a) - isEntry(b))) writeWhole(file.path, file.contents);
  writeWhole(`${dist}LICENCES.txt`, licences(metafile.inputs));
  writeWhole(stamp, from);
  tidy(dist, new Set([...outputFiles.map(({ path }) => basename(path)), 'LICENCES.txt', STAMP]));
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ready();
  build();
}
