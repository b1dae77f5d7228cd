// `ovenward draw` on the command line: its arguments, options and help.
import { Command } from 'commander';
import type { DrawRequest, Request } from '../request.ts';
import { out, svg } from './values.ts';

const HELP = `
Pages after the first are numbered: sheet.svg, sheet-2.svg. Without --out and --svg they go to the folder you are in.

Examples:
  ovenward draw saturday/plan.json --out wall
  ovenward draw saturday/plan.json --svg wall/saturday.svg

Exit codes: 0 drawn; 2 bad input or usage; 3 a fault of ovenward.`;

export function drawCommand(onRequest: (request: Request) => void): Command {
  return new Command('draw')
    .summary('draw a plan')
    .description('Draws the sheet of a plan to post on the wall, as SVG.')
    .argument('<plan>', 'plan.json written by ovenward; - reads standard input')
    .addOption(out())
    .addOption(svg())
    .addHelpText('after', HELP)
    .action((plan: string, options: Omit<DrawRequest, 'do' | 'plan'>) => onRequest({ do: 'draw', plan, ...options }));
}
