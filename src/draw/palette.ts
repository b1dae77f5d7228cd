// Colours that people with any kind of colour vision can tell apart, and the arithmetic of tints and contrast.
// Palette: M. Okabe and K. Ito, "Color Universal Design: How to make figures and presentations that are friendly to
// colorblind people", 2002, revised 2008; its seven colours besides black.

export const PALETTE = ['#e69f00', '#56b4e9', '#009e73', '#f0e442', '#0072b2', '#d55e00', '#cc79a7'] as const;

type Rgb = readonly [number, number, number];

function rgbOf(colour: string): Rgb {
  const value = Number.parseInt(colour.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

function hexOf(rgb: Rgb): string {
  return `#${rgb.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
}

/** `share` (0 to 1, both included) of the second colour stirred into the first. */
export function blend(colour: string, other: string, share: number): string {
  const [r, g, b] = rgbOf(colour);
  const [otherR, otherG, otherB] = rgbOf(other);
  return hexOf([r + (otherR - r) * share, g + (otherG - g) * share, b + (otherB - b) * share]);
}

function luminance(colour: string): number {
  const linear = rgbOf(colour).map((part) => {
    const value = part / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  const [r = 0, g = 0, b = 0] = linear;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it. */
export function contrast(colour: string, other: string): number {
  const [a, b] = [luminance(colour), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The pale ground of a bar: black text on it is easily read, and a laser printer turns it into a light grey. */
export function tint(colour: string): string {
  return blend(colour, '#ffffff', 0.68);
}

/** The dark ink of a hatch. */
export function hatchInk(colour: string): string {
  return blend(colour, '#000000', 0.45);
}
