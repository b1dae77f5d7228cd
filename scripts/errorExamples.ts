// One spoiled scenario for every error code. docs/errors.md shows them, and tests/read sees that each gives its code.
import type { ErrorCode } from '../src/read/errorCodes.ts';

/** `shows` is what the docs show; `spoil` turns the whole scenario of docs/scenario.md into a wrong one. */
export type ErrorExample = { readonly code: ErrorCode; readonly shows: string } & (
  | { readonly spoil: (good: string) => string }
  | { readonly value: () => unknown }
);

/** The good scenario with one piece of its text replaced; the docs show the new piece. */
function instead(code: ErrorCode, from: string, to: string): ErrorExample {
  return {
    code,
    shows: to.trim(),
    spoil: (good) => {
      if (!good.includes(from)) throw new Error(`the example has no ${from}`);
      return good.replace(from, to);
    },
  };
}

/** The good scenario with something added at its end. */
function added(code: ErrorCode, text: string): ErrorExample {
  return { code, shows: text, spoil: (good) => `${good}\n${text}\n` };
}

function whole(code: ErrorCode, shows: string, text: () => string): ErrorExample {
  return { code, shows, spoil: text };
}

const OF_THE_TEXT: readonly ErrorExample[] = [
  whole('EMPTY', '# only a comment', () => '# only a comment\n'),
  { code: 'TOO_LARGE', shows: '# a file of 1.1 MB', spoil: (good) => `${good}# ${'x'.repeat(1_100_000)}\n` },
  { code: 'BINARY_TEXT', shows: '# a picture named .yaml', spoil: (good) => `\u0000\u0001PNG${good}` },
  instead('SYNTAX', 'day: { from: "-1d 20:00", until: "10:00" }', 'day: { from: "-1d 20:00", until: "10:00"'),
  added('SEVERAL_DOCUMENTS', '---\nscenario: 1'),
  added('TOO_DEEP', `notes: ${'['.repeat(40)}${']'.repeat(40)}`),
  added('TOO_MANY_VALUES', `a: &a [${'1,'.repeat(999)}1]\nb: [${'*a,'.repeat(249)}*a]`),
  instead('ALIAS_UNKNOWN', 'name: Harbour loaf', 'name: *loaf'),
  added('ALIAS_LOOP', 'notes: &notes [*notes]'),
  instead('TAG_REFUSED', 'name: Harbour loaf', 'name: !!js/function "loaf"'),
  instead('DUPLICATE_KEY', 'timeZone: Europe/Lisbon', 'timeZone: Europe/Lisbon\ntimeZone: Europe/Madrid'),
  instead('FORBIDDEN_KEY', 'flour: 100', '__proto__: 100'),
  instead('NOT_A_NUMBER', 'bowlKg: 20', 'bowlKg: .inf'),
  { code: 'NOT_PLAIN', shows: '# only a program can send this, never a file', value: () => ({ scenario: 1n }) },
  whole('NOT_AN_OBJECT', '- scenario: 1', () => '- scenario: 1\n'),
  {
    code: 'TOO_MANY_ERRORS',
    shows: '# more than 200 errors',
    spoil: (good) => `${good}\n${Array.from({ length: 300 }, (_, index) => `note${index}: 1`).join('\n')}\n`,
  },
];

