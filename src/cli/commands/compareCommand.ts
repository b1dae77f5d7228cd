// `ovenward compare` on the command line: its arguments, options and help.
import { Command, InvalidArgumentError } from 'commander';
import type { CompareRequest, Request } from '../request.ts';
import { out, seconds, seed, wholeFrom, workers } from './values.ts';

/** Most values of a sweep. */
const MOST_VALUES = 100;

const HELP = `
Each change has a title and a JSON Patch (RFC 6902) on the scenario; a sweep sets one number of it, named by a JSON Pointer
(RFC 6901), to each value of a range. Every day is planned from the plan of the day as it is, and asked how many trays it
would take with all of them ready on time. Ctrl-C ends it with what is there.

Examples:
  ovenward compare saturday.yaml --changes ideas.yaml
  ovenward compare saturday.yaml --sweep /equipment/proofers/0/shelves=4..20
  ovenward compare saturday.yaml --sweep /equipment/proofers/0/shelves=4..20/2 --svg shelves.svg

Exit codes: 0 every tray is planned and on time on every day; 1 a tray is late or left out on one of them, or one was not reached
in the time; 2 bad input or usage; 3 a fault of ovenward.`;

function sweep(text: string): NonNullable<CompareRequest['sweep']> {
  const [, pointer = '', from = '', to = '', step = '1'] = /^(.*)=(-?\d{1,9})\.\.(-?\d{1,9})(?:\/(\d{1,9}))?$/.exec(text) ?? [];
  const range = { pointer, from: Number(from), to: Number(to), step: Number(step) };
  if (!pointer.startsWith('/')) throw new InvalidArgumentError('Write a place and a range: /equipment/proofers/0/shelves=4..20.');
  if (range.to <= range.from || range.step < 1)
    throw new InvalidArgumentError('The range rises, in whole steps of at least 1: 4..20, or 4..20/2.');
  if ((range.to - range.from) / range.step >= MOST_VALUES)
    throw new InvalidArgumentError(`It has at most ${MOST_VALUES} values.`);
  return range;
}

type Options = Omit<CompareRequest, 'do' | 'file' | 'json'> & { readonly json?: true };

export function compareCommand(onRequest: (request: Request) => void): Command {
  return new Command('compare')
    .summary('compare changes to a day')
    .description('Compares a day with itself under changes: another proofer, other hours, more shelves; and says what is proved.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .option('--changes <file>', 'changes in YAML or JSON, each a title and a JSON Patch')
    .option('--sweep <range>', 'one number of the scenario and its values, as /equipment/proofers/0/shelves=4..20', sweep)
    .option('--more-of <product>', "product whose trays are added to see how many fit; without it the day's mix is")
    .addOption(out())
    .option('--svg <file>', 'file for the picture; further pages are numbered')
    .option('--json', 'print the comparison as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command to its last file; 15 when nothing is given', seconds)
    .option('--effort <n>', 'rounds of search for each plan, and for each number of trays tried', wholeFrom(1))
    .addOption(seed())
    .addOption(workers())
    .addHelpText('after', HELP)
    .action((file: string, options: Options, command: Command) => {
      if ((options.changes === undefined) === (options.sweep === undefined))
        command.error('error: give --changes or --sweep, and not both');
      onRequest({ do: 'compare', file, ...options, json: options.json === true });
    });
}
