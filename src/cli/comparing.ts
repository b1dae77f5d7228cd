// `ovenward compare`: reads a scenario and what to change, has it compared, writes the files, tells people.
import { join } from 'node:path';
import { drawComparison } from '../draw/comparison/drawComparison.ts';
import type { Comparison } from '../model/comparison.ts';
import type { Scenario } from '../model/scenario.ts';
import { type CompareQuestion, compare } from '../questions/compare.ts';
import { readChanges } from '../read/readChanges.ts';
import { sweepScenario } from '../read/sweepScenario.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { CompareRequest } from './request.ts';
import { sayComparison } from './sayComparison.ts';
import { workersFor } from './searchLimits.ts';
import { pageFile } from './sheetFiles.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Seconds when the person sets no limit. */
const USUAL_SECONDS = 15;

/** Seconds kept of a limit for drawing and writing. */
const WRITING_SECONDS = 0.6;

const WIPE = '\r\u001b[K';

type Asked = Pick<CompareQuestion, 'days' | 'sweep'>;

async function changedDays(request: CompareRequest, scenario: Scenario, surroundings: Surroundings): Promise<Asked> {
  const { changes, sweep } = request;
  if (changes !== undefined) {
    const read = mustRead(changes, readChanges(await readText(changes, surroundings), scenario));
    return { days: read.map(({ title, scenario: changed }) => ({ title, value: null, scenario: changed })), sweep: null };
  }
  if (sweep === undefined) throw new RangeError('neither changes nor a sweep');
  const { place, now, swept } = mustRead(request.file, sweepScenario(scenario, sweep));
  return {
    days: swept.map(({ value, scenario: changed }) => ({ title: String(value), value, scenario: changed })),
    sweep: { pointer: sweep.pointer, place, now },
  };
}

/** The product whose trays are to be added must be one that is ordered. */
function checkProduct({ file, moreOf }: CompareRequest, { orders }: Scenario): void {
  if (moreOf === undefined || orders.some(({ product }) => product === moreOf)) return;
  const ordered = [...new Set(orders.map(({ product }) => product))].join(', ');
  const says = `No order wants "${moreOf}", so it is not known by when more of it would be wanted.`;
  throw new BadInput(file, [{ code: 'UNKNOWN_PRODUCT', path: '/orders', says, doThis: `Name one of: ${ordered}.` }]);
}

function untilMs(request: CompareRequest, { startedAtMs }: Surroundings): number {
  if (request.seconds === undefined && request.effort !== undefined) return Number.POSITIVE_INFINITY;
  const seconds = request.seconds ?? USUAL_SECONDS;
  return startedAtMs + 1000 * (seconds - Math.min(WRITING_SECONDS, seconds / 4));
}

function picturesOf(request: CompareRequest): readonly string[] {
  const inFolder = request.out === undefined ? [] : [join(request.out, 'comparison.svg')];
  return request.svg === undefined ? inFolder : [...inFolder, request.svg];
}

function answerOf(request: CompareRequest): readonly string[] {
  return request.out === undefined ? [] : [join(request.out, 'comparison.json')];
}

async function writeFiles(request: CompareRequest, comparison: Comparison): Promise<readonly string[]> {
  const written: string[] = [];
  const write = async (file: string, text: string): Promise<void> => {
    await writeWhole(file, text);
    written.push(file);
  };
  for (const file of answerOf(request)) await write(file, jsonText(comparison));
  const pictures = picturesOf(request);
  const pages = pictures.length === 0 ? [] : drawComparison(comparison);
  for (const first of pictures) for (const [index, text] of pages.entries()) await write(pageFile(first, index + 1), text);
  return written;
}

/** Which day is being worked on, on a terminal, over itself. */
function progressOn({ err }: Surroundings): {
  readonly show: (says: string, done: number, all: number) => void;
  readonly wipe: () => void;
} {
  return {
    show: (says, done, all) => {
      if (err.isTerminal) err.write(`${WIPE}comparing, ${done} of ${all} done: ${says} (Ctrl-C takes what is there)`);
    },
    wipe: () => {
      if (err.isTerminal) err.write(WIPE);
    },
  };
}

function isFine({ base, days, notReached }: Comparison): boolean {
  const all = [base, ...days.map(({ figures }) => figures)];
  return notReached.length === 0 && all.every(({ score }) => score.lateTrayMinutes === 0 && score.leftOutTrays === 0);
}

export async function comparing(request: CompareRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, pause } = surroundings;
  const text = await readText(request.file, surroundings);
  return surroundings.stoppable(async (cancelled) => {
    const base = mustRead(request.file, parts.readScenario(text, request.file === '-' ? undefined : request.file));
    checkProduct(request, base);
    const asked = await changedDays(request, base, surroundings);
    const inputs = request.changes === undefined ? [request.file] : [request.file, request.changes];
    for (const file of [...answerOf(request), ...picturesOf(request)]) await prepareToWrite(file, inputs);
    const line = progressOn(surroundings);
    const workers = workersFor(request, surroundings);
    const { effort, moreOf } = request;
    const question: CompareQuestion = {
      base,
      ...asked,
      ...(effort === undefined ? {} : { effort }),
      ...(moreOf === undefined ? {} : { of: moreOf }),
    };
    const asking = {
      seed: request.seed ?? 1,
      workers,
      now,
      cancelled,
      pause,
      version: version(),
      untilMs: untilMs(request, surroundings),
    };
    const comparison = await compare(question, asking, line.show).finally(line.wipe);
    const files = await writeFiles(request, comparison);
    if (request.json) out.write(jsonText(comparison));
    const people = request.json ? err : out;
    people.write(sayComparison(comparison, files, inkFor(people.hasColours)));
    return isFine(comparison) ? EXIT.fine : EXIT.notFine;
  });
}
