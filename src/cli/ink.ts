// The few ways a word can stand out on a terminal; plain text where colours are off. Used by everything written for people.
import picocolors from 'picocolors';

export type Ink = {
  readonly strong: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly quiet: (text: string) => string;
};

export function inkFor(hasColours: boolean): Ink {
  const colours = picocolors.createColors(hasColours);
  return { strong: colours.bold, good: colours.green, bad: colours.red, quiet: colours.dim };
}
