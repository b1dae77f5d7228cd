// Codes of what can be wrong with a file of what has happened, beside those of every input. docs/replan.md lists them.

export const HAPPENED_CODES = {
  NAMES_NONE: 'An event or a decision names nothing it is about.',
  NAMES_SEVERAL: 'An event or a decision names more than one thing it is about.',
  UNKNOWN_TASK: 'A task the plan does not have.',
  UNKNOWN_TRAY: 'A tray the plan does not have.',
  UNKNOWN_BATCH: 'A batch the plan does not have.',
  UNKNOWN_PERSON: 'A person the scenario does not have.',
  UNKNOWN_PLACE: 'A deck, proofer, retarder or mixer the scenario does not have.',
  NO_SUCH_ORDER: 'The scenario has no order of that product for that time.',
  NO_ORDER_LEFT: 'After the cancellations no order is left.',
  NOTHING_CHANGED: 'A changed order says neither other pieces nor another time.',
  AFTER_NOW: 'What is said to have happened lies after now.',
  TOLD_TWICE: 'Two events say the same, or the opposite, of one task or tray.',
  SPAN_UPSIDE_DOWN: 'An absence or an outage ends before it begins.',
  TIME_OUTSIDE_DAY: 'A time lies outside the day.',
  RESTS_UNTIL_NEXT: 'A step that rests, proofs or cools ends when the next step begins.',
  NOT_BEGUN_BEFORE: 'A task cannot have begun, or ended, because the one before it, or it itself, had not begun.',
  ALREADY_BUSY: 'A task cannot have begun then: its person was at other work.',
  ALREADY_FULL: 'A task cannot have begun then: its place was full.',
  NOTHING_TO_WAIT_FOR: 'A dough is said to need more time, and nothing of it is in bulk, at rest or proofing, or still to be.',
} as const;

export type HappenedCode = keyof typeof HAPPENED_CODES;
