// The unrolled pieces, moved by hands and keys; the page is asked only what a stitch is.
import { Board } from './board.js';
import { picture } from './canvas.js';
import { blurred } from './blur.js';
import { Cloth } from './cloth.js';

const views = new Map();
// A stitch at its largest, in the page's pixels.
const largest = 64;
const sizes = new ResizeObserver(entries => {
  for (const { target } of entries) views.get(target.id)?.resized();
});

export function show(id, json, stitches, cloth) {
  const canvas = document.getElementById(id);
  // A browser without canvases has the picture's text.
  if (!canvas?.getContext('2d')) return;
  let view = views.get(id);
  if (view?.canvas !== canvas) {
    forget(id);
    views.set(id, view = new View(canvas));
  }
  view.dressed = cloth;
  view.show(JSON.parse(json), stitches.slice());
}

const plainly = 'dyepath.fabric.plain';
// A browser that keeps nothing may refuse even to look.
export const isPlain = () => {
  try {
    return localStorage.getItem(plainly) !== null;
  } catch {
    return false;
  }
};

export function dress(id, cloth) {
  try {
    if (cloth) localStorage.removeItem(plainly);
    else localStorage.setItem(plainly, '1');
  } catch { }
  const view = views.get(id);
  if (!view) return;
  view.dressed = cloth;
  view.later();
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

class View extends Board {
  constructor(canvas) {
    super(canvas);
    this.picked = () => {};
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

  show(scene, stitches) {
    let at = 0;
    for (const patch of scene.patches) {
      for (const plane of ['cells', 'forms', 'others', 'changes']) patch[plane] = stitches.subarray(at, at += patch.columns * patch.rows);
      patch.turns = patch.sideways ? (patch.over ? 3 : 1) : 0;
      patch.wide = patch.width / patch.columns;
      patch.high = patch.height / patch.rows;
      patch.picture = scene.blur > 0
        ? blurred(patch, scene.palette, scene.blur)
        : picture(patch.cells, 0, patch.columns, patch.rows, scene.palette);
    }
    const same = this.scene?.key === scene.key;
    this.scene = scene;
    this.cloth = new Cloth(scene);
    this.glyphs = new Map();
    if (!same) this.whole = true;
    const on = this.cursor && scene.patches[this.cursor.index];
    if (!same || (on && (this.cursor.column >= on.columns || this.cursor.line >= on.rows))) this.cursor = null;
    this.resized();
  }

  resized() {
    if (!this.scene) return;
    this.ratio = globalThis.devicePixelRatio || 1;
    const width = Math.round(this.canvas.clientWidth * this.ratio), height = Math.round(this.canvas.clientHeight * this.ratio);
    if (!width || !height) return;
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    this.measure();
    if (this.whole || this.scale <= this.least) this.place();
    this.draw();
  }

  // The scale at which everything is in view, with room for labels above and the scale bar below.
  measure() {
    this.right = Math.max(...this.scene.patches.map(p => p.x + p.width));
    this.bottom = Math.max(...this.scene.patches.map(p => p.y + p.height));
    const side = 30 * this.ratio, ends = 34 * this.ratio;
    this.least = Math.max(0.1, Math.min((this.canvas.width - 2 * side) / this.right, (this.canvas.height - 2 * ends) / this.bottom));
  }

  place() {
    this.scale = this.least;
    [this.x, this.y] = [this.right / 2, this.bottom / 2];
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
    this.x = Math.min(this.right, Math.max(0, this.x));
    this.y = Math.min(this.bottom, Math.max(0, this.y));
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
    this.picked(index, column + patch.hiddenLeft, line);
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
}
