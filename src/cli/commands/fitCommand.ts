// `ovenward fit` on the command line: its arguments, options and help.
import { Command, InvalidArgumentError } from 'commander';
import { CLOCK_PATTERN, ID_PATTERN } from '../../model/units.ts';
import type { FitRequest, Request } from '../request.ts';
import { seconds, seed, wholeFrom, workers } from './values.ts';

const MOST_PIECES = 1_000_000;

const HELP = `
The day is planned without the addition, then with it from that plan: whether it fits, what it costs the rest, how many pieces
would fit at most, by when it can be ready, and what would make it fit when it does not. What was proved is told apart from what was
only not found; more seconds find and prove more. Ctrl-C ends it with what is there.

Examples:
  ovenward fit saturday.yaml --add cheese-straw=36@07:30
  ovenward fit saturday.yaml --add rye=12@06:30 --add cheese-straw=36@07:30 --from saturday/plan.json
  ovenward fit saturday.yaml --product new-bread.yaml --seconds 30

Exit codes: 0 it fits; 1 it does not, or was not found to; 2 bad input or usage; 3 a fault of ovenward.`;

type Added = FitRequest['add'][number];

function order(text: string, before: readonly Added[] = []): readonly Added[] {
  const [, product = '', pieces = '', readyBy = ''] = /^([^=@]*)=([^=@]*)@(.*)$/.exec(text) ?? [];
  if (!ID_PATTERN.test(product)) throw new InvalidArgumentError('Write a product, pieces and a time: cheese-straw=36@07:30.');
  if (!/^\d{1,7}$/.test(pieces) || Number(pieces) < 1 || Number(pieces) > MOST_PIECES)
    throw new InvalidArgumentError(`Pieces are a whole number from 1 to ${MOST_PIECES}: cheese-straw=36@07:30.`);
  if (!CLOCK_PATTERN.test(readyBy))
    throw new InvalidArgumentError(
      'The time is one such as 07:30, or "-1d 23:10" for the evening before: cheese-straw=36@07:30.',
    );
  return [...before, { product, pieces: Number(pieces), readyBy }];
}

type Options = Omit<FitRequest, 'do' | 'file' | 'json' | 'add'> & { readonly add?: readonly Added[]; readonly json?: true };

export function fitCommand(onRequest: (request: Request) => void): Command {
  return new Command('fit')
    .summary('ask whether more fits a day')
    .description('Tells whether an order more, or a new product, fits a day, and what it costs the rest.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .option('--add <order>', 'order of a product of the day, as cheese-straw=36@07:30; may be given several times', order)
    .option('--product <file>', 'doughs, products and orders to add, in YAML or JSON')
    .option('--from <plan>', 'plan of the scenario, to which is added; without it the day is planned first')
    .option('--json', 'print the answer as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command; 3 when nothing is given', seconds)
    .option('--effort <n>', 'rounds of search for each plan and each question; alone, no time limit', wholeFrom(1))
    .addOption(seed())
    .addOption(workers())
    .addHelpText('after', HELP)
    .action((file: string, options: Options, command: Command) => {
      const { add = [], json, ...rest } = options;
      if (add.length === 0 && rest.product === undefined) command.error('error: give --add or --product, or both');
      onRequest({ do: 'fit', file, add, ...rest, json: json === true });
    });
}
