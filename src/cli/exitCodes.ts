// What the command's exit code says. What each command means by it is in its help (commands/) and in docs/commands.md.

export const EXIT = {
  /** What was asked for is done, and all is well with it. */
  fine: 0,
  /** It is done, and all is not well: some tray is late or left out or does not fit, or the plan breaks a rule. */
  notFine: 1,
  /** The command line, an input, or a file to read or write is wrong. */
  badInput: 2,
  /** A fault of ours. */
  ourFault: 3,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
