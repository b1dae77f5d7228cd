// What has happened, read: whole documents, and every error at once with its place and what to do.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HAPPENED_CODES } from '../../src/model/happenedCodes.ts';
import { placedInHappened, readHappened } from '../../src/read/readHappened.ts';
import { threeLoaves, threeLoavesPlan } from '../questions/replan/threeLoaves.ts';

const NOW = 60;
const read = (text: string) => readHappened(text, threeLoaves, threeLoavesPlan, NOW);

/** Errors as "line:column CODE says / doThis". */
function errorsOf(text: string): readonly string[] {
  const reading = read(text);
  return reading.ok
    ? []
    : reading.errors.map(({ line, column, code, says, doThis }) => `${line}:${column} ${code} ${says} / ${doThis}`);
}

const events = (...lines: string[]): string => `happened:\n${lines.map((line) => `  - ${line}\n`).join('')}`;

describe('whole documents', () => {
  it('every kind of event, decisions, a price', () => {
    const text = `${events(
      '{ what: began, task: rye-1/shape, at: "03:48" }',
      '{ what: ended, task: rye-2/shape, at: "03:57" }',
      '{ what: not-yet, task: rye-3/shape }',
      '{ what: needs-more, tray: rye-1, minutes: 10 }',
      '{ what: away, person: ben, from: "03:30" }',
      '{ what: out-of-use, deck: oven/top, from: "04:00", until: "05:00" }',
      '{ what: ordered, product: rye, pieces: 4, readyBy: "09:00" }',
      '{ what: order-changed, product: rye, readyBy: "07:00", pieces: 4 }',
      '{ what: order-cancelled, product: rye, readyBy: "08:00" }',
      '{ what: lost, tray: rye-2 }',
    )}keep:\n  - { task: rye-1/bake }\nmovePrice: 5\n`;
    const reading = read(text);
    expect(errorsOf(text)).toEqual([]);
    if (!reading.ok) return;
    expect(reading.value.happened).toHaveLength(10);
    expect(reading.value.keep).toEqual([{ task: 'rye-1/bake', keeps: ['time', 'place', 'people'] }]);
    expect(reading.value.movePrice).toBe(5);
  });

  it('JSON, and nothing at all', () => {
    expect(read('{ "happened": [] }')).toEqual({ ok: true, value: { happened: [], keep: [] } });
    expect(read('movePrice: 0')).toEqual({ ok: true, value: { happened: [], keep: [], movePrice: 0 } });
  });

  it('an order that came in can be changed', () => {
    const come = '{ what: ordered, product: rye, pieces: 4, readyBy: "09:00" }';
    const changed = '{ what: order-changed, product: rye, readyBy: "09:00", newReadyBy: "09:30" }';
    expect(errorsOf(events(come, changed))).toEqual([]);
    expect(errorsOf(events(changed, come))).toHaveLength(1);
  });
});

/** One event, and the error it gives. */
const WRONG: readonly (readonly [code: keyof typeof HAPPENED_CODES, line: string, error: string])[] = [
  ['NAMES_NONE', '{ what: needs-more, minutes: 5 }', '2:5 NAMES_NONE What needs more names nothing. / Add "batch" or "tray".'],
  [
    'NAMES_SEVERAL',
    '{ what: out-of-use, deck: oven/top, proofer: proofer, from: "04:00" }',
    '2:5 NAMES_SEVERAL What is out of use names "deck" and "proofer". / Keep one of them, and write another entry for the other.',
  ],
  [
    'UNKNOWN_TASK',
    '{ what: not-yet, task: rye-1/shap }',
    '2:28 UNKNOWN_TASK There is no task "rye-1/shap". / Did you mean "rye-1/shape"? Name one that is there: "rye-dough-1/mix", "rye-dough-1/bulk", "rye-1/shape", "rye-2/shape", "rye-3/shape", "rye-1/proof", "rye-2/proof", "rye-3/proof", "rye-1/bake", "rye-2/bake", "rye-3/bake", "rye-1/cool", ....',
  ],
  [
    'UNKNOWN_TRAY',
    '{ what: lost, tray: rye-4 }',
    '2:25 UNKNOWN_TRAY There is no tray "rye-4". / Did you mean "rye-1"? Name one that is there: "rye-1", "rye-2", "rye-3".',
  ],
  [
    'UNKNOWN_BATCH',
    '{ what: needs-more, batch: rye-dough, minutes: 5 }',
    '2:32 UNKNOWN_BATCH There is no batch "rye-dough". / Did you mean "rye-dough-1"? Name one that is there: "rye-dough-1".',
  ],
  [
    'UNKNOWN_PERSON',
    '{ what: away, person: bne, from: "03:30" }',
    '2:27 UNKNOWN_PERSON There is no person "bne". / Name one that is there: "ada", "ben".',
  ],
  [
    'UNKNOWN_PLACE',
    '{ what: out-of-use, deck: top, from: "04:00" }',
    '2:31 UNKNOWN_PLACE There is no deck "top". / Name one that is there: "oven/top", "oven/low".',
  ],
  [
    'NO_SUCH_ORDER',
    '{ what: order-cancelled, product: rye, readyBy: "07:30" }',
    '2:53 NO_SUCH_ORDER No order of "rye" is wanted by 07:30. / Its orders are wanted by "07:00", "08:00".',
  ],
  [
    'NOTHING_CHANGED',
    '{ what: order-changed, product: rye, readyBy: "07:00" }',
    '2:5 NOTHING_CHANGED The changed order says neither pieces nor newReadyBy. / Add what has changed.',
  ],
  [
    'AFTER_NOW',
    '{ what: began, task: rye-1/shape, at: "04:01" }',
    '2:43 AFTER_NOW 04:01 is later than now. / Tell only what has happened by now, or correct --now.',
  ],
  [
    'SPAN_UPSIDE_DOWN',
    '{ what: away, person: ben, from: "04:30", until: "04:00" }',
    '2:54 SPAN_UPSIDE_DOWN 04:00 is not after 04:30. / Put the end after the beginning.',
  ],
  [
    'TIME_OUTSIDE_DAY',
    '{ what: away, person: ben, from: "13:00" }',
    '2:38 TIME_OUTSIDE_DAY 13:00 to the end lies outside the day. / Write times within the day.',
  ],
  [
    'RESTS_UNTIL_NEXT',
    '{ what: ended, task: rye-1/proof, at: "03:58" }',
    '2:26 RESTS_UNTIL_NEXT rye-1/proof goes on until the next step begins. / Say when the next step began instead, with what: began.',
  ],
];

