// The unrolled pieces painted from cached pictures: as colour from afar; nearer as cloth, or plain with lines and symbols.

// From how many of the page's pixels on a stitch is yarn; plain, it has its outline, and its symbol.
const yarn = 5, outlined = 8, legible = 22;
// Milliseconds of a frame that new cloth may take.
const patience = 6;

// What is seen: the spot (x, y) in the middle, in centimetres, at so many of the canvas's pixels to a centimetre.
export class Board {
  constructor(canvas) {
    this.canvas = canvas;
    this.context = canvas.getContext('2d');
    this.cursor = null;
    this.reading = false;
    this.dressed = true;
    this.glyphs = new Map();
  }

  spot(px, py) {
    return [this.x + (px - this.canvas.width / 2) / this.scale, this.y + (py - this.canvas.height / 2) / this.scale];
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
    // What is told of the picture to whoever waits for it: cells, cloth, or cloth that is still being made.
    canvas.dataset.shows = this.isCloth() ? this.drawCloth(began + patience) : 'cells';
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
    const wide = patch.wide * scale, high = patch.high * scale, least = Math.min(wide, high);
    if (this.dressed || this.scene.blur > 0 || least < outlined * this.ratio) return;
    this.drawOutlines(patch);
    if (least >= legible * this.ratio) this.drawSymbols(patch, wide, high);
  }

  isCloth() {
    const least = Math.min(...this.scene.patches.map(p => Math.min(p.wide, p.high)));
    return this.dressed && !(this.scene.blur > 0) && least * this.scale >= yarn * this.ratio;
  }

  drawCloth(until) {
    const isWhole = this.cloth.draw(this.context, this.scale, ...this.at(0, 0).map(Math.round), until);
    if (!isWhole) this.later();
    return isWhole ? 'cloth' : 'making';
  }

  drawOutlines(patch) {
    const { context, scale, ratio } = this;
    const [from, to, first, last] = this.inView(patch);
    context.beginPath();
    for (let x = from; x <= to; x++) {
      context.moveTo(patch.x + x * patch.wide, patch.y + first * patch.high);
      context.lineTo(patch.x + x * patch.wide, patch.y + last * patch.high);
    }
    for (let y = first; y <= last; y++) {
      context.moveTo(patch.x + from * patch.wide, patch.y + y * patch.high);
      context.lineTo(patch.x + to * patch.wide, patch.y + y * patch.high);
    }
    context.strokeStyle = 'rgb(0 0 0 / .3)';
    context.lineWidth = ratio / scale;
    // Only where there is fabric.
    context.globalCompositeOperation = 'source-atop';
    context.stroke();
    context.globalCompositeOperation = 'source-over';
  }

  // Columns from and to, lines from and to, of a patch.
  inView(patch) {
    const [left, top] = this.spot(0, 0), [right, bottom] = this.spot(this.canvas.width, this.canvas.height);
    const within = (place, count) => Math.min(count, Math.max(0, place));
    return [
      within(Math.floor((left - patch.x) / patch.wide), patch.columns), within(Math.ceil((right - patch.x) / patch.wide), patch.columns),
      within(Math.floor((top - patch.y) / patch.high), patch.rows), within(Math.ceil((bottom - patch.y) / patch.high), patch.rows),
    ];
  }

  drawSymbols(patch, wide, high) {
    const { context, canvas } = this;
    const [from, to, first, last] = this.inView(patch);
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
      const picture = new OffscreenCanvas(Math.ceil(size * (0.5 + 0.5 * symbol.length)), Math.ceil(size * 1.3));
      const context = picture.getContext('2d');
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
    const foot = Math.max(24 * ratio, top - 13 * ratio), wide = context.measureText(patch.label).width + 12 * ratio;
    let middle = (Math.max(left, 0) + Math.min(right, this.canvas.width)) / 2;
    if (wide > right - left) {
      // Wider than its piece: outwards, away from the label of the piece beside it.
      const beside = this.scene.patches.filter(p => p !== patch && p.y < patch.y + patch.height && patch.y < p.y + p.height);
      const isLast = beside.every(p => p.x < patch.x), isFirst = beside.every(p => p.x > patch.x);
      if (isFirst && !isLast) middle = right - wide / 2;
      else if (isLast && !isFirst) middle = left + wide / 2;
    }
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
        const place = patch.over ? patch.columns + patch.hiddenRight - row - 0.5 : row - patch.hiddenLeft + 0.5;
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
