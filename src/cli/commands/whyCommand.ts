// `ovenward why` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { Request, WhyRequest } from '../request.ts';
import { seconds, seed, wholeFrom } from './values.ts';

const HELP = `
Reasons are read off the plan: what is in a tray's way at each place, with the rest of the plan as it stands. What clashes, and
what would make the trays fit, is found by planning again, within the limits. A plan that breaks a rule is told so and explained no further.

Examples:
  ovenward why saturday.yaml saturday/plan.json
  ovenward why saturday.yaml saturday/plan.json --seconds 60

Exit codes: 0 every tray is on time; 1 a tray is late or left out, or the plan breaks a rule; 2 bad input or usage; 3 a fault of
ovenward.`;

type Options = Omit<WhyRequest, 'do' | 'file' | 'plan' | 'json'> & { readonly json?: true };

export function whyCommand(onRequest: (request: Request) => void): Command {
  return new Command('why')
    .summary('say why trays are late or left out')
    .description('Says why trays are late or left out, what is full when, and which orders and limits clash.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .argument('<plan>', 'plan in JSON or YAML; - reads standard input')
    .option('--json', 'print the reasons as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command to its last word; 20 when nothing is given', seconds)
    .option('--effort <n>', 'rounds to find what clashes, and for each question whether a change would do', wholeFrom(1))
    .addOption(seed())
    .addHelpText('after', HELP)
    .action((file: string, plan: string, options: Options) =>
      onRequest({ do: 'why', file, plan, ...options, json: options.json === true }),
    );
}
