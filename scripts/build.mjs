// Turns src/*.ts into a few files of JavaScript in dist/program/, with the packages the command always loads in them: some seven hundred
// files read one by one cost a plan of two seconds a tenth of its time. Types are stripped, not checked: `npm run check` checks them.
// Used by scripts/ovenward.mjs, demo.mjs and check.mjs.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ready, root } from './ready.mjs';

/** The command itself: one file of CommonJS, which cached.mjs loads. */
const COMMAND = 'cli/main.ts';

/** Files of src that others start or import by name: dist/program/NAME.js, each whole in itself. In one folder, for threads are looked for beside their starter. */
const ENTRIES = [
  COMMAND,
  'planning.ts',
  'read/readScenario.ts',
  'solver/laneThread.ts',
  'api/jobs/workThread.ts',
  'store/storeThread.ts',
];

/** Packages built in. Others stay where they are: native ones, those that ask where they lie or start threads, those of the service alone. */
const BUILT_IN = ['commander', 'fastest-levenshtein', 'picocolors', 'pure-rand', 'rfc6902', 'temporal-polyfill', 'yaml', 'zod'];

/** Some packages built in are CommonJS and ask for modules of Node; of CommonJS nobody can ask where it lies as of a module. */
const BANNERS = {
  esm: "import { createRequire as requireFromHere } from 'node:module';\nconst require = requireFromHere(import.meta.url);",
  cjs: "const urlOfFile = require('node:url').pathToFileURL(__filename).href;",
};

/** What the files were built from, and when that was last changed. */
const STAMP = 'built-from.json';

/** A command that is just starting may still read the file of an older build: it stays for so long. */
const KEPT_MS = 3600 * 1000;

function filesUnder(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(folder.length))
    .sort();
}

/** Every source with its time, and what else decides what is built: a file brought back older by git is a change too. */
function sources(src) {
  const beside = ['package-lock.json', 'scripts/build.mjs', 'scripts/cached.mjs'].filter((name) => existsSync(root + name));
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

/** One entry with all it needs; parts that are asked for later are in it too, and run when they are. */
function bundle(buildSync, external, entry, outdir) {
  const format = entry.endsWith(COMMAND) ? 'cjs' : 'esm';
  return buildSync({
    entryPoints: [entry],
    outdir,
    absWorkingDir: root,
    bundle: true,
    platform: 'node',
    format,
    target: 'node20',
    external,
    banner: { js: BANNERS[format] },
    // What is compiled ahead cannot import modules.
    ...(format === 'cjs' ? { define: { 'import.meta.url': 'urlOfFile' }, supported: { 'dynamic-import': false } } : {}),
    // Half as much to read.
    minifyWhitespace: true,
    minifySyntax: true,
    sourcemap: 'linked',
    sourcesContent: false,
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
}

/** The command under a name that changes with it, and main.js, which loads it. */
function asCommand(dist, outputFiles) {
  const [map, code] = ['.map', ''].map((end) => outputFiles.find(({ path }) => path.endsWith(`main.js${end}`)));
  const name = `command-${createHash('sha256').update(code.contents).digest('hex').slice(0, 12)}.cjs`;
  const text = code.text.replace('//# sourceMappingURL=main.js.map', `//# sourceMappingURL=${name}.map`);
  const loads = `import { load } from './cached.js';\nexport const { main } = load('${name}', process.argv[2] === 'plan');\n`;
  return [
    { path: `${dist}${name}.map`, contents: map.contents },
    { path: dist + name, contents: text },
    { path: `${dist}cached.js`, contents: readFileSync(new URL('./cached.mjs', import.meta.url)) },
    { path: `${dist}main.js`, contents: loads },
  ];
}

function filesOf(src, dist, entries) {
  // Only when something has to be built.
  const { buildSync } = createRequire(import.meta.url)('esbuild');
  const { dependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  const external = Object.keys(dependencies).filter((name) => !BUILT_IN.includes(name));
  const built = entries.map((name) => ({ name, ...bundle(buildSync, external, src + name, dist) }));
  return {
    files: built.flatMap(({ name, outputFiles }) => (name === COMMAND ? asCommand(dist, outputFiles) : outputFiles)),
    inputs: Object.assign({}, ...built.map(({ metafile }) => metafile.inputs)),
  };
}

/** What builds long gone left, and what was compiled of it. */
function tidy(dist, wanted) {
  for (const name of readdirSync(dist)) {
    const isOld = Date.now() - (statSync(dist + name, { throwIfNoEntry: false })?.mtimeMs ?? 0) > KEPT_MS;
    const isWanted = [...wanted].some((each) => name === each || name.startsWith(`${each}.`));
    if (!isWanted && isOld) rmSync(dist + name, { force: true });
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
  const { files, inputs } = filesOf(src, dist, entries);
  for (const { path, contents } of files) writeWhole(path, contents);
  writeWhole(`${dist}LICENCES.txt`, licences(inputs));
  writeWhole(stamp, from);
  tidy(dist, new Set([...files.map(({ path }) => basename(path)), 'LICENCES.txt', STAMP]));
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ready();
  build();
}
