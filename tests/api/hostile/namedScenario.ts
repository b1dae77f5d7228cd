// A day that can be planned in no time, with names that are scripts, markup, line ends and marks that turn the writing round.
import fc from 'fast-check';
import type { HostileBody } from './hostileBodies.ts';

const NAMES = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "'/><foreignObject><iframe src=javascript:alert(1)></iframe></foreignObject>",
  ']]><svg onload="alert(1)">',
  '<!-- --><!DOCTYPE x [<!ENTITY y SYSTEM "file:///etc/passwd">]>&y;',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  'x" onload="alert(1)" y="',
  'END:VEVENT BEGIN:VEVENT; \\n\\, X-INJECTED:1',
  '\u202egnp.tohs \u2066 turned',
  '{{7*7}}#{7*7}<%= 7*7 %>',
  '=HYPERLINK("javascript:alert(1)")',
  'data:text/html;base64,PHNjcmlwdD4=',
  'loaf \u{1f956} br\u00f6d \u0644\u062e\u0628\u0632',
];

/** One tray of one bread; every text that people choose is one of these names. */
export const namedScenario: fc.Arbitrary<HostileBody> = fc
  .tuple(fc.constantFrom(...NAMES), fc.constantFrom(...NAMES), fc.constantFrom(...NAMES))
  .map(([name, other, third]) => ({
    what: `the names ${name}`,
    type: 'application/json',
    body: JSON.stringify(scenarioCalled(name, other, third)),
  }));

/** The day itself: its own name, that of what is baked and that of who bakes. */
export function scenarioCalled(name: string, product: string, person: string): unknown {
  return {
    scenario: 1,
    name,
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: { from: '04:00', until: '09:00' },
    equipment: {
      ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', name: product, trays: 2 }] }],
    },
    people: [{ id: 'one', name: person, from: '04:00', until: '09:00' }],
    doughs: [{ id: 'dough', name, steps: [{ do: 'mix', minutes: 10 }] }],
    products: [
      {
        id: 'bun',
        name: product,
        dough: 'dough',
        pieceG: 90,
        piecesPerTray: 20,
        steps: [
          { do: 'shape', minutesPerTray: 10 },
          { do: 'bake', minutes: 16, temperatureC: 200 },
        ],
      },
    ],
    orders: [{ product: 'bun', pieces: 20, readyBy: '08:00' }],
  };
}
