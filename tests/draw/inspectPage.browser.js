// Runs inside the browser: lays a page out at 10 px a millimetre and looks for what a reader would trip over.
// readPage.ts hands it the SVG text and reads what it returns.

// biome-ignore lint/correctness/noUnusedVariables: readPage.ts calls it by name.
function inspect(svg) {
  const PX = 10;
  const SLACK = 1;
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const parserError = parsed.querySelector('parsererror')?.textContent ?? '';
  const root = document.importNode(parsed.documentElement, true);
  root.setAttribute('width', `${297 * PX}`);
  root.setAttribute('height', `${210 * PX}`);
  root.style.display = 'block';
  document.body.append(root);

  const boxes = [...root.querySelectorAll('text')].map((node) => ({
    node,
    text: node.textContent ?? '',
    box: node.getBoundingClientRect(),
  }));
  const meets = (a, b) =>
    a.left < b.right - SLACK && b.left < a.right - SLACK && a.top < b.bottom - SLACK && b.top < a.bottom - SLACK;
  const overlaps = boxes.flatMap((one, index) =>
    boxes.slice(index + 1).flatMap((other) => (meets(one.box, other.box) ? [`${one.text} / ${other.text}`] : [])),
  );
  const outside = boxes
    .filter(({ box }) => box.left < 0 || box.top < 0 || box.right > 297 * PX || box.bottom > 210 * PX)
    .map(({ text }) => text);

  const corners = (box) =>
    [
      [box.left + SLACK, box.top + SLACK],
      [box.right - SLACK, box.top + SLACK],
      [box.left + SLACK, box.bottom - SLACK],
      [box.right - SLACK, box.bottom - SLACK],
    ].map(([x = 0, y = 0]) => new DOMPoint(x / PX, y / PX));
  const outsideBar = [...root.querySelectorAll('[data-bar]')].flatMap((bar) => {
    const shape = bar.querySelector(':scope > path, :scope > rect');
    if (shape === null) return ['a bar without a shape'];
    const own = boxes.filter(({ node }) => bar.contains(node));
    // A bar of a whole width has its ground first, and the ground is the bar.
    return own.filter(({ box }) => corners(box).some((point) => !shape.isPointInFill(point))).map(({ text }) => text);
  });

  const sizes = [...root.querySelectorAll('[font-size]')].map((node) => Number(node.getAttribute('font-size')));
  const references = [...svg.matchAll(/url\(#([^)]*)\)/g)].map(([, id]) => id ?? '');
  const missing = [...new Set(references)].filter((id) => root.querySelector(`[id="${id}"]`) === null);
  const elements = [root, ...root.querySelectorAll('*')];
  const active = elements.flatMap((node) => {
    const isActive = /^(script|foreignObject|image|a|iframe|use|style|animate|set)$/i.test(node.tagName);
    const attributes = [...node.attributes].filter(
      ({ name, value }) =>
        /^on/i.test(name) || /href$/i.test(name) || (name !== 'xmlns' && /https?:|javascript:|url\((?!#)/i.test(value)),
    );
    return [...(isActive ? [node.tagName] : []), ...attributes.map(({ name, value }) => `${name}=${value}`)];
  });
  return {
    parserError,
    texts: boxes.length,
    overlaps,
    outside,
    outsideBar,
    smallest: Math.min(99, ...sizes),
    isList: (root.querySelector('desc')?.textContent ?? '').startsWith('Lists:'),
    missing,
    active,
  };
}
