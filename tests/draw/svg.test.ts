// Tests of src/draw/svg.ts: escaping and numbers.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { el, escapeXml, render } from '../../src/draw/svg.ts';

describe('escapeXml', () => {
  test.each([
    ['<script>', '&lt;script&gt;'],
    [`a & b "c" 'd'`, 'a &amp; b &quot;c&quot; &#39;d&#39;'],
    ['\u0000bell\u0007', 'bell'],
    ['\u202etfel', 'tfel'],
    ['\ud83e half', '\ufffd half'],
    ['\u{1f950} whole', '\u{1f950} whole'],
  ])('%j', (text, escaped) => {
    expect(escapeXml(text)).toBe(escaped);
  });

  test('leaves nothing that ends a text or an attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const escaped = escapeXml(text);
        expect(escaped).not.toMatch(/[<>"']/);
        expect(escaped.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
    );
  });

  test('text without marks, controls and surrogates stays as it is', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z0-9 .,äöüéß-]*$/), (text) => {
        expect(escapeXml(text)).toBe(text);
      }),
    );
  });
});

describe('render', () => {
  test('writes numbers with two decimals at most and leaves absent attributes away', () => {
    expect(render(el('rect', { x: 1 / 3, y: -0.0001, width: 2, fill: undefined }))).toBe('<rect x="0.33" y="0" width="2"/>');
  });

  test('refuses a length that is none', () => {
    expect(() => render(el('rect', { x: Number.NaN }))).toThrow('not a length: NaN');
  });
});
