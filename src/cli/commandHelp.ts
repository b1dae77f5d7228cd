// The longer texts of --help: examples, streams and exit codes of each command.

const EXIT_CODES = `
Exit codes: 0 fine; 1 a tray is late or left out, or the plan breaks a rule; 2 bad input or usage; 3 a fault of ovenward.`;

export const OVENWARD_HELP = `
Examples:
  ovenward plan saturday.yaml --out saturday
  ovenward check saturday.yaml saturday/plan.json
  ovenward draw saturday/plan.json --svg wall.svg
  ovenward serve
${EXIT_CODES}`;

export const PLAN_HELP = `
Without --seconds and --effort the search ends after its usual effort or 10 seconds, whichever comes first. With --effort
alone, the same scenario, seed and effort give the same plan on every machine. Ctrl-C ends the search and takes the best
plan so far; a second Ctrl-C quits without one.

Examples:
  ovenward plan saturday.yaml                      what is ready when, on one screen
  ovenward plan saturday.yaml --out saturday       also plan.json and sheet.svg in the folder saturday
  ovenward plan saturday.yaml --seconds 60         search for a minute
  ovenward plan - --json < saturday.yaml           the plan as JSON on standard output, nothing else there

Exit codes: 0 every tray is planned and on time; 1 a tray is late or left out; 2 bad input or usage; 3 a fault of ovenward.`;

export const CHECK_HELP = `
The plan may be one of ours or written by hand. Every rule it breaks is named, with the minute and what to do.

Examples:
  ovenward check saturday.yaml saturday/plan.json
  ovenward check saturday.yaml byhand.json --json

Exit codes: 0 no breach; 1 the plan breaks a rule; 2 bad input or usage; 3 a fault of ovenward.`;

export const DRAW_HELP = `
Pages after the first are numbered: sheet.svg, sheet-2.svg. Without --out and --svg they go to the folder you are in.

Examples:
  ovenward draw saturday/plan.json --out wall
  ovenward draw saturday/plan.json --svg wall/saturday.svg

Exit codes: 0 drawn; 2 bad input or usage; 3 a fault of ovenward.`;

export const SERVE_HELP = `
Answers requests for plans and verdicts until Ctrl-C or SIGTERM; the search that runs then ends with its best plan so far.
There is no password: whoever reaches the address may use it. Without --host only this machine does.

Examples:
  ovenward serve
  ovenward serve --port 9000
  ovenward serve --host 192.168.1.20 --open-to-anyone

Exit codes: 0 stopped when asked to; 2 bad usage, or the address is not to be had; 3 a fault of ovenward.`;
