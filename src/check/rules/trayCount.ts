// TRAY_COUNT: planned <= ceil(pieces / piecesPerTray) for each product; where trays left out are stated,
// planned + left out = ceil(pieces / piecesPerTray).
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

export function trayCount(day: JudgedDay): readonly Finding[] {
  const stated = day.plan.leftOut;
  return day.ordered.flatMap(({ productId, trays }) => {
    const own = day.trays.filter((tray) => tray.product.id === productId);
    const planned = own.length;
    const taskIds = own.flatMap((tray) => tray.runs[0]?.named.id ?? []);
    if (planned > trays) {
      const says = `${planned} trays of ${productId} are planned, ${planned - trays} more than the ${trays} its orders need.`;
      return [{ says, taskIds }];
    }
    if (stated === undefined) return [];
    const leftOut = stated.filter(({ product }) => product === productId).reduce((sum, entry) => sum + entry.trays, 0);
    if (planned + leftOut === trays) return [];
    const says = `${productId}: ${planned} planned and ${leftOut} stated as left out are not the ${trays} trays its orders need.`;
    return [{ says, taskIds }];
  });
}
