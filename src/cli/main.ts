// The command's first file: real parts, real surroundings, and an exit code at the end. Started by scripts/ovenward.mjs.
import { EXIT } from './exitCodes.ts';
import { processSurroundings } from './processSurroundings.ts';
import { realParts } from './realParts.ts';
import { run } from './run.ts';
import { sayFault } from './sayFault.ts';
import { version } from './version.ts';

/** Runs the command; `startedAtMs` is when the time limit began, in milliseconds since the process started. */
export async function main({ startedAtMs }: { readonly startedAtMs: number }): Promise<void> {
  const surroundings = processSurroundings(startedAtMs);
  process.on('uncaughtException', (error) => {
    process.stderr.write(sayFault(error, version(), surroundings.isDebugging));
    process.exit(EXIT.ourFault);
  });
  const saySilentEnd = (): void => {
    process.stderr.write(sayFault(new Error('It ended in the midst of its work'), version(), surroundings.isDebugging));
    process.exitCode = EXIT.ourFault;
  };
  // Of a process that has nothing left to do and something still to wait for Node says nothing that people understand.
  process.once('beforeExit', saySilentEnd);
  process.exitCode = await run(process.argv.slice(2), realParts, surroundings);
  process.off('beforeExit', saySilentEnd);
}
