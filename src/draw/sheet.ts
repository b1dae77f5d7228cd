// The page: A4 landscape in mm, and the boxes and time windows that pages are laid out in.

/** A4 landscape (ISO 216) with a margin that common printers can reach. */
export const SHEET = { width: 297, height: 210, margin: 8 } as const;

export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** The minutes one chart page shows; `until` excluded. */
export type TimeWindow = { readonly from: number; readonly until: number };

/** Where a column is drawn, and the scale that puts minutes on the page; time runs downward. */
export type Area = {
  readonly box: Box;
  readonly window: TimeWindow;
  /** Height on the page of a minute, held inside the window. */
  readonly y: (minute: number) => number;
};

/** Linear scale from the minutes of a window to the height of a box. */
export function areaOf(box: Box, window: TimeWindow): Area {
  const perMinute = box.height / (window.until - window.from);
  const y = (minute: number) => box.y + (Math.min(window.until, Math.max(window.from, minute)) - window.from) * perMinute;
  return { box, window, y };
}

/** Whether a span of minutes shows in a window. */
export function shows(window: TimeWindow, span: { readonly start: number; readonly end: number }): boolean {
  return span.start < window.until && span.end > window.from;
}
