// Tests of src/draw/textWidth.ts, wrapText.ts, label.ts and richText.ts: text is measured, broken and never cut.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstThatFits, labelSize } from '../../src/draw/label.ts';
import { wordsOf, wrapWords } from '../../src/draw/richText.ts';
import { textWidth } from '../../src/draw/textWidth.ts';
import { wrapText } from '../../src/draw/wrapText.ts';

describe('textWidth', () => {
  test('grows with the text and with its size; an accent takes no room', () => {
    expect(textWidth('ab', 4)).toBeGreaterThan(textWidth('a', 4));
    expect(textWidth('ab', 8)).toBeCloseTo(2 * textWidth('ab', 4));
    expect(textWidth('é', 4)).toBe(textWidth('e', 4));
  });
});

const words = fc.array(fc.stringMatching(/^[A-Za-z0-9]{1,30}$/), { minLength: 1, maxLength: 20 });

describe('wrapText', () => {
  test('keeps every letter and every line inside the width', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 8, max: 80 }), (list, width) => {
        const lines = wrapText(list.join(' '), width, 4);
        expect(lines.join('').replaceAll(' ', '')).toBe(list.join(''));
        for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(width);
      }),
    );
  });

  test('breaks between words where it can', () => {
    expect(wrapText('seeded tin loaf', textWidth('seeded tin', 4), 4)).toEqual(['seeded tin', 'loaf']);
  });
});

describe('wrapWords', () => {
  test('keeps every word, and clock times and temperatures stand out', () => {
    const lines = wrapWords(wordsOf('2 trays into Top deck, 230\u00a0°C, out at 06:09'), 40);
    expect(lines.length).toBeGreaterThan(1);
    const all = lines.flatMap((line) => line.words);
    expect(all.map(({ text }) => text).join(' ')).toBe('2 trays into Top deck, 230\u00a0°C, out at 06:09');
    expect(all.filter(({ bold }) => bold).map(({ text }) => text)).toEqual(['230\u00a0°C,', '06:09']);
    expect(Math.min(...all.filter(({ bold }) => bold).map(({ size }) => size))).toBeGreaterThanOrEqual(4);
  });
});

describe('firstThatFits', () => {
  const long = [{ text: 'Cardamom knot', size: 4 }];
  const short = [{ text: 'Ck', size: 4 }];

  test('takes the best wording that fits, or none', () => {
    expect(firstThatFits([long, short], 100, 10)).toBe(long);
    expect(firstThatFits([long, short], labelSize(short).width, 10)).toBe(short);
    expect(firstThatFits([long, short], 100, 4)).toBeUndefined();
  });
});
