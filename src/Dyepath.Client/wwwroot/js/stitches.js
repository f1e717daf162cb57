// Stitches drawn as stitches: a tile of two rows of two that repeats over the fabric, redrawn when the zoom changes.
// Within a stitch, u runs along the row and v up from its foot; on the wrong side of turned work the loops lie across.
const looks = {
  sc: {
    right: [[[.1, .9], [.5, .08], [.9, .9]]],
    wrong: [[[.08, .62], [.3, .74], [.7, .74], [.92, .62]], [[.3, .3], [.5, .2], [.7, .3]]],
  },
  hdc: {
    right: [[[.1, .94], [.5, .05], [.9, .94]], [[.16, .6], [.84, .6]]],
    wrong: [[[.06, .78], [.5, .9], [.94, .78]], [[.06, .52], [.5, .62], [.94, .52]], [[.5, .4], [.5, .05]]],
  },
  dc: {
    right: [[[.1, .96], [.5, .8], [.9, .96]], [[.42, .8], [.42, .04]], [[.58, .8], [.58, .04]], [[.3, .38], [.7, .54]]],
    wrong: [[[.06, .88], [.5, .96], [.94, .88]], [[.42, .82], [.42, .04]], [[.58, .82], [.58, .04]], [[.3, .54], [.7, .38]]],
  },
};
// A single crochet, then the chain over the one below.
const chain = [[[.1, .5], [.3, .7], [.7, .7], [.9, .5], [.7, .32], [.3, .32], [.1, .5]]];

// The tile of a patch whose stitches are so many pixels along the row and up.
export function tile(stitch, patch, along, up) {
  const size = [Math.max(1, Math.round(2 * along)), Math.max(1, Math.round(2 * up))];
  const across = patch.sideways ? size[1] : size[0], down = patch.sideways ? size[0] : size[1];
  const canvas = new OffscreenCanvas(across, down);
  const context = canvas.getContext('2d');
  context.strokeStyle = 'rgb(0 0 0 / .38)';
  context.lineCap = context.lineJoin = 'round';
  context.lineWidth = Math.max(1, Math.min(along, up) * 0.08);
  context.beginPath();
  for (let row = 0; row < 2; row++) {
    const wrong = patch.turned && (row === 1) !== patch.over;
    for (let s = 0; s < 2; s++) {
      for (const line of strokes(stitch, wrong, (row + s) % 2 === 1)) {
        line.forEach(([u, v], i) => {
          // The tile's first row lies at its bottom, or sideways at its left; turned over, at its right.
          const x = patch.sideways ? (patch.over ? 2 - row - v : row + v) * across / 2 : (s + u) * across / 2;
          const y = patch.sideways ? (s + u) * down / 2 : (2 - row - v) * down / 2;
          if (i) context.lineTo(x, y);
          else context.moveTo(x, y);
        });
      }
    }
  }
  context.stroke();
  return canvas;
}

const strokes = (stitch, wrong, chained) =>
  stitch === 'linen' ? (chained ? chain : looks.sc[wrong ? 'wrong' : 'right']) : (looks[stitch] ?? looks.sc)[wrong ? 'wrong' : 'right'];
