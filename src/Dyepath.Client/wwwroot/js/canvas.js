// Paints fabric from bytes. Each canvas remembers what it shows, so that it can follow its size.
export const plain = 254, empty = 255;
const shown = new Map();
const sizes = new ResizeObserver(entries => {
  for (const entry of entries) draw(entry.target);
});

export function paint(id, view, numbers, cells, palette) {
  const canvas = document.getElementById(id);
  if (!canvas) return;
  const bytes = cells.slice();
  const patches = [];
  let at = 0;
  for (let i = 0; i < numbers.length; i += 7) {
    const [x, y, width, height, columns, rows, turns] = numbers.slice(i, i + 7);
    patches.push({ x, y, width, height, columns, rows, turns, picture: picture(bytes, at, columns, rows, palette) });
    at += columns * rows;
  }
  const before = shown.get(id);
  if (before?.canvas !== canvas) {
    if (before) sizes.unobserve(before.canvas);
    sizes.observe(canvas);
  }
  shown.set(id, { canvas, view, patches });
  draw(canvas);
}

export function forget(id) {
  const before = shown.get(id);
  if (before) sizes.unobserve(before.canvas);
  shown.delete(id);
}

// One pixel a cell.
export function picture(bytes, from, columns, rows, palette) {
  const canvas = new OffscreenCanvas(columns, rows);
  const context = canvas.getContext('2d');
  const image = context.createImageData(columns, rows);
  const pixels = new Uint32Array(image.data.buffer);
  const colours = palette.map(c => 0xff000000 | (c & 0xff) << 16 | c & 0xff00 | c >> 16 & 0xff);
  for (let i = 0; i < pixels.length; i++) {
    const cell = bytes[from + i];
    pixels[i] = cell === empty ? 0 : colours[cell === plain ? colours.length - 1 : cell];
  }
  context.putImageData(image, 0, 0);
  return canvas;
}

function draw(canvas) {
  const what = shown.get(canvas.id);
  if (!what || what.canvas !== canvas) return;
  const ratio = globalThis.devicePixelRatio || 1;
  const width = Math.round(canvas.clientWidth * ratio), height = Math.round(canvas.clientHeight * ratio);
  if (!width || !height) return;
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  const context = canvas.getContext('2d');
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, width, height);
  const [left, top, wide, high] = what.view;
  const scale = Math.min(width / wide, height / high);
  context.translate((width - wide * scale) / 2, (height - high * scale) / 2);
  context.scale(scale, scale);
  context.translate(-left, -top);
  for (const patch of what.patches) drawPatch(context, patch, scale);
}

function drawPatch(context, patch, scale) {
  const upright = patch.turns % 2 === 0;
  const across = upright ? patch.width : patch.height, down = upright ? patch.height : patch.width;
  context.save();
  context.translate(patch.x + patch.width / 2, patch.y + patch.height / 2);
  context.rotate(patch.turns * Math.PI / 2);
  context.translate(-across / 2, -down / 2);
  const cellWide = across / patch.columns;
  // Large stitches have sharp edges; many to a pixel are blended, as eyes blend them.
  context.imageSmoothingEnabled = cellWide * scale < 2;
  context.imageSmoothingQuality = 'high';
  context.drawImage(patch.picture, 0, 0, across, down);
  context.restore();
}
