// From words on the command line to an exit code. The one place where bad input and our own faults are told to people.
import { BadInput } from './badInput.ts';
import { commandLine } from './commandLine.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import type { Request } from './request.ts';
import { sayFault } from './sayFault.ts';
import { sayInputErrors } from './sayInputErrors.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';

// Each command is loaded when it is asked for: --help and usage errors come at once.
async function doing(request: Request, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  if (request.do === 'plan') return (await import('./makingPlan.ts')).makingPlan(request, parts, surroundings);
  if (request.do === 'check') return (await import('./checkingPlan.ts')).checkingPlan(request, parts, surroundings);
  if (request.do === 'replan') return (await import('./replanning.ts')).replanning(request, parts, surroundings);
  if (request.do === 'compare') return (await import('./comparing.ts')).comparing(request, parts, surroundings);
  if (request.do === 'why') return (await import('./sayingWhy.ts')).sayingWhy(request, parts, surroundings);
  if (request.do === 'fit') return (await import('./fitting.ts')).fitting(request, parts, surroundings);
  if (request.do === 'serve') return (await import('./serving.ts')).serving(request, surroundings);
  if (request.do === 'post') return (await import('./posting.ts')).posting(request, parts, surroundings);
  if (request.do === 'backup') return (await import('./backingUp.ts')).backingUp(request, surroundings);
  return (await import('./drawingPlan.ts')).drawingPlan(request, parts, surroundings);
}

async function done(request: Request, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, isDebugging } = surroundings;
  try {
    return await doing(request, parts, surroundings);
  } catch (error) {
    if (!(error instanceof BadInput)) {
      err.write(sayFault(error, version(), isDebugging));
      return EXIT.ourFault;
    }
    // Whoever asked for JSON gets the same errors as data.
    if ('json' in request && request.json) out.write(jsonText({ errors: error.errors }));
    err.write(sayInputErrors(error, inkFor(err.hasColours)));
    return EXIT.badInput;
  }
}

/** Loads the parts of the command, once it is known what it is asked for. */
export type PartsFor = (request: Request, surroundings: Surroundings) => Promise<Parts>;

export async function run(words: readonly string[], partsFor: PartsFor, surroundings: Surroundings): Promise<ExitCode> {
  const request = commandLine(words, version(), surroundings);
  const code = typeof request === 'number' ? request : await done(request, await partsFor(request, surroundings), surroundings);
  const hasAllLeft = await surroundings.out.settled();
  if (!hasAllLeft)
    surroundings.err.write('Standard output could not be written in full. Write to a file instead, as with --out.\n');
  await surroundings.err.settled();
  return hasAllLeft || code > EXIT.notFine ? code : EXIT.badInput;
}
