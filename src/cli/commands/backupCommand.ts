// `ovenward backup` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { BackupRequest, Request } from '../request.ts';
import { storeOption } from './values.ts';

const HELP = `
The copy is one moment of the store, looked through before it takes the place of an earlier one. The service may run meanwhile.
To go back to it, stop the service and put the copy where the store is.

Examples:
  ovenward backup sunday.db
  ovenward backup /mnt/stick/ovenward.db --store /var/lib/ovenward/ovenward.db

Exit codes: 0 copied; 2 not copied: bad usage, no store, one that finds a fault in itself, or a place that cannot be
written; 3 not copied: a fault of ovenward.`;

export function backupCommand(onRequest: (request: Request) => void): Command {
  return new Command('backup')
    .summary('copy the store')
    .description('Copies the store of the service to a file, while the service runs.')
    .argument('<file>', 'file to write')
    .addOption(storeOption())
    .addHelpText('after', HELP)
    .action((file: string, options: Omit<BackupRequest, 'do' | 'file'>) => onRequest({ do: 'backup', file, ...options }));
}