const OF_A_VALUE: readonly ErrorExample[] = [
  instead('MISSING', 'date: 2026-05-16\n', '# no date\n'),
  instead('UNKNOWN_KEY', 'pieceG: 850', 'peiceG: 850'),
  instead('WRONG_TYPE', 'bowlKg: 20', 'bowlKg: "20"'),
  instead('NOT_WHOLE', 'minutes: 12, handsOn: 4', 'minutes: 12.5, handsOn: 4'),
  instead('OUT_OF_BOUNDS', 'minutes: 40 }', 'minutes: 5000 }'),
  instead('WRONG_COUNT', 'doughs:\n', 'doughs: []\nnotes:\n'),
  instead('BAD_RANGE', 'minutes: [70, 95]', 'minutes: 70 to 95'),
  instead('RANGE_UPSIDE_DOWN', 'minutes: [70, 95]', 'minutes: [95, 70]'),
  instead('BAD_TIME', 'readyBy: "07:00"', 'readyBy: 7:00'),
  instead('BAD_DATE', 'date: 2026-05-16', 'date: 2026-02-30'),
  instead('BAD_ID', 'id: spiral', 'id: my mixer'),
  instead('BAD_TEXT', 'name: Orange bun', 'name: ""'),
  instead('BAD_VERSION', 'scenario: 1', 'scenario: 2'),
  instead('UNKNOWN_WORD', 'aim: start-late', 'aim: start-lat'),
  instead('UNKNOWN_STEP', 'do: retard,', 'do: retrad,'),
];

const OF_THE_DAY: readonly ErrorExample[] = [
  instead('UNKNOWN_TIME_ZONE', 'Europe/Lisbon', 'Europe/Lisboa'),
  instead('DAY_UPSIDE_DOWN', '{ from: "-1d 20:00", until: "10:00" }', '{ from: "10:00", until: "03:00" }'),
  instead('DAY_TOO_LONG', '{ from: "-1d 20:00", until: "10:00" }', '{ from: "-3d 20:00", until: "+1d 10:00" }'),
  {
    code: 'TIME_SKIPPED',
    shows: 'date: 2026-03-29 # the clocks go forward at 01:00\npeople:\n  - { id: ines, from: "01:30", until: "10:00" }',
    spoil: (good) => good.replace('2026-05-16', '2026-03-29').replace('ines, from: "03:00"', 'ines, from: "01:30"'),
  },
  instead('HOURS_UPSIDE_DOWN', 'from: "03:00", until: "10:00"', 'from: "10:00", until: "03:00"'),
  instead('BREAK_UPSIDE_DOWN', '{ from: "06:30", until: "06:50" }', '{ from: "06:50", until: "06:30" }'),
  instead('PERSON_OFF_ALL_DAY', 'from: "03:00", until: "10:00"', 'from: "11:00", until: "17:00"'),
  instead('ORDER_OUTSIDE_DAY', 'readyBy: "09:00"', 'readyBy: "11:00"'),
  instead('DAY_TOO_SHORT', '{ from: "-1d 20:00", until: "10:00" }', '{ from: "03:00", until: "10:00" }'),
];

const OF_THE_BAKEHOUSE: readonly ErrorExample[] = [
  instead('DUPLICATE_ID', 'id: lower', 'id: upper'),
  instead('UNKNOWN_DOUGH', 'dough: country', 'dough: contry'),
  instead('UNKNOWN_PRODUCT', 'product: harbour-loaf', 'product: harbor-loaf'),
  instead('DECK_LIMITS_UPSIDE_DOWN', 'trays: 2, maxC: 260', 'trays: 2, minC: 300, maxC: 260'),
  instead('DECK_STARTS_TOO_HOT', 'trays: 2, maxC: 260', 'trays: 2, maxC: 260, startsAtC: 280'),
  instead('NO_DECK_FITS', 'temperatureC: [235, 245]', 'temperatureC: [285, 290]'),
  instead('NO_PROOFER_FITS', 'temperatureC: [27, 32]', 'temperatureC: [35, 38]'),
  instead('NO_RETARDER_FITS', 'shelves: 6, traysPerShelf: 2', 'shelves: 0, traysPerShelf: 2'),
  instead('NO_MIXER', 'mixers:\n    - { id: spiral, bowlKg: 20 }', 'mixers: []'),
  instead('NO_BATCH_FITS', 'pieceG: 850', 'pieceG: 8500'),
  instead('FLOUR_NOT_100', 'flour: 100, milk: 48', 'flour: 500, milk: 240'),
  instead('HANDS_ON_TOO_LONG', 'minutes: 12, handsOn: 4', 'minutes: 12, handsOn: 14'),
  instead('NOBODY_CAN', 'people:\n', 'people:\n  - { id: rui, from: "03:00", until: "10:00", cannot: [bake] }\npersonnel:\n'),
  instead('NO_STRETCH_LONG_ENOUGH', 'minutesPerTray: 11', 'minutesPerTray: 900'),
  instead('TOO_MANY_TRAYS', 'pieces: 18', 'pieces: 18000'),
];

