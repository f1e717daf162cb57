// Fabric as yarn: each stitch is painted once from its strands and then copied, row upon row.
import { stitches } from './stitches.js';
import { picture, plain, empty } from './canvas.js';

// How a stitch lies, bit by bit, as the page hands it over (StitchForm).
const isBack = 1, isChain = 2, isTurn = 4, otherFirst = 8;
// Stitches are not quite alike: so many of each.
const hands = 3;
// How far a stitch's top stands beside its foot, the way its row is worked.
const lean = .12;
// From so many of the canvas's pixels on plies are seen.
const plied = 15;

// Canvas pixels of a tile's side, and how many are kept.
const side = 128, kept = 600;

// The cloth of a scene at one scale, made tile by tile, so that moving it only copies.
export class Cloth {
  // scene: patches, palette (0xRRGGBB), stitch. A patch: x, y, wide, high (of a cell), columns, rows, turns, and a byte a stitch each of
  // cells, forms, others, changes. turns: quarter turns clockwise from rows that lie across, the first at the foot.
  constructor({ patches, palette, stitch }) {
    Object.assign(this, { patches, palette, stitch, scale: 0, tiles: new Map(), before: null, isWhole: false, sprites: new Map() });
    const behind = palette.map(colour => [16, 8, 0].reduce((all, shift) => all << 8 | (colour >> shift & 255) * .64, 0));
    for (const patch of patches) patch.behind = picture(patch.cells, 0, patch.columns, patch.rows, behind);
  }

  // Draws what lies on the context's canvas, at so many pixels to a centimetre with the scene's origin at (left, top), and makes what is
  // missing until a time, or with Infinity all of it. Returns whether all is there; where it is not yet, the canvas stays as it was.
  draw(context, scale, left, top, until) {
    const isNew = scale !== this.scale;
    if (isNew) {
      if (this.isWhole) this.before = { scale: this.scale, tiles: this.tiles };
      Object.assign(this, { scale, tiles: new Map(), isWhole: false });
    }
    context.imageSmoothingEnabled = true;
    context.imageSmoothingQuality = 'low';
    // While the scale changes, cloth of the scale before is good enough.
    if (this.before) this.copy(context, this.before.tiles, side * scale / this.before.scale, left, top);
    const { width, height } = context.canvas;
    const missing = [];
    for (let j = Math.floor(-top / side); j * side + top < height; j++) {
      for (let i = Math.floor(-left / side); i * side + left < width; i++) {
        if (!this.tiles.has(`${i} ${j}`) && this.isCloth(i, j)) missing.push([i, j]);
      }
    }
    const middle = ([i, j]) => Math.hypot((i + .5) * side + left - width / 2, (j + .5) * side + top - height / 2);
    missing.sort((a, b) => middle(a) - middle(b));
    // The first picture of a scale may be its last, while somebody comes nearer.
    while (missing.length && (!isNew || until === Infinity)) {
      const made = this.make(...missing[0], until);
      if (made) this.tiles.set(missing.shift().join(' '), made);
      if (performance.now() >= until) break;
    }
    this.copy(context, this.tiles, side, left, top);
    this.isWhole = !missing.length;
    if (this.isWhole) this.before = null;
    for (const key of this.tiles.keys()) {
      if (this.tiles.size <= kept) break;
      const [x, y] = key.split(' ').map((n, axis) => n * side + (axis ? top : left));
      if (x + side < 0 || x > width || y + side < 0 || y > height) this.tiles.delete(key);
    }
    return this.isWhole;
  }

  isCloth(i, j) {
    const [left, top, over] = [i * side / this.scale, j * side / this.scale, side / this.scale];
    return this.patches.some(p => {
      // A stitch reaches over into the place beside its own.
      const across = left < p.x + (p.columns + 1) * p.wide && left + over > p.x - p.wide;
      return across && top < p.y + (p.rows + 1) * p.high && top + over > p.y - p.high;
    });
  }

  copy(context, tiles, size, left, top) {
    const { width, height } = context.canvas;
    for (const [key, tile] of tiles) {
      const [i, j] = key.split(' ').map(Number), x = i * size + left, y = j * size + top;
      if (x < width && y < height && x + size > 0 && y + size > 0) context.drawImage(tile, x, y, size, size);
    }
  }

