// How wide a text prints, measured without a browser. Everything that places text stands on it.
// Advance widths in thousandths of the type size: the wider of DejaVu Sans and Liberation Sans, rounded up to 25, so that
// a text fits whichever plain sans-serif type the printer has.

const REGULAR: readonly (readonly [number, string])[] = [
  [275, "'"],
  [300, 'ijlł'],
  [325, ' ,.·\u00a0'],
  [350, '/:;I\\|'],
  [375, '-f'],
  [400, '()[]t'],
  [425, '!r'],
  [475, '"'],
  [500, '*J`°'],
  [525, 'sz'],
  [550, 'c'],
  [575, '?_–'],
  [600, 'kvxy'],
  [625, 'FLTaeoøð'],
  [650, '$0123456789bdghnpqu{}£€µßđþ'],
  [675, 'EPS'],
  [700, 'BZ'],
  [725, 'ACKRVXY'],
  [750, 'NU'],
  [775, 'DH'],
  [800, '&GOQØ'],
  [825, 'w'],
  [850, '#+<=>^~×↑↓'],
  [900, 'M'],
  [975, '%m'],
  [1000, 'W—→←…æÆ'],
  [1025, '@œ'],
  [1075, 'Œ'],
];

const BOLD: readonly (readonly [number, string])[] = [
  [325, "'"],
  [350, ' ijl\u00a0'],
  [375, '/\\|ł'],
  [400, ',.:;I·'],
  [425, '-'],
  [450, 'f'],
  [475, '!()[]'],
  [500, '`rt°'],
  [525, '*'],
  [575, '"J_–'],
  [600, 'csz'],
  [625, '?'],
  [650, 'x'],
  [675, 'Lakvy'],
  [700, '$0123456789EFTeo£€øð'],
  [725, 'SYbdghnpqu{}ßđþ'],
  [750, 'CPZµ'],
  [775, 'ABRVX'],
  [800, 'K'],
  [825, 'GU'],
  [850, '#+<=>DHN^~×↑↓'],
  [875, '&OQØ'],
  [925, 'w'],
  [1000, '@M—→←…'],
  [1025, '%'],
  [1050, 'mæ'],
  [1100, 'œÆ'],
  [1125, 'W'],
  [1175, 'Œ'],
];

function tableOf(rows: readonly (readonly [number, string])[]): ReadonlyMap<string, number> {
  return new Map(rows.flatMap(([width, characters]) => [...characters].map((character) => [character, width] as const)));
}

const TABLES = { regular: tableOf(REGULAR), bold: tableOf(BOLD) };

const NO_WIDTH = /[\p{Mn}\p{Me}\p{Cf}]/u;
const OTHER_LETTER = 1100;
const PICTURE = 1500;

function characterWidth(character: string, table: ReadonlyMap<string, number>): number {
  const known = table.get(character);
  if (known !== undefined) return known;
  if (NO_WIDTH.test(character)) return 0;
  return (character.codePointAt(0) ?? 0) >= 0x2e80 ? PICTURE : OTHER_LETTER;
}

/** Width of a text in mm at a type size in mm; never less than it prints in the common sans-serif types. */
export function textWidth(text: string, sizeMm: number, isBold = false): number {
  const table = isBold ? TABLES.bold : TABLES.regular;
  let thousandths = 0;
  // A letter with an accent is as wide as the letter: NFD splits the accent off.
  for (const character of text.normalize('NFD')) thousandths += characterWidth(character, table);
  return (thousandths / 1000) * sizeMm;
}
