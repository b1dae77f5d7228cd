// What was left out and why, plainly.
import type { Plan } from '../model/plan.ts';
import { nameIn } from './names.ts';

/** One sentence a product: "Left out: 2 trays of Rye tin. No deck is free. Would fit if …". */
export function leftOutWords(plan: Plan): readonly string[] {
  return plan.leftOut.map(({ product, trays, reasons }) => {
    const what = `Left out: ${trays === 1 ? '1 tray' : `${trays} trays`} of ${nameIn(plan.bakehouse.products, product)}.`;
    const why = reasons.map(({ says, wouldFitIf }) =>
      wouldFitIf === undefined ? sentence(says) : `${sentence(says)} ${sentence(condition(wouldFitIf))}`,
    );
    return [what, ...why].join(' ');
  });
}

function sentence(text: string): string {
  const trimmed = text.trim();
  const first = trimmed.charAt(0).toUpperCase();
  return /[.!?]$/.test(trimmed) ? `${first}${trimmed.slice(1)}` : `${first}${trimmed.slice(1)}.`;
}

function condition(text: string): string {
  return /\bwould\b/i.test(text) ? text : `would fit if ${text}`;
}
