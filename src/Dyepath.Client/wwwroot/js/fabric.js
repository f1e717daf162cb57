// The unrolled pieces, panned and zoomed from cached pictures; the page is asked only what a stitch is.
import { picture } from './canvas.js';
import { blurred } from './blur.js';
import { tile } from './stitches.js';

const views = new Map();
const legible = 16, stitched = 8, largest = 64;
const sizes = new ResizeObserver(entries => {
  for (const { target } of entries) views.get(target.id)?.resized();
});

export function show(id, json, cells) {
  const canvas = document.getElementById(id);
  if (!canvas) return;
  let view = views.get(id);
  if (view?.canvas !== canvas) {
    forget(id);
    views.set(id, view = new View(canvas));
  }
  view.show(JSON.parse(json), cells.slice());
}

export function listen(id, picked) {
  const view = views.get(id);
  if (view) view.picked = picked;
}

export const zoom = (id, factor) => views.get(id)?.zoomAt(factor);
export const fit = id => views.get(id)?.fit();

export function forget(id) {
  views.get(id)?.end();
  views.delete(id);
}

class View {
  constructor(canvas) {
    this.canvas = canvas;
    this.context = canvas.getContext('2d');
    this.picked = () => {};
    this.cursor = null;
    this.reading = false;
    this.touches = new Map();
    this.ended = new AbortController();
    const on = (name, act, passive = true) => canvas.addEventListener(name, act.bind(this), { signal: this.ended.signal, passive });
    on('wheel', this.wheeled, false);
    on('pointerdown', this.pressed);
    on('pointermove', this.moved);
    on('pointerup', this.lifted);
    on('pointercancel', this.lifted);
    on('keydown', this.typed, false);
    sizes.observe(canvas);
    this.theme = new MutationObserver(() => this.later());
    this.theme.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.later(), { signal: this.ended.signal });
  }

  end() {
    this.ended.abort();
    this.theme.disconnect();
    sizes.unobserve(this.canvas);
    cancelAnimationFrame(this.frame);
  }

  show(scene, cells) {
    let at = 0;
    for (const patch of scene.patches) {
      patch.cells = cells.subarray(at, at += patch.columns * patch.rows);
      patch.wide = patch.width / patch.columns;
      patch.high = patch.height / patch.rows;
      patch.picture = scene.blur > 0
        ? blurred(patch, scene.palette, scene.blur)
        : picture(patch.cells, 0, patch.columns, patch.rows, scene.palette);
    }
    const same = this.scene?.key === scene.key;
    this.scene = scene;
    this.tiles = new Map();
    this.glyphs = new Map();
    if (!same) {
      this.cursor = null;
      this.whole = true;
    }
    this.resized();
  }

  resized() {
    if (!this.scene) return;
    this.ratio = globalThis.devicePixelRatio || 1;
    const width = Math.round(this.canvas.clientWidth * this.ratio), height = Math.round(this.canvas.clientHeight * this.ratio);
    if (!width || !height) return;
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    if (this.whole) this.place();
    this.draw();
  }

  // Everything in view, with room for labels above and the scale bar below.
  place() {
    const right = Math.max(...this.scene.patches.map(p => p.x + p.width)), bottom = Math.max(...this.scene.patches.map(p => p.y + p.height));
    const side = 30 * this.ratio, ends = 34 * this.ratio;
    this.least = Math.max(0.1, Math.min((this.canvas.width - 2 * side) / right, (this.canvas.height - 2 * ends) / bottom));
    this.scale = this.least;
    [this.x, this.y] = [right / 2, bottom / 2];
    this.whole = true;
    this.canvas.style.touchAction = 'pan-y';
  }

  fit() {
    this.place();
    this.later();
  }

  zoomAt(factor, px = this.canvas.width / 2, py = this.canvas.height / 2) {
    const [x, y] = this.spot(px, py);
    const cell = Math.min(...this.scene.patches.map(p => Math.min(p.wide, p.high)));
    this.scale = Math.min(Math.max(this.least, largest * this.ratio / cell), Math.max(this.least, this.scale * factor));
    if (this.scale === this.least) return this.fit();
    this.whole = false;
    this.canvas.style.touchAction = 'none';
    this.x = x - (px - this.canvas.width / 2) / this.scale;
    this.y = y - (py - this.canvas.height / 2) / this.scale;
    this.hold();
    this.later();
  }

  pan(dx, dy) {
    if (this.whole) return;
    this.x += dx / this.scale;
    this.y += dy / this.scale;
    this.hold();
    this.later();
  }

  // Some fabric stays in view.
  hold() {
    const right = Math.max(...this.scene.patches.map(p => p.x + p.width)), bottom = Math.max(...this.scene.patches.map(p => p.y + p.height));
    this.x = Math.min(right, Math.max(0, this.x));
    this.y = Math.min(bottom, Math.max(0, this.y));
  }

  spot(px, py) {
    return [this.x + (px - this.canvas.width / 2) / this.scale, this.y + (py - this.canvas.height / 2) / this.scale];
  }

  point(event) {
    const box = this.canvas.getBoundingClientRect();
    return [(event.clientX - box.left) * this.ratio, (event.clientY - box.top) * this.ratio];
  }

  // The wheel turns the page until the canvas is being worked with.
  wheeled(event) {
    if (!event.ctrlKey && document.activeElement !== this.canvas) return;
    event.preventDefault();
    const pixels = event.deltaY * (event.deltaMode === 1 ? 16 : 1);
    this.zoomAt(Math.exp(-pixels * (event.ctrlKey ? 0.01 : 0.002)), ...this.point(event));
  }

  pressed(event) {
    this.canvas.setPointerCapture(event.pointerId);
    this.touches.set(event.pointerId, this.point(event));
    if (this.touches.size === 1) this.travelled = 0;
  }

  moved(event) {
    const before = this.touches.get(event.pointerId);
    if (!before) return;
    const now = this.point(event);
    const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
    this.travelled += Math.hypot(dx, dy);
    const other = [...this.touches].find(([id]) => id !== event.pointerId)?.[1];
    this.touches.set(event.pointerId, now);
    if (other) {
      const span = p => Math.hypot(p[0] - other[0], p[1] - other[1]);
      this.pan(-dx / 2, -dy / 2);
      if (span(before) > 0) this.zoomAt(span(now) / span(before), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
    } else if (this.travelled > 4 * this.ratio) this.pan(-dx, -dy);
  }

  lifted(event) {
    const here = this.touches.get(event.pointerId);
    this.touches.delete(event.pointerId);
    if (event.type === 'pointerup' && here && this.touches.size === 0 && this.travelled <= 4 * this.ratio) this.pick(...this.spot(...here));
  }

  pick(x, y) {
    const index = this.scene.patches.findIndex(p => x >= p.x && x < p.x + p.width && y >= p.y && y < p.y + p.height);
    if (index < 0) return;
    const patch = this.scene.patches[index];
    this.read(index, Math.floor((x - patch.x) / patch.wide), Math.floor((y - patch.y) / patch.high));
  }

  read(index, column, line) {
    this.cursor = { index, column, line };
    const patch = this.scene.patches[index];
    this.picked(index, column + patch.hidden, line);
    this.later();
  }

  typed(event) {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (arrow && this.reading) this.step(...arrow);
    else if (arrow) this.pan(arrow[0] * this.canvas.width / 8, arrow[1] * this.canvas.height / 8);
    else if (event.key === '+' || event.key === '=') this.zoomAt(1.4);
    else if (event.key === '-') this.zoomAt(1 / 1.4);
    else if (event.key === '0') this.fit();
    else if (event.key === 'Enter') this.start();
    else if (event.key === 'Escape' && this.reading) {
      this.reading = false;
      this.later();
    } else return;
    event.preventDefault();
  }

  start() {
    this.reading = true;
    if (this.cursor) return this.step(0, 0);
    const middle = this.scene.patches.findIndex(p => this.x >= p.x && this.x < p.x + p.width);
    const patch = this.scene.patches[Math.max(0, middle)];
    this.read(
      Math.max(0, middle), Math.min(patch.columns - 1, Math.max(0, Math.floor((this.x - patch.x) / patch.wide))),
      Math.min(patch.rows - 1, Math.max(0, Math.floor((this.y - patch.y) / patch.high))));
  }

  // One stitch on; at a side, over to the piece that adjoins.
  step(dx, dy) {
    let { index, column, line } = this.cursor;
    const patch = this.scene.patches[index];
    column += dx;
    line = Math.min(patch.rows - 1, Math.max(0, line + dy));
    if (column < 0 && index > 0) column = this.scene.patches[--index].columns - 1;
    else if (column >= patch.columns && index + 1 < this.scene.patches.length) [index, column] = [index + 1, 0];
    const now = this.scene.patches[index];
    column = Math.min(now.columns - 1, Math.max(0, column));
    line = Math.min(now.rows - 1, line);
    this.follow(now.x + (column + 0.5) * now.wide, now.y + (line + 0.5) * now.high);
    this.read(index, column, line);
  }

  follow(x, y) {
    const [across, down] = [this.canvas.width / this.scale * 0.42, this.canvas.height / this.scale * 0.42];
    if (this.whole) return;
    this.x = Math.min(x + across, Math.max(x - across, this.x));
    this.y = Math.min(y + down, Math.max(y - down, this.y));
  }

  later() {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.draw());
  }

  draw() {
    if (!this.scene || !this.scale) return;
    const began = performance.now();
    const { context, canvas, scale } = this;
    const style = getComputedStyle(document.documentElement);
    this.ink = style.getPropertyValue('--ink');
    this.ground = style.getPropertyValue('--ground');
    this.soft = style.getPropertyValue('--soft');
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, canvas.width, canvas.height);
    context.setTransform(scale, 0, 0, scale, canvas.width / 2 - this.x * scale, canvas.height / 2 - this.y * scale);
    for (const patch of this.scene.patches) this.drawPatch(patch);
    context.setTransform(1, 0, 0, 1, 0, 0);
    for (const line of this.scene.lines) this.drawLine(line);
    for (const line of this.scene.lines) if (line.tag) this.drawTag(line);
    for (const patch of this.scene.patches) this.drawLabel(patch);
    if (this.cursor) this.drawCursor();
    this.drawScale();
    // Milliseconds, for whoever waits for the picture or measures it.
    canvas.dataset.drawn = (performance.now() - began).toFixed(2);
  }

  drawPatch(patch) {
    const { context, scale } = this;
    context.imageSmoothingEnabled = this.scene.blur > 0 || patch.wide * scale < 2;
    context.imageSmoothingQuality = 'high';
    context.drawImage(patch.picture, patch.x, patch.y, patch.width, patch.height);
    const wide = patch.wide * scale, high = patch.high * scale;
    if (this.scene.blur > 0 || Math.min(wide, high) < stitched * this.ratio) return;
    this.drawStitches(patch, wide, high);
    if (Math.min(wide, high) >= legible * this.ratio) this.drawSymbols(patch, wide, high);
  }

  drawStitches(patch, wide, high) {
    const key = `${patch.sideways} ${patch.turned} ${patch.over} ${wide.toFixed(2)}`;
    if (!this.tiles.has(key)) {
      if (this.tiles.size > 8) this.tiles.clear();
      const picture = tile(this.scene.stitch, patch, patch.sideways ? high : wide, patch.sideways ? wide : high);
      this.tiles.set(key, { picture, pattern: this.context.createPattern(picture, 'repeat') });
    }
    const { picture, pattern } = this.tiles.get(key);
    // The first row's outer corner: at the foot; sideways at the left, turned over at the right.
    const x = patch.sideways && patch.over ? patch.x + (patch.columns + patch.hidden) * patch.wide : patch.x - patch.hidden * patch.wide;
    pattern.setTransform(new DOMMatrix([2 * patch.wide / picture.width, 0, 0, 2 * patch.high / picture.height, x, patch.y + patch.height]));
    this.context.fillStyle = pattern;
    this.context.imageSmoothingEnabled = true;
    this.context.fillRect(patch.x, patch.y, patch.width, patch.height);
  }

  drawSymbols(patch, wide, high) {
    const { context, canvas } = this;
    const [left, top] = this.spot(0, 0), [right, bottom] = this.spot(canvas.width, canvas.height);
    const from = Math.max(0, Math.floor((left - patch.x) / patch.wide)), to = Math.min(patch.columns, Math.ceil((right - patch.x) / patch.wide));
    const first = Math.max(0, Math.floor((top - patch.y) / patch.high)), last = Math.min(patch.rows, Math.ceil((bottom - patch.y) / patch.high));
    // Large stitches are seen around their symbol.
    const size = Math.round(Math.min(wide * 0.6, high * 0.6, 15 * this.ratio));
    const before = context.getTransform();
    context.setTransform(1, 0, 0, 1, 0, 0);
    for (let y = first; y < last; y++) {
      for (let x = from; x < to; x++) {
        const glyph = this.glyph(patch.cells[y * patch.columns + x], size);
        if (!glyph) continue;
        const px = (patch.x + (x + 0.5) * patch.wide - this.x) * this.scale + canvas.width / 2;
        const py = (patch.y + (y + 0.5) * patch.high - this.y) * this.scale + canvas.height / 2;
        context.drawImage(glyph, Math.round(px - glyph.width / 2), Math.round(py - glyph.height / 2));
      }
    }
    context.setTransform(before);
  }

  glyph(cell, size) {
    const symbol = this.scene.symbols[cell];
    if (!symbol) return null;
    const key = cell * 1000 + size;
    if (!this.glyphs.has(key)) {
      if (this.glyphs.size > 256) this.glyphs.clear();
      const picture = new OffscreenCanvas(Math.ceil(size * (0.9 + 0.5 * symbol.length)), Math.ceil(size * 1.3));
      const context = picture.getContext('2d');
      // On its colour, so that the stitch's own lines do not run through it.
      context.fillStyle = colour(this.scene.palette[cell]);
      context.globalAlpha = 0.8;
      context.beginPath();
      context.roundRect(0, 0, picture.width, picture.height, size / 3);
      context.fill();
      context.globalAlpha = 1;
      context.fillStyle = colour(this.scene.inks[cell]);
      context.font = `700 ${size}px "Atkinson Hyperlegible", sans-serif`;
      context.textAlign = 'center';
      context.textBaseline = 'middle';
      context.fillText(symbol, picture.width / 2, picture.height / 2 + size * 0.05);
      this.glyphs.set(key, picture);
    }
    return this.glyphs.get(key);
  }

  at(x, y) {
    return [(x - this.x) * this.scale + this.canvas.width / 2, (y - this.y) * this.scale + this.canvas.height / 2];
  }

  drawLine(line) {
    const { context, ratio } = this;
    const from = this.at(line.x1, line.y1), to = this.at(line.x2, line.y2);
    const stroke = (style, width, dash) => {
      context.setLineDash(dash);
      context.strokeStyle = style;
      context.lineWidth = width * ratio;
      context.beginPath();
      context.moveTo(...from);
      context.lineTo(...to);
      context.stroke();
    };
    stroke(this.ground, line.seam ? 4 : 5, []);
    stroke(this.ink, line.seam ? 1.5 : 2.5, line.seam ? [] : [3 * ratio, 4 * ratio]);
    context.setLineDash([]);
  }

  drawTag(line) {
    const { context, ratio } = this;
    const [x, y] = this.at((line.x1 + line.x2) / 2, (line.y1 + line.y2) / 2);
    context.font = `700 ${14 * ratio}px "Atkinson Hyperlegible", sans-serif`;
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    const wide = Math.max(22 * ratio, context.measureText(line.tag).width + 12 * ratio), high = 22 * ratio;
    context.fillStyle = this.ground;
    context.strokeStyle = this.ink;
    context.lineWidth = 1.5 * ratio;
    context.beginPath();
    context.roundRect(x - wide / 2, y - high / 2, wide, high, high / 2);
    context.fill();
    context.stroke();
    context.fillStyle = this.ink;
    context.fillText(line.tag, x, y + ratio);
  }

  drawLabel(patch) {
    const { context, ratio } = this;
    const [left, bottom] = this.at(patch.x, patch.y + patch.height), [right, top] = this.at(patch.x + patch.width, patch.y);
    context.font = `${14 * ratio}px "Atkinson Hyperlegible", sans-serif`;
    context.textAlign = 'center';
    context.textBaseline = 'bottom';
    if (patch.rowShares.length) this.drawShares(patch, left, right, top, bottom);
    if (right < 0 || left > this.canvas.width) return;
    const middle = (Math.max(left, 0) + Math.min(right, this.canvas.width)) / 2, foot = Math.max(24 * ratio, top - 13 * ratio);
    const wide = context.measureText(patch.label).width + 12 * ratio;
    context.fillStyle = this.ground;
    context.fillRect(middle - wide / 2, foot - 20 * ratio, wide, 22 * ratio);
    context.fillStyle = this.ink;
    context.fillText(patch.label, middle, foot);
  }

  // Row by row beside the edge, how much is in its planned colour: the farther from the edge, the more is not.
  drawShares(patch, left, right, top, bottom) {
    const { context, ratio } = this;
    const deep = 36 * ratio, count = patch.rowShares.length;
    context.beginPath();
    patch.rowShares.forEach((share, row) => {
      if (patch.sideways) {
        const place = patch.over ? patch.columns + patch.hidden - row - 0.5 : row - patch.hidden + 0.5;
        if (place < 0 || place > patch.columns) return;
        context.rect(left + (place - 0.5) * (right - left) / patch.columns, bottom + 2 * ratio, (right - left) / patch.columns, (1 - share) * deep);
      } else {
        context.rect(left + 2 * ratio, bottom - (row + 1) * (bottom - top) / count, (1 - share) * deep, (bottom - top) / count);
      }
    });
    context.fillStyle = this.soft;
    context.fill();
  }

  drawCursor() {
    const { context, ratio } = this;
    const { index, column, line } = this.cursor;
    const patch = this.scene.patches[index];
    const [x, y] = this.at(patch.x + column * patch.wide, patch.y + line * patch.high);
    const wide = Math.max(patch.wide * this.scale, 8 * ratio), high = Math.max(patch.high * this.scale, 8 * ratio);
    for (const [style, width] of [[this.ground, 6], [this.ink, this.reading ? 3 : 2]]) {
      context.strokeStyle = style;
      context.lineWidth = width * ratio;
      context.strokeRect(x, y, wide, high);
    }
  }

  drawScale() {
    const { context, ratio, canvas } = this;
    const unit = this.scene.inches ? 2.54 : 1, word = this.scene.inches ? 'in' : 'cm';
    const steps = [1, 2, 5, 10, 20, 50];
    const length = steps.find(s => s * unit * this.scale >= 60 * ratio) ?? 50;
    const [x, y, wide] = [14 * ratio, canvas.height - 12 * ratio, length * unit * this.scale];
    context.font = `${14 * ratio}px "Atkinson Hyperlegible", sans-serif`;
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    const text = `${length} ${word}`;
    context.fillStyle = this.ground;
    context.globalAlpha = 0.85;
    context.fillRect(x - 6 * ratio, y - 12 * ratio, wide + context.measureText(text).width + 20 * ratio, 22 * ratio);
    context.globalAlpha = 1;
    context.strokeStyle = this.ink;
    context.lineWidth = 1.5 * ratio;
    context.beginPath();
    context.moveTo(x, y - 5 * ratio);
    context.lineTo(x, y + 5 * ratio);
    context.moveTo(x, y);
    context.lineTo(x + wide, y);
    context.moveTo(x + wide, y - 5 * ratio);
    context.lineTo(x + wide, y + 5 * ratio);
    context.stroke();
    context.fillStyle = this.ink;
    context.fillText(text, x + wide + 8 * ratio, y);
  }
}

const colour = number => `#${number.toString(16).padStart(6, '0')}`;
