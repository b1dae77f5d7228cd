// How sure the small hand-made plan might be, for what the command prints. Not counted from any morning.
import { type HowSure, howSureSchema } from '../../src/model/howSure.ts';
import { USUAL_SPREAD } from '../../src/model/spread.ts';

const never = { chance: 0, low: 0, high: 0.0004 };
const none = { ...never, minutes: 0 };

export const sampleHowSure: HowSure = howSureSchema.parse({
  howSure: 1,
  scenario: { name: 'A short morning', date: '2026-05-16', timeZone: 'Europe/Lisbon', fingerprint: 'sha256:0' },
  seed: 1,
  mornings: 10_000,
  spread: USUAL_SPREAD,
  allOnTime: { chance: 0.6204, low: 0.6108, high: 0.6299 },
  lateTrayMinutes: 9.8,
  plannedLateTrayMinutes: 0,
  orders: [
    {
      product: 'roll',
      pieces: 24,
      readyBy: '2026-05-16T05:30:00+01:00',
      plannedReadyAt: '2026-05-16T05:15:00+01:00',
      usuallyReadyAt: '2026-05-16T05:21:00+01:00',
      mostlyReadyAt: '2026-05-16T05:38:00+01:00',
      onTime: { chance: 0.62, low: 0.61, high: 0.63 },
    },
    {
      product: 'tin',
      pieces: 6,
      readyBy: '2026-05-16T07:00:00+01:00',
      plannedReadyAt: null,
      usuallyReadyAt: null,
      mostlyReadyAt: null,
      onTime: never,
    },
  ],
  traysAtRisk: [
    {
      tray: 'roll-1',
      product: 'roll',
      late: { chance: 0.38, low: 0.37, high: 0.39, minutes: 11.4 },
      standsTooLong: { chance: 0.124, low: 0.118, high: 0.131, minutes: 7.2 },
      bakesTooLong: none,
    },
  ],
  pastHours: [{ person: 'ida', works: { chance: 0.07, low: 0.06, high: 0.08, minutes: 4.4 } }],
  hurts: [
    { step: 'proof', lateTrayMinutes: 5.7 },
    { step: 'shape', lateTrayMinutes: 1.1 },
  ],
  hurtsMost: { step: 'proof', of: 'roll', lateTrayMinutes: 5.2 },
});
