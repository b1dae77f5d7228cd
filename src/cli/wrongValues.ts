// Wrong values of options, gathered until the whole command line is read: whoever mistyped three is told of three. By itself commander
// ends at the first. Used by commandLine.ts.
import { type Command, InvalidArgumentError } from 'commander';

/** Gathers the wrong values of all options of a command, and tells them before whatever else is wrong and before anything is done. */
export function tellWrongValuesAtOnce(command: Command): void {
  const wrong: string[] = [];
  const all = [command, ...command.commands];
  for (const option of all.flatMap(({ options }) => options)) {
    const { flags, parseArg } = option;
    if (parseArg === undefined) continue;
    option.argParser((text: string, before: unknown) => {
      try {
        return parseArg(text, before);
      } catch (error) {
        if (!(error instanceof InvalidArgumentError)) throw error;
        wrong.push(`error: option '${flags}' argument '${text}' is invalid. ${error.message}\n`);
        return before;
      }
    });
  }
  const told = (): string => wrong.splice(0).join('');
  for (const each of all) each.configureOutput({ outputError: (text, write) => write(told() + text) });
  command.hook('preAction', (_, asked) => {
    if (wrong.length > 0) asked.error(told().trimEnd());
  });
}
