// Room for one caution at the foot of a printed sheet, and how a list of names is cut to fit it. Used by the cautions.

/** Most characters of one caution, included. */
export const LONGEST_SAYS = 160;

/** `opening` and as many names as fit, then how many more there are, then a full stop. */
export function sayNames(opening: string, names: readonly string[]): string {
  for (let shown = names.length; shown > 0; shown -= 1) {
    const more = shown < names.length ? ` and ${names.length - shown} more` : '';
    const says = `${opening} ${names.slice(0, shown).join(', ')}${more}.`;
    if (says.length <= LONGEST_SAYS) return says;
  }
  return `${opening} ${names.length} in all.`;
}

/** A name cut to so many characters, the cut marked by dots. */
export function shortName(name: string, most = 40): string {
  return name.length <= most ? name : `${name.slice(0, most - 3).trimEnd()}...`;
}
