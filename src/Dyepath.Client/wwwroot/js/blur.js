// Fabric as it looks from afar: light is added up, so the blur is of light and not of the screen's bytes.
import { plain, empty } from './canvas.js';

const light = Float64Array.from({ length: 256 }, (_, byte) => {
  const share = byte / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});
const encode = share => 255 * (share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055);

// Sigma in the patch's own unit of length. Where the blur is finer than a stitch, a stitch has several pixels.
export function blurred(patch, palette, sigma) {
  const fine = sigma < 0.75 * Math.min(patch.wide, patch.high) ? 4 : 1;
  const [across, down] = [fine * sigma / patch.wide, fine * sigma / patch.high];
  const columns = fine * patch.columns, rows = fine * patch.rows, count = columns * rows;
  const cells = new Uint8Array(count);
  for (let i = 0; i < count; i++) cells[i] = patch.cells[Math.floor(i / columns / fine) * patch.columns + Math.floor(i % columns / fine)];
  const canvas = new OffscreenCanvas(columns, rows);
  const context = canvas.getContext('2d');
  const image = context.createImageData(columns, rows);
  const seen = Float64Array.from(cells, cell => cell === empty ? 0 : 1);
  // Beyond an edge, and in the gaps of a ragged one, there is no light and nothing to be lit.
  const cover = smooth(seen, columns, rows, across, down);
  for (let channel = 0; channel < 3; channel++) {
    const levels = palette.map(colour => light[colour >> (16 - 8 * channel) & 255]);
    const lit = Float64Array.from(cells, cell => cell === empty ? 0 : levels[cell === plain ? levels.length - 1 : cell]);
    const soft = smooth(lit, columns, rows, across, down);
    for (let i = 0; i < count; i++) image.data[4 * i + channel] = Math.round(encode(soft[i] / cover[i]));
  }
  for (let i = 0; i < count; i++) image.data[4 * i + 3] = 255 * seen[i];
  context.putImageData(image, 0, 0);
  return canvas;
}

// Along rows, then along columns.
const smooth = (values, columns, rows, across, down) =>
  along(along(values, columns, rows, 1, columns, across), rows, columns, columns, 1, down);

function along(values, length, lines, step, stride, sigma) {
  const reach = Math.ceil(3.5 * sigma);
  const weights = Float64Array.from({ length: reach + 1 }, (_, d) => Math.exp(-d * d / (2 * sigma * sigma)));
  const result = new Float64Array(values.length);
  for (let line = 0; line < lines; line++) {
    for (let i = 0; i < length; i++) {
      let sum = 0;
      for (let d = Math.max(-reach, -i); d <= reach && i + d < length; d++)
        sum += weights[Math.abs(d)] * values[line * stride + (i + d) * step];
      result[line * stride + i * step] = sum;
    }
  }
  return result;
}
