// Tests of src/draw/palette.ts and hatch.ts: the published colours, contrast of text on bars, hatches that differ.
import { describe, expect, test } from 'vitest';
import { HATCHES, hatchPattern } from '../../src/draw/hatch.ts';
import { contrast, PALETTE, tint } from '../../src/draw/palette.ts';
import { render } from '../../src/draw/svg.ts';
import { INK, PAPER } from '../../src/draw/typeSize.ts';

describe('palette', () => {
  // M. Okabe and K. Ito, "Color Universal Design", 2002, revised 2008. RGB values from memory, not read again.
  test('is the published one', () => {
    const published = ['230,159,0', '86,180,233', '0,158,115', '240,228,66', '0,114,178', '213,94,0', '204,121,167'];
    const ours = PALETTE.map((colour) => [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)).join(','));
    expect(ours).toEqual(published);
  });

  // WCAG 2.2, definition of contrast ratio and success criterion 1.4.3 (4.5:1); the two ends are known: 21 and 1.
  test('contrast is the ratio of WCAG 2.2', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21);
    expect(contrast('#123456', '#123456')).toBeCloseTo(1);
    // #767676 on white is the well-known lightest grey that passes 4.5:1; value from memory.
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  test('black text is readable on every bar, white on every black plate', () => {
    expect(Math.min(...PALETTE.map((colour) => contrast(INK, tint(colour))))).toBeGreaterThan(4.5);
    expect(contrast(INK, PAPER)).toBeGreaterThan(4.5);
  });
});

describe('hatches', () => {
  const drawn = (hatch: number) =>
    hatchPattern(hatch, '#000000')
      .children.map((child) => (typeof child === 'string' ? child : render(child)))
      .join('');

  test('all differ from each other without any colour', () => {
    const all = Array.from({ length: HATCHES }, (_, hatch) => drawn(hatch));
    expect(new Set(all).size).toBe(HATCHES);
    expect(HATCHES).toBeGreaterThanOrEqual(48);
  });
});
