// `ovenward serve` on the command line: its options and help. What the options say is read later, together with the environment.
import { Command, Option } from 'commander';
import type { Request } from '../request.ts';
import { SERVE_SETTINGS } from '../settings/serveSettings.ts';
import type { Setting } from '../settings/setting.ts';

const HELP = `
Plans, asks, keeps and posts over HTTP until Ctrl-C or SIGTERM; what runs then ends with its best plan so far. Each setting is
a flag or a variable of the environment; a flag wins. The token has no flag, as arguments are seen by everybody on the machine.

Examples:
  ovenward serve
  ovenward serve --port 9000 --store bakery.db
  OVENWARD_TOKEN_FILE=token.txt ovenward serve --host 192.168.1.20
  ovenward serve --host 192.168.1.20 --open-to-anyone

Exit codes: 0 stopped when asked to; 2 bad settings, or the address or the store is not to be had; 3 a fault of ovenward.`;

type Shown = Pick<Setting<unknown>, 'flag' | 'variable' | 'says' | 'usually'>;

const SETTINGS: readonly Shown[] = Object.values(SERVE_SETTINGS);

function optionOf(flag: string, { says, variable, usually }: Shown): Option {
  return new Option(flag, `${says} [${variable}, usually ${usually}]`);
}

export function serveCommand(onRequest: (request: Request) => void): Command {
  const command = new Command('serve')
    .summary('answer requests over HTTP')
    .description('Plans, asks, keeps and posts over HTTP, for this machine or the bakery.');
  const options = SETTINGS.flatMap((setting) =>
    setting.flag === null ? [] : [{ variable: setting.variable, option: optionOf(setting.flag, setting) }],
  );
  for (const { option } of options) command.addOption(option);
  return command
    .option('--open-to-anyone', 'needed with an address that other machines reach and no token')
    .addHelpText('after', HELP)
    .action((given: Readonly<Record<string, unknown>>) => {
      const flags: Record<string, string> = {};
      for (const { variable, option } of options) {
        const text = given[option.attributeName()];
        if (typeof text === 'string') flags[variable] = text;
      }
      onRequest({ do: 'serve', flags, openToAnyone: given.openToAnyone === true });
    });
}
