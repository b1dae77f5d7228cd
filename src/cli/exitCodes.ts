// What the command's exit code says. Documented in docs/commands.md.

export const EXIT = {
  /** plan: every tray is planned and on time. check: no breach. draw: drawn. serve: stopped when asked to. */
  fine: 0,
  /** plan: some tray is late or left out. check: the plan breaks a rule. */
  notFine: 1,
  /** The command line, an input, or a file to read or write is wrong. */
  badInput: 2,
  /** A fault of ours. */
  ourFault: 3,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
