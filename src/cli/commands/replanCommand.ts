// `ovenward replan` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { ReplanRequest, Request } from '../request.ts';
import { clockTime, out, seconds, seed, svg, wholeFrom, workers } from './values.ts';

const HELP = `
What has begun by --now stays as it is, what is decided stays, and the rest moves as little as it must. What is not told in
--happened is taken as done as planned. Without anything told the plan comes back as it is.

Examples:
  ovenward replan saturday.yaml saturday/plan.json --now 05:40 --happened slow-rye.yaml
  ovenward replan saturday.yaml saturday/plan.json --now 05:40 --happened slow-rye.yaml --out later
  ovenward check later/scenario.json later/plan.json
  ovenward replan later/scenario.json later/plan.json --now 06:20 --happened oven-down.yaml --out later-still

Exit codes: 0 every tray is planned and on time; 1 a tray is late or left out; 2 bad input or usage; 3 a fault of ovenward.`;

export function replanCommand(onRequest: (request: Request) => void): Command {
  return new Command('replan')
    .summary('plan the rest of a day anew')
    .description('Plans the rest of a day anew: a plan that is under way, what has happened so far, and what changes.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .argument('<plan>', 'plan.json of that scenario, written by ovenward; - reads standard input')
    .requiredOption('--now <time>', 'what the clock shows: 05:40; "-1d 23:10" is the evening before', clockTime)
    .option('--happened <file>', 'what has happened so far, in YAML or JSON; - reads standard input')
    .addOption(out())
    .addOption(svg())
    .option('--json', 'print the answer as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command to its last file; 5 when not given', seconds)
    .option('--effort <n>', 'rounds of search', wholeFrom(1))
    .addOption(seed())
    .addOption(workers())
    .addHelpText('after', HELP)
    .action((file: string, plan: string, options: Omit<ReplanRequest, 'do' | 'file' | 'plan' | 'json'> & { json?: true }) =>
      onRequest({ do: 'replan', file, plan, ...options, json: options.json === true }),
    );
}