  // A tile, or null where the time is over before all its stitches are painted; those that are stay painted.
  make(i, j, until) {
    const tile = new OffscreenCanvas(side, side);
    const context = tile.getContext('2d');
    for (const patch of this.patches) {
      const px = patch.wide * this.scale, py = patch.high * this.scale;
      const sprites = this.spritesOf(patch, px, py);
      if (!paint(context, sprites, patch, px, py, i * side - patch.x * this.scale, j * side - patch.y * this.scale, until)) return null;
    }
    return tile;
  }

  // Scales that lie near each other share their stitches.
  spritesOf(patch, px, py) {
    const upright = patch.turns % 2 === 0, size = pixels => pixels < 12 ? Math.round(pixels * 2) / 2 : Math.round(pixels);
    const [along, up] = [size(upright ? px : py), size(upright ? py : px)];
    const key = `${along} ${up} ${patch.turns}`;
    if (!this.sprites.has(key)) {
      if (this.sprites.size > 12) this.sprites.clear();
      this.sprites.set(key, new Sprites(this.stitch, along, up, patch.turns, this.palette));
    }
    return this.sprites.get(key);
  }
}

// Stitches of one size on the screen, painted when they are first asked for.
class Sprites {
  // along, up: pixels of a stitch along its row and up.
  constructor(stitch, along, up, turns, palette) {
    Object.assign(this, { stitch, along, up, turns, palette, made: new Map() });
  }

  // tone, next: places in the palette; change: the share of the stitch's yarn at which next follows, to 255; 0 for none.
  of(form, tone, next, change, hand) {
    // A sixteenth of a stitch more or less is not seen.
    const step = Math.ceil(change / 16);
    const key = (((form * 256 + tone) * 256 + next) * 17 + step) * hands + hand;
    let made = this.made.get(key);
    if (!made) this.made.set(key, made = this.paint(form, tone, next, step ? (step - .5) / 16 : 1, hand));
    return made;
  }

  // The picture, and where it lies from the middle of its stitch.
  paint(form, tone, next, change, hand) {
    const { along, up, turns } = this;
    const back = form & isBack;
    const kind = form & isTurn ? 'turn' : form & isChain ? 'chain' : stitches[this.stitch] ? this.stitch : 'sc';
    const random = seeded(hand * 7 + form + 1);
    const shake = size => hand ? (random() - .5) * size : 0;
    const place = ([u, v]) => {
      const x = (u + (back ? -lean : lean) * (v - .5) - .5 + shake(.05)) * along, y = (.5 - v) * up + shake(.05) * along;
      return turns === 1 ? [-y, x] : turns === 3 ? [y, -x] : [x, y];
    };
    const strands = stitches[kind][back ? 'back' : 'front'].map(({ thick, yarn, deep, points }) =>
      ({ line: curve(points.map(place)), width: thick * along * (1 + shake(.08)), yarn, deep }));
    const edge = (axis, sign) => Math.ceil(Math.max(...strands.map(s => Math.max(...s.line.map(p => sign * p[axis])) + s.width * .75)));
    const [left, top, right, bottom] = [edge(0, -1), edge(1, -1), edge(0, 1), edge(1, 1)];
    const canvas = new OffscreenCanvas(left + right, top + bottom);
    const context = canvas.getContext('2d');
    context.translate(left, top);
    for (const { line, width, yarn, deep } of strands) {
      // Where along the strand the yarn changes; a change at its very end lies in the next strand.
      const cut = (change - yarn[0]) / (yarn[1] - yarn[0]);
      const colours = [cut < .1 ? next : tone, cut > .9 ? tone : next];
      shadow(context, line, width);
      yarnLine(context, line, width, along, colours.map(c => tones(this.palette[c], deep)), cut);
      if (along >= 7) dive(context, line, width);
    }
    return { canvas, left, top };
  }
}

