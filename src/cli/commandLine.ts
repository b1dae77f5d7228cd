// The command line: commands, arguments and options in, a request out. Help and usage errors are written on the way.
import { isIP } from 'node:net';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { isLoopback } from '../api/loopback.ts';
import { CHECK_HELP, DRAW_HELP, OVENWARD_HELP, PLAN_HELP, SERVE_HELP } from './commandHelp.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import type { DrawRequest, PlanRequest, Request, ServeRequest } from './request.ts';
import type { Surroundings } from './surroundings.ts';

/** The longest search one may ask for: a day. */
const MAX_SECONDS = 86_400;
const MAX_WHOLE = 2 ** 31 - 1;
const MAX_PORT = 65_535;

function seconds(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && value > 0 && value <= MAX_SECONDS) return value;
  throw new InvalidArgumentError(`Seconds are a number above 0 and at most ${MAX_SECONDS}.`);
}

function wholeFrom(least: number, most = MAX_WHOLE): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`It is a whole number from ${least} to ${most}.`);
  };
}

function address(text: string): string {
  if (isIP(text) !== 0) return text;
  throw new InvalidArgumentError('It is an IP address, such as 127.0.0.1.');
}

const out = () => new Option('--out <dir>', 'folder to write to; made when missing');
const svg = () => new Option('--svg <file>', 'file for the sheet; further pages are numbered');

function planCommand(onRequest: (request: Request) => void): Command {
  return new Command('plan')
    .summary('plan a day')
    .description('Plans the day of a scenario: every step with its time, place and person, and how good the plan is.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .addOption(out())
    .addOption(svg())
    .option('--json', 'print the plan as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command to its last file', seconds)
    .option('--effort <n>', 'rounds of search', wholeFrom(1))
    .option('--seed <n>', 'seed of the search', wholeFrom(0))
    .option('--workers <n>', 'threads that search, 1 or 2; as many as there are processors when not given', wholeFrom(1, 2))
    .option('--from <plan>', 'plan of the same scenario to start from; what comes out never costs more')
    .addHelpText('after', PLAN_HELP)
    .action((file: string, options: Omit<PlanRequest, 'do' | 'file' | 'json'> & { json?: true }) =>
      onRequest({ do: 'plan', file, ...options, json: options.json === true }),
    );
}

function checkCommand(onRequest: (request: Request) => void): Command {
  return new Command('check')
    .summary('judge a plan')
    .description('Judges a plan against its scenario by every rule and recounts its figures.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .argument('<plan>', 'plan in JSON or YAML; - reads standard input')
    .option('--json', 'print breaches and figures as JSON on standard output; all else goes to standard error')
    .addHelpText('after', CHECK_HELP)
    .action((file: string, plan: string, options: { json?: true }) =>
      onRequest({ do: 'check', file, plan, json: options.json === true }),
    );
}

function drawCommand(onRequest: (request: Request) => void): Command {
  return new Command('draw')
    .summary('draw a plan')
    .description('Draws the sheet of a plan to post on the wall, as SVG.')
    .argument('<plan>', 'plan.json written by ovenward; - reads standard input')
    .addOption(out())
    .addOption(svg())
    .addHelpText('after', DRAW_HELP)
    .action((plan: string, options: Omit<DrawRequest, 'do' | 'plan'>) => onRequest({ do: 'draw', plan, ...options }));
}

function serveCommand(onRequest: (request: Request) => void): Command {
  return new Command('serve')
    .summary('answer requests over HTTP')
    .description('Plans and judges over HTTP, for other programs on this machine.')
    .option('--port <n>', 'port to listen on; 0 takes any free one', wholeFrom(0, MAX_PORT))
    .option('--host <address>', 'address to listen on, when it is not 127.0.0.1', address)
    .option('--open-to-anyone', 'needed with an address that other machines reach')
    .addHelpText('after', SERVE_HELP)
    .action((options: Omit<ServeRequest, 'do' | 'openToAnyone'> & { openToAnyone?: true }, command: Command) => {
      const openToAnyone = options.openToAnyone === true;
      if (options.host !== undefined && !isLoopback(options.host) && !openToAnyone)
        command.error(
          `error: other machines may reach ${options.host}, and there is no password; add --open-to-anyone if you want that`,
        );
      onRequest({ do: 'serve', ...options, openToAnyone });
    });
}

function ovenward(version: string, onRequest: (request: Request) => void): Command {
  return new Command('ovenward')
    .description("Plans a small bakery's day: orders and bakehouse in, a plan that works out, and how good it is, out.")
    .version(version, '--version', 'print the version')
    .helpOption('--help', 'print this help')
    .helpCommand(false)
    .addCommand(planCommand(onRequest))
    .addCommand(checkCommand(onRequest))
    .addCommand(drawCommand(onRequest))
    .addCommand(serveCommand(onRequest))
    .addHelpText('after', OVENWARD_HELP);
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
  try {
    command.parse(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    const isAnswer = ['commander.helpDisplayed', 'commander.version'].includes(error.code);
    return isAnswer ? EXIT.fine : EXIT.badInput;
  }
  return request ?? EXIT.badInput;
}
