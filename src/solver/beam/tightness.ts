// How tight a rough plan of a schedule in the making is: what of it would be late, and where slack is short. Used by the estimate.
import type { BeamShop } from './beamShop.ts';
import type { Rows } from './rows.ts';

export class Tightness {
  private readonly rows: Rows;
  private readonly latest: Int32Array;
  /** Slack that is enough: less of it is a lack. */
  private slack = 0;
  /** How late something begun would be, and by how much the least slack falls short of what is enough; 0 or more. */
  late = 0;
  lack = 0;

  constructor(beam: BeamShop, rows: Rows) {
    this.rows = rows;
    this.latest = beam.shop.network.latest;
  }

  reset(slack: number): void {
    this.slack = slack;
    this.late = 0;
    this.lack = 0;
  }

  /** Whether a point not placed yet hangs on one that is. */
  isBegun(at: number, v: number): boolean {
    const { data, high } = this.rows;
    return (data[at + v] as number) < 0 && (data[at + high + v] as number) < (this.latest[v] as number);
  }

  /** Notes how late a point would come at a time, or how much slack it would lack: no more can be asked for than it had. */
  weigh(at: number, v: number, time: number): void {
    const { data, low, high } = this.rows;
    const late = time - (data[at + high + v] as number);
    if (late > this.late) this.late = late;
    const lack = late + Math.min(this.slack, (data[at + high + v] as number) - (data[at + low + v] as number));
    if (lack > this.lack) this.lack = lack;
  }
}
