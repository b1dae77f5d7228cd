// `ovenward plan` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { PlanRequest, Request } from '../request.ts';
import { out, seconds, seed, svg, wholeFrom, workers } from './values.ts';

const HELP = `
Without --seconds and --effort the search ends after its usual effort or 10 seconds, whichever comes first. With --effort
alone, the same scenario, seed and effort give the same plan on every machine. Ctrl-C ends the search and takes the best
plan so far; a second Ctrl-C quits without one.

Examples:
  ovenward plan saturday.yaml                      what is ready when, on one screen
  ovenward plan saturday.yaml --out saturday       also plan.json and sheet.svg in the folder saturday
  ovenward plan saturday.yaml --seconds 60         search for a minute
  ovenward plan saturday.yaml --how-sure           also the chance that each order is ready on time
  ovenward plan - --json < saturday.yaml           the plan as JSON on standard output, nothing else there

Exit codes: 0 every tray is planned and on time; 1 a tray is late or left out; 2 bad input or usage; 3 a fault of ovenward.`;

export function planCommand(onRequest: (request: Request) => void): Command {
  return new Command('plan')
    .summary('plan a day')
    .description('Plans the day of a scenario: every step with its time, place and person, and how good the plan is.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .addOption(out())
    .addOption(svg())
    .option('--json', 'print the plan as JSON on standard output; all else goes to standard error')
    .option('--seconds <n>', 'time limit from the start of the command to its last file', seconds)
    .option('--effort <n>', 'rounds of search', wholeFrom(1))
    .addOption(seed())
    .addOption(workers())
    .option('--from <plan>', 'plan of the same scenario to start from; what comes out never costs more')
    .option('--how-sure', 'tell how sure the plan is: its day gone through 10,000 times with other minutes each morning')
    .option('--careful', 'plan with the minutes that are enough in four mornings of five')
    .addHelpText('after', HELP)
    .action((file: string, options: Omit<PlanRequest, 'do' | 'file' | 'json'> & { json?: true }) =>
      onRequest({ do: 'plan', file, ...options, json: options.json === true }),
    );
}