/** The good scenario with a day under way added to it, wrong in what stands here. */
function underway(code: ErrorCode, rest: string): ErrorExample {
  return added(code, `underway:\n  ${rest.split('\n').join('\n  ')}`);
}

const BUNS = 'batches: [{ id: buns, dough: orange, trays: [{ id: bun-1, product: orange-bun }] }]';
const NOTHING_ELSE = 'batches: []\ntasks: []\ndecks: []';

const OF_A_DAY_UNDER_WAY: readonly ErrorExample[] = [
  underway('NOW_OUTSIDE_DAY', `now: 900\n${NOTHING_ELSE}`),
  underway(
    'UNKNOWN_PERSON',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: ended, start: 10, end: 24,` +
      '\n      place: { kind: bowl, id: spiral, position: 1 }, handsOn: [{ person: inez, for: mix, start: 10, end: 15 }] }',
  ),
  underway('UNKNOWN_PLACE', `now: 300\n${NOTHING_ELSE}\nout: [{ kind: deck, id: stone/uper, from: 300, until: 400 }]`),
  underway(
    'WRONG_PLACE',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: bulk, state: begun, start: 24, end: 444 }`,
  ),
  underway(
    'TRAY_OF_ANOTHER_DOUGH',
    'now: 300\nbatches: [{ id: buns, dough: orange, trays: [{ id: loaf-1, product: harbour-loaf }] }]\ntasks: []\ndecks: []',
  ),
  underway(
    'TRAYS_NOT_ORDERED',
    'now: 300\nbatches:\n  - id: buns\n    dough: orange\n    trays: [' +
      `${[1, 2, 3, 4].map((tray) => `{ id: bun-${tray}, product: orange-bun }`).join(', ')}]\ntasks: []\ndecks: []`,
  ),
  underway(
    'NOT_UNDER_WAY',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, tray: bun-2, step: shape, state: planned, start: 450, end: 461 }`,
  ),
  underway(
    'STEP_NOT_THERE',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, tray: bun-1, step: cool, state: planned, start: 600, end: 620 }`,
  ),
  underway(
    'STEP_TWICE',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: ended, start: 10, end: 24 }` +
      '\n  - { batch: buns, step: mix, state: planned, start: 310, end: 324 }',
  ),
  underway(
    'STEP_NOT_TOLD',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: ended, start: 10, end: 24 }`,
  ),
  underway(
    'STEP_UPSIDE_DOWN',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: ended, start: 24, end: 10 }`,
  ),
  underway(
    'STATE_AND_NOW',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: ended, start: 290, end: 304 }`,
  ),
  underway(
    'STATES_OUT_OF_ORDER',
    `now: 300\n${BUNS}\ndecks: []\ntasks:\n  - { batch: buns, step: mix, state: planned, start: 310, end: 324 }` +
      '\n  - { batch: buns, step: bulk, state: begun, start: 24, end: 444 }',
  ),
  underway(
    'MOVE_OUT_OF_ORDER',
    'now: 300\nbatches: []\ntasks: []\ndecks:\n  - { id: stone/upper, setPoints: [{ start: 310, end: 360, fromC: 20, toC: 220 }] }',
  ),
  underway('OUT_UPSIDE_DOWN', `now: 300\n${NOTHING_ELSE}\nout: [{ kind: deck, id: stone/upper, from: 400, until: 300 }]`),
];

export const ERROR_EXAMPLES: readonly ErrorExample[] = [
  ...OF_THE_TEXT,
  ...OF_A_VALUE,
  ...OF_THE_DAY,
  ...OF_THE_BAKEHOUSE,
  ...OF_A_DAY_UNDER_WAY,
];
