// `ovenward post` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { PostRequest, Request } from '../request.ts';
import { out, seconds, seed, storeOption, svg, wholeFrom, workers } from './values.ts';

const HELP = `
The day is planned as by "ovenward plan", and posted for the date of the scenario, with trays late or left out as well: it is the
plan there is. When anything fails, the sheet and the posted plan are as they were. Meant for a line of cron.

Examples:
  ovenward post saturday.yaml
  ovenward post saturday.yaml --svg wall/sheet.svg --seconds 60
  ovenward post saturday.yaml --url http://127.0.0.1:8430

Exit codes: 0 posted, every tray on time; 1 posted, a tray is late or left out; 2 not posted: bad input or usage, nothing could be
planned, somebody else posted meanwhile, or the store, the service or a place to write is not to be had; 3 not posted: a fault of
ovenward.`;

type Options = Omit<PostRequest, 'do' | 'file'>;

export function postCommand(onRequest: (request: Request) => void): Command {
  return new Command('post')
    .summary('plan a day and post its plan')
    .description('Plans the day of a scenario and posts the plan: in the store of the service, and as a sheet.')
    .argument('<file>', 'scenario in YAML or JSON; - reads standard input')
    .addOption(storeOption())
    .option('--url <url>', 'post through the service that answers there, instead of into a file [OVENWARD_URL]')
    .option('--token-file <file>', 'file with the token of that service [OVENWARD_TOKEN_FILE, or the token in OVENWARD_TOKEN]')
    .addOption(out())
    .addOption(svg())
    .option('--seconds <n>', 'time limit from the start of the command to its last file', seconds)
    .option('--effort <n>', 'rounds of search', wholeFrom(1))
    .addOption(seed())
    .addOption(workers())
    .addHelpText('after', HELP)
    .action((file: string, options: Options, command: Command) => {
      if (options.url !== undefined && options.store !== undefined) command.error('error: give --store or --url, and not both');
      onRequest({ do: 'post', file, ...options });
    });
}