describe('errors', () => {
  it.each(WRONG)('%s', (_code, line, error) => {
    expect(errorsOf(events(line))).toEqual([error]);
  });

  it('NO_ORDER_LEFT', () => {
    const cancelled = ['07:00', '08:00'].map((time) => `{ what: order-cancelled, product: rye, readyBy: "${time}" }`);
    expect(errorsOf(events(...cancelled))).toEqual([
      '1:1 NO_ORDER_LEFT Every order is cancelled. / Then there is nothing left to plan.',
    ]);
  });

  it('TOLD_TWICE', () => {
    const twice = events('{ what: not-yet, task: rye-1/shape }', '{ what: began, task: rye-1/shape, at: "03:50" }');
    expect(errorsOf(twice)).toEqual(['3:5 TOLD_TWICE Events 1 and 2 both tell whether rye-1/shape began. / Keep one of them.']);
  });

  it('what is wrong with the shape: a word, a key, a time', () => {
    expect(errorsOf(events('{ what: begun, task: rye-1/shape, at: "03:50" }'))).toEqual([
      '2:13 UNKNOWN_WORD "what" of event 1 (begun) is "begun", which is none of the choices. / Did you mean "began"? Write began, ended, not-yet, needs-more, away, out-of-use, ordered, order-changed, order-cancelled or lost.',
    ]);
    expect(errorsOf(events('{ what: lost, trays: rye-1 }'))).toEqual([
      '2:19 UNKNOWN_KEY Event 1 (lost) has a key "trays", which means nothing there. / Did you mean "tray"? Keys that can stand there: what, tray.',
    ]);
    expect(errorsOf(events('{ what: began, task: rye-1/shape, at: 5.30 }'))[0]).toContain('BAD_TIME');
  });

  it('a bare list is told what it lacks; an empty file where an example is', () => {
    expect(errorsOf('- { what: lost, tray: rye-1 }')).toEqual([
      '1:1 NOT_AN_OBJECT The whole input is a list, not keys with values. / Put the line "happened:" before the list.',
    ]);
    expect(errorsOf('# nothing')).toEqual([
      '1:1 EMPTY The file of what has happened holds nothing. / Start from the example in docs/replan.md.',
    ]);
  });

  it('all at once', () => {
    const text = events(
      '{ what: lost, tray: rye-9 }',
      '{ what: away, person: zoe, from: "03:30" }',
      '{ what: not-yet, task: x }',
    );
    expect(errorsOf(text).map((error) => error.split(' ').slice(0, 2).join(' '))).toEqual([
      '2:25 UNKNOWN_TRAY',
      '3:27 UNKNOWN_PERSON',
      '4:28 UNKNOWN_TASK',
    ]);
  });

  it('what is found later is given its place', () => {
    const text = events('{ what: lost, tray: rye-1 }', '{ what: began, task: rye-1/proof, at: "03:44" }');
    const found = [{ code: 'NOT_BEGUN_BEFORE', path: '/happened/1', says: 'It cannot be.', doThis: 'Correct it.' }];
    expect(placedInHappened(text, found)).toEqual([{ ...found[0], line: 3, column: 5 }]);
  });
});

it('every code has a line in docs/replan.md, and no other has', () => {
  const page = readFileSync(new URL('../../docs/replan.md', import.meta.url), 'utf8');
  const listed = [...page.matchAll(/^\| `([A-Z_]+)` \| (.+) \|$/gm)].map(([, code, says]) => [code, says]);
  expect(listed).toEqual(Object.entries(HAPPENED_CODES));
});
