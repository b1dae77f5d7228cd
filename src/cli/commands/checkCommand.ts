// `ovenward check` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { Request } from '../request.ts';

const HELP = `
The plan may be one of ours or written by hand. Every rule it breaks is named, with the minute and what to do.

Examples:
  ovenward check saturday.yaml saturday/plan.json
  ovenward check saturday.yaml byhand.json --json

Exit codes: 0 no breach; 1 the plan breaks a rule; 2 bad input or usage; 3 a fault of ovenward.`;

export function checkCommand(onRequest: (request: Request) => void): Command {
  return new Command('check')
    .summary('judge a plan')
    .description('Judges a plan against its scenario by every rule and recounts its figures.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .argument('<plan>', 'plan in JSON or YAML; - reads standard input')
    .option('--json', 'print breaches and figures as JSON on standard output; all else goes to standard error')
    .addHelpText('after', HELP)
    .action((file: string, plan: string, options: { json?: true }) =>
      onRequest({ do: 'check', file, plan, json: options.json === true }),
    );
}
