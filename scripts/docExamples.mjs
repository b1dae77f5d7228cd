// The examples of the docs that are run: a fence opened by ```sh run (or ```sh run exit 1), and by ```yaml scenario.
// Used by scripts/docs.mjs and tests/docs.
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/** The fenced blocks of a page: what stands behind the opening fence, the text, and the line it opens on. */
function fencesIn(text) {
  const fences = [];
  let open;
  for (const [index, line] of text.split('\n').entries()) {
    const mark = /^(```+)\s*(.*)$/.exec(line);
    if (open === undefined) {
      if (mark) open = { mark: mark[1], info: mark[2].trim(), line: index + 1, lines: [] };
    } else if (line.trim() === open.mark) {
      fences.push({ info: open.info, line: open.line, text: `${open.lines.join('\n')}\n` });
      open = undefined;
    } else open.lines.push(line);
  }
  return fences;
}

/** Whether a text shows the lines of an example in their order; a line holding only … stands for any lines. */
export function shows(printed, example) {
  const lines = printed.split('\n').map((line) => line.trimEnd());
  let from = 0;
  let mayskip = false;
  for (const wanted of example.trimEnd().split('\n')) {
    if (wanted.trim() === '…') {
      mayskip = true;
      continue;
    }
    const found = lines.indexOf(wanted.trimEnd(), from);
    if (found < 0 || (!mayskip && from > 0 && found !== from)) return false;
    from = found + 1;
    mayskip = false;
  }
  return true;
}

/** The examples to run: a command with its exit code and, when the next fence is ```text, what it prints; or a scenario. */
export function examplesIn(text) {
  const fences = fencesIn(text);
  return fences.flatMap((fence, index) => {
    const run = /^sh run(?: exit (\d+))?$/.exec(fence.info);
    if (run) {
      const next = fences[index + 1];
      return [{ kind: 'sh', ...fence, exitCode: Number(run[1] ?? 0), prints: next?.info === 'text' ? next.text : undefined }];
    }
    return fence.info === 'yaml scenario' ? [{ kind: 'scenario', ...fence }] : [];
  });
}

/** A folder to run examples in: the scenarios, and the command on PATH as `ovenward`. */
export function exampleFolder(root) {
  const folder = mkdtempSync(join(tmpdir(), 'ovenward-docs-'));
  cpSync(join(root, 'scenarios'), join(folder, 'scenarios'), { recursive: true });
  mkdirSync(join(folder, 'bin'));
  const command = join(folder, 'bin/ovenward');
  writeFileSync(command, `#!/bin/sh\nexec "${process.execPath}" "${join(root, 'scripts/ovenward.mjs')}" "$@"\n`);
  chmodSync(command, 0o755);
  return folder;
}

function wrongCommand(example, folder) {
  const env = { ...process.env, NO_COLOR: '1', PATH: `${join(folder, 'bin')}${delimiter}${process.env.PATH}` };
  const ran = spawnSync('bash', ['-e', '-c', example.text], { cwd: folder, env, encoding: 'utf8', input: '' });
  if (ran.status !== example.exitCode) return `ends with exit code ${ran.status}, not ${example.exitCode}: ${ran.stderr.trim()}`;
  if (example.prints !== undefined && !shows(ran.stdout + ran.stderr, example.prints))
    return `prints something else than the page shows:\n${ran.stdout}${ran.stderr}`;
  return undefined;
}

/** What is wrong with the examples of one page, as `line  what`. `readScenario` is the program's own. */
export function wrongExamples(file, folder, readScenario) {
  return examplesIn(readFileSync(file, 'utf8')).flatMap((example) => {
    if (example.kind === 'scenario') {
      const reading = readScenario(example.text);
      return reading.ok ? [] : reading.errors.map(({ code, says }) => `${file}:${example.line}  ${code}  ${says}`);
    }
    const what = wrongCommand(example, folder);
    return what === undefined ? [] : [`${file}:${example.line}  ${what}`];
  });
}

export function removeExampleFolder(folder) {
  rmSync(folder, { recursive: true, force: true });
}
