// `ovenward serve` on the command line: its arguments, options and help.
import { Command } from 'commander';
import { isLoopback } from '../../api/loopback.ts';
import type { Request, ServeRequest } from '../request.ts';
import { address, wholeFrom } from './values.ts';

const MAX_PORT = 65_535;

const HELP = `
Answers requests for plans and verdicts until Ctrl-C or SIGTERM; the search that runs then ends with its best plan so far.
There is no password: whoever reaches the address may use it. Without --host only this machine does.

Examples:
  ovenward serve
  ovenward serve --port 9000
  ovenward serve --host 192.168.1.20 --open-to-anyone

Exit codes: 0 stopped when asked to; 2 bad usage, or the address is not to be had; 3 a fault of ovenward.`;

export function serveCommand(onRequest: (request: Request) => void): Command {
  return new Command('serve')
    .summary('answer requests over HTTP')
    .description('Plans and judges over HTTP, for other programs on this machine.')
    .option('--port <n>', 'port to listen on; 0 takes any free one', wholeFrom(0, MAX_PORT))
    .option('--host <address>', 'address to listen on, when it is not 127.0.0.1', address)
    .option('--open-to-anyone', 'needed with an address that other machines reach')
    .addHelpText('after', HELP)
    .action((options: Omit<ServeRequest, 'do' | 'openToAnyone'> & { openToAnyone?: true }, command: Command) => {
      const openToAnyone = options.openToAnyone === true;
      if (options.host !== undefined && !isLoopback(options.host) && !openToAnyone)
        command.error(
          `error: other machines may reach ${options.host}, and there is no password; add --open-to-anyone if you want that`,
        );
      onRequest({ do: 'serve', ...options, openToAnyone });
    });
}
