// Draws a comparison as A4-landscape pages: curves for a sweep, figures side by side for changes. Pure: the same answer, the same bytes.
import type { Comparison } from '../../model/comparison.ts';
import { changePages } from './changePages.ts';
import { frame } from './comparisonFrame.ts';
import { sweepPage } from './sweepPage.ts';

/** One SVG text for each page. */
export function drawComparison(comparison: Comparison): readonly string[] {
  const { sweep, days } = comparison;
  const bodies = sweep === null || days.length === 0 ? changePages(comparison) : [sweepPage(comparison)];
  const describes = sweep === null ? days.map(({ difference }) => difference.says).join(' ') : sweep.says;
  return bodies.map((body, index) => frame(comparison, body, describes, index + 1, bodies.length));
}
