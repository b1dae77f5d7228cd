// `ovenward draw`: reads a plan we wrote and writes its sheet.
import { mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { DrawRequest } from './request.ts';
import { prepareSheet, type SheetPlace, writeSheet } from './sheetFiles.ts';
import type { Surroundings } from './surroundings.ts';

export async function drawingPlan(request: DrawRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const place: SheetPlace = request.out === undefined && request.svg === undefined ? { out: '.' } : request;
  const plan = mustRead(request.plan, await parts.readPlan(await readText(request.plan, surroundings)));
  await prepareSheet(place, [request.plan]);
  const files = await writeSheet(place, await parts.drawPlan(plan));
  surroundings.out.write(`${files.join('\n')}\n`);
  return EXIT.fine;
}
