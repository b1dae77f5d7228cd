// What the work of the service stands on. Handed from openJobs.ts to jobBook.ts and runJob.ts.
import type { Store } from '../../store/store.ts';
import type { Report } from '../telling/report.ts';
import type { Crew } from './crew.ts';
import type { Work } from './work.ts';

export type BookOptions = {
  readonly store: Store;
  readonly now: () => number;
  readonly instant: () => string;
  readonly threads: number;
  readonly places: number;
  readonly mostSeconds: number;
  readonly version: string;
  readonly report: Report;
  readonly onEnd: (work: Work) => void;
  readonly crew: Crew;
};