// A patch's stitches on a context whose pixels begin at (left, top) of the patch; px, py: pixels of a column and a line.
// Returns whether it was done before a time; what was painted for it stays painted.
function paint(context, sprites, patch, px, py, left, top, until) {
  const { columns, rows, cells, forms, others, changes, turns } = patch;
  const { width, height } = context.canvas;
  const from = Math.max(0, Math.floor(left / px) - 1), to = Math.min(columns, Math.ceil((left + width) / px) + 1);
  const first = Math.max(0, Math.floor(top / py) - 1), last = Math.min(rows, Math.ceil((top + height) / py) + 1);
  if (from >= to || first >= last) return true;
  const x = i => Math.round(i * px - left), y = i => Math.round(i * py - top);
  // What lies behind the yarn.
  context.imageSmoothingEnabled = false;
  context.drawImage(patch.behind, from, first, to - from, last - first, x(from), y(first), x(to) - x(from), y(last) - y(first));
  const companion = sprites.palette.length - 1;
  // Row upon row from the first: at the foot; sideways at the left, turned over at the right.
  const columnsFirst = turns % 2 === 1;
  const lines = columnsFirst ? (turns === 1 ? range(from, to) : range(from, to).reverse()) : range(first, last).reverse();
  const along = columnsFirst ? range(first, last) : range(from, to);
  for (const line of lines) {
    for (const place of along) {
      const [column, row] = columnsFirst ? [line, place] : [place, line];
      const at = row * columns + column, cell = cells[at];
      if (cell === empty) continue;
      const tone = cell === plain ? companion : cell, other = changes[at] ? others[at] : tone;
      const [begun, ended] = forms[at] & otherFirst ? [other, tone] : [tone, other];
      const before = sprites.made.size;
      const stitch = sprites.of(forms[at] & ~otherFirst, begun, ended, changes[at], (column * 7 + row * 13 + (column * row) % 5) % hands);
      if (sprites.made.size > before && performance.now() >= until) return false;
      context.drawImage(stitch.canvas, Math.round((column + .5) * px - left) - stitch.left, Math.round((row + .5) * py - top) - stitch.top);
    }
  }
  return true;
}

const range = (from, to) => Array.from({ length: to - from }, (_, i) => from + i);

// The strand as light from above left has it: a round body, brighter towards the light, and its plies.
function yarnLine(context, line, width, along, [first, last], cut) {
  context.lineCap = context.lineJoin = 'round';
  const tone = of => of(first) === of(last) ? of(first) : blend(context, line, cut, of(first), of(last));
  const dark = tone(t => t.dark), body = tone(t => t.body), light = tone(t => t.light);
  const layers = along < 7 ? [[1, 0, dark], [.9, .04, body], [.6, .1, light]] : along < plied
    ? [[1, 0, dark], [.86, .05, body], [.34, .16, light]]
    : [
      [1, 0, dark], [.94, .02, tone(t => mixed(t.dark, t.body, .5))], [.84, .05, body], [.62, .1, tone(t => mixed(t.body, t.light, .4))],
      [.4, .14, tone(t => mixed(t.body, t.light, .75))], [.18, .17, light],
    ];
  for (const [share, shift, style] of layers) {
    context.strokeStyle = style;
    context.lineWidth = Math.max(.5, width * share);
    trace(context, line, -width * shift);
  }
  if (along >= plied) plies(context, line, width, dark, light);
}

// One colour runs into the next as dye does, over a short way.
function blend(context, line, cut, from, to) {
  const ends = part(line, Math.max(0, cut - .12), Math.min(1, cut + .12));
  const gradient = context.createLinearGradient(...ends[0], ...ends.at(-1));
  gradient.addColorStop(.2, from);
  gradient.addColorStop(.8, to);
  return gradient;
}

