// Values of options and the options several commands share. A wrong value is a usage error with what it may be.
import { InvalidArgumentError, Option } from 'commander';
import { CLOCK_PATTERN } from '../../model/units.ts';

/** The longest search one may ask for: a day. */
const MAX_SECONDS = 86_400;
const MAX_WHOLE = 2 ** 31 - 1;

export function seconds(text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && value > 0 && value <= MAX_SECONDS) return value;
  throw new InvalidArgumentError(`Seconds are a number above 0 and at most ${MAX_SECONDS}.`);
}

export function wholeFrom(least: number, most = MAX_WHOLE): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`It is a whole number from ${least} to ${most}.`);
  };
}

export function clockTime(text: string): string {
  if (CLOCK_PATTERN.test(text)) return text;
  throw new InvalidArgumentError('It is a time such as 05:40, or "-1d 23:10" for the evening before.');
}

export const out = (): Option => new Option('--out <dir>', 'folder to write to; made when missing');
export const svg = (): Option => new Option('--svg <file>', 'file for the sheet; further pages are numbered');
export const seed = (): Option => new Option('--seed <n>', 'seed of the search').argParser(wholeFrom(0));
export const workers = (): Option =>
  new Option('--workers <n>', 'threads that search, 1 or 2; as many as there are processors when not given').argParser(
    wholeFrom(1, 2),
  );
export const storeOption = (): Option =>
  new Option('--store <file>', 'file of the store [OVENWARD_STORE, usually ~/.local/share/ovenward/ovenward.db]');
