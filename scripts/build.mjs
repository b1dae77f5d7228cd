// Turns src/*.ts into dist/*.js, file by file and only where src is newer, so that the command starts fast on plain Node.
// Types are stripped, not checked: `npm run check` checks them. Used by scripts/ovenward.mjs, demo.mjs and check.mjs.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ready, root } from './ready.mjs';

function filesUnder(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(folder.length));
}

function modifiedMs(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? -1;
}

function builtName(name) {
  return name.replace(/\.ts$/, '.js');
}

// Beside and renamed: two commands that start at once must not read each other's half-written files.
// The time of the source goes along: a file saved while it is being built, or brought back older by git, is seen as stale.
function writeWhole(file, content, timeMs) {
  mkdirSync(dirname(file), { recursive: true });
  const beside = `${file}.${process.pid}`;
  writeFileSync(beside, content);
  utimesSync(beside, timeMs / 1000, timeMs / 1000);
  renameSync(beside, file);
}

/** A translator of one TypeScript file into plain JavaScript and its source map. */
function translator() {
  // A third of a second to load, so only when a file has to be built.
  const ts = createRequire(import.meta.url)('typescript');
  const compilerOptions = {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    rewriteRelativeImportExtensions: true,
    verbatimModuleSyntax: true,
    sourceMap: true,
  };
  return (fileName, text) => {
    const built = ts.transpileModule(text, { fileName, compilerOptions, reportDiagnostics: true });
    const [fault] = built.diagnostics ?? [];
    if (fault) throw new Error(`${fileName}: ${ts.flattenDiagnosticMessageText(fault.messageText, ' ')}`);
    return {
      code: built.outputText,
      map: JSON.stringify({ ...JSON.parse(built.sourceMapText), sources: [pathToFileURL(fileName).href] }),
    };
  };
}

/** Brings `dist` up to date with `src` (folders ending in a slash) and returns how many files it wrote. */
export function build(src = `${root}src/`, dist = `${root}dist/`) {
  const names = filesUnder(src).filter((name) => !name.endsWith('.d.ts'));
  const stale = names.filter((name) => Math.abs(modifiedMs(dist + builtName(name)) - modifiedMs(src + name)) > 1);
  if (stale.length > 0) {
    const translate = stale.some((name) => name.endsWith('.ts')) ? translator() : undefined;
    for (const name of stale) {
      const timeMs = modifiedMs(src + name);
      const content = readFileSync(src + name);
      if (!name.endsWith('.ts')) {
        writeWhole(dist + name, content, timeMs);
        continue;
      }
      const { code, map } = translate(src + name, content.toString('utf8'));
      writeWhole(`${dist}${builtName(name)}.map`, map, timeMs);
      writeWhole(dist + builtName(name), code, timeMs);
    }
    const wanted = new Set(names.flatMap((name) => [builtName(name), `${builtName(name)}.map`]));
    for (const name of filesUnder(dist)) if (!wanted.has(name) && !/\.\d+$/.test(name)) rmSync(dist + name, { force: true });
  }
  return stale.length;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ready();
  build();
}