// The twist: fine furrows slanting over the strand, each with its lit side.
function plies(context, line, width, dark, light) {
  const step = width * .5, half = width * .46;
  const furrows = new Path2D(), lit = new Path2D();
  let left = step / 2;
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1], [bx, by] = line[i];
    const length = Math.hypot(bx - ax, by - ay);
    if (!length) continue;
    const [tx, ty] = [(bx - ax) / length, (by - ay) / length];
    for (; left <= length; left += step) {
      for (const [path, shift] of [[furrows, 0], [lit, step * .4]]) {
        const at = (s, across) => [ax + tx * (left + s + shift) - ty * across, ay + ty * (left + s + shift) + tx * across];
        path.moveTo(...at(-step * .8, -half));
        path.bezierCurveTo(...at(-step * .5, -half * .5), ...at(step * .5, half * .5), ...at(step * .8, half));
      }
    }
    left -= length;
  }
  for (const [path, style, alpha, thick] of [[furrows, dark, .42, .1], [lit, light, .22, .16]]) {
    context.globalAlpha = alpha;
    context.strokeStyle = style;
    context.lineWidth = Math.max(.5, width * thick);
    context.stroke(path);
  }
  context.globalAlpha = 1;
}

// Where a strand goes down behind others its ends lie in their shade.
function dive(context, line, width) {
  context.strokeStyle = 'rgb(0 0 0 / .07)';
  context.lineWidth = width * .96;
  for (const share of [.22, .16, .11, .07, .03]) {
    for (const end of [part(line, 0, share), part(line, 1, 1 - share)]) {
      // Round where it ends, and cut straight where it goes on.
      context.lineCap = 'butt';
      trace(context, end, 0);
      const [[x, y], [nx, ny]] = end, angle = Math.atan2(y - ny, x - nx);
      context.fillStyle = context.strokeStyle;
      context.beginPath();
      context.arc(x, y, width * .48, angle - Math.PI / 2, angle + Math.PI / 2);
      context.fill();
    }
  }
}

function trace(context, line, shift) {
  context.beginPath();
  line.forEach(([x, y], i) => i ? context.lineTo(x + shift, y + shift) : context.moveTo(x + shift, y + shift));
  context.stroke();
}

// Falls down to the right, on what lies behind.
function shadow(context, line, width) {
  context.lineCap = context.lineJoin = 'round';
  context.strokeStyle = 'rgb(0 0 0 / .17)';
  for (const [share, shift] of [[1.12, .06], [1, .14]]) {
    context.lineWidth = width * share;
    trace(context, line, width * shift);
  }
}

function tones(colour, deep) {
  const parts = [colour >> 16 & 255, colour >> 8 & 255, colour & 255].map(c => c * (1 - .35 * deep));
  const css = channels => `rgb(${channels.map(c => Math.round(Math.min(255, c))).join(' ')})`;
  const tone = change => css(parts.map(change));
  return { dark: tone(c => c * .72), body: tone(c => c * 1.05 + 2), light: tone(c => c * 1.05 + (255 - c) * .28 + 6) };
}

const numbers = css => css.match(/\d+/g).map(Number);
const mixed = (a, b, share) => {
  const other = numbers(b);
  return `rgb(${numbers(a).map((c, i) => Math.round(c + (other[i] - c) * share)).join(' ')})`;
};

// A smooth line through points, finely divided.
function curve(points) {
  const line = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b, c, d] = [points[Math.max(0, i - 1)], points[i], points[i + 1], points[Math.min(points.length - 1, i + 2)]];
    for (let s = i ? 1 : 0; s <= 6; s++) {
      const t = s / 6;
      line.push([0, 1].map(k => .5 * (2 * b[k] + (c[k] - a[k]) * t + (2 * a[k] - 5 * b[k] + 4 * c[k] - d[k]) * t * t
        + (3 * b[k] - a[k] - 3 * c[k] + d[k]) * t * t * t)));
    }
  }
  return line;
}

// The stretch of a line between two shares of its points; backwards where the first is the larger.
function part(line, from, to) {
  if (from > to) return part(line, to, from).reverse();
  const last = line.length - 1;
  const at = share => {
    const i = Math.min(last - 1, Math.floor(share * last)), t = share * last - i;
    return [line[i][0] + (line[i + 1][0] - line[i][0]) * t, line[i][1] + (line[i + 1][1] - line[i][1]) * t];
  };
  return [at(from), ...line.filter((_, i) => i > from * last && i < to * last), at(to)];
}

function seeded(seed) {
  return () => (seed = (seed * 16807) % 2147483647) / 2147483647;
}
