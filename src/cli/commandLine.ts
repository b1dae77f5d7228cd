// The command line: commands, arguments and options in, a request out. Help and usage errors are written on the way.
import { Command, CommanderError } from 'commander';
import { backupCommand } from './commands/backupCommand.ts';
import { checkCommand } from './commands/checkCommand.ts';
import { compareCommand } from './commands/compareCommand.ts';
import { drawCommand } from './commands/drawCommand.ts';
import { fitCommand } from './commands/fitCommand.ts';
import { planCommand } from './commands/planCommand.ts';
import { postCommand } from './commands/postCommand.ts';
import { replanCommand } from './commands/replanCommand.ts';
import { serveCommand } from './commands/serveCommand.ts';
import { whyCommand } from './commands/whyCommand.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import type { Request } from './request.ts';
import type { Surroundings } from './surroundings.ts';
import { tellWrongValuesAtOnce } from './wrongValues.ts';

const HELP = `
Examples:
  ovenward plan saturday.yaml --out saturday
  ovenward replan saturday.yaml saturday/plan.json --now 05:40 --happened slow-rye.yaml
  ovenward check saturday.yaml saturday/plan.json
  ovenward why saturday.yaml saturday/plan.json
  ovenward fit saturday.yaml --add cheese-straw=36@07:30
  ovenward compare saturday.yaml --changes ideas.yaml
  ovenward draw saturday/plan.json --svg wall.svg
  ovenward serve
  ovenward post saturday.yaml --svg wall/saturday.svg
  ovenward backup sunday.db

Exit codes: 0 fine; 1 a tray is late or left out, does not fit, or the plan breaks a rule; 2 bad input or usage; 3 a fault of ovenward.`;

function ovenward(version: string, onRequest: (request: Request) => void): Command {
  return new Command('ovenward')
    .description("Plans a small bakery's day: orders and bakehouse in, a plan that works out, and how good it is, out.")
    .version(version, '--version', 'print the version')
    .helpOption('--help', 'print this help')
    .helpCommand(false)
    .addCommand(planCommand(onRequest))
    .addCommand(replanCommand(onRequest))
    .addCommand(checkCommand(onRequest))
    .addCommand(whyCommand(onRequest))
    .addCommand(fitCommand(onRequest))
    .addCommand(compareCommand(onRequest))
    .addCommand(drawCommand(onRequest))
    .addCommand(serveCommand(onRequest))
    .addCommand(postCommand(onRequest))
    .addCommand(backupCommand(onRequest))
    .addHelpText('after', HELP);
}

/** Hands over how commander ends and writes to every command; it does not pass that on by itself. */
function settle(command: Command, { out, err }: Pick<Surroundings, 'out' | 'err'>): void {
  for (const each of [command, ...command.commands])
    each
      .exitOverride()
      .helpOption('--help', 'print this help')
      .showHelpAfterError('(add --help for how to use it)')
      .configureHelp({ helpWidth: 100 })
      .configureOutput({ writeOut: out.write, writeErr: err.write });
}

/** The request, or the exit code when help, the version or a usage error was written instead. */
export function commandLine(
  words: readonly string[],
  version: string,
  streams: Pick<Surroundings, 'out' | 'err'>,
): Request | ExitCode {
  let request: Request | undefined;
  const command = ovenward(version, (asked) => {
    request = asked;
  });
  settle(command, streams);
  tellWrongValuesAtOnce(command);
  try {
    command.parse(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    const isAnswer = ['commander.helpDisplayed', 'commander.version'].includes(error.code);
    return isAnswer ? EXIT.fine : EXIT.badInput;
  }
  return request ?? EXIT.badInput;
}
