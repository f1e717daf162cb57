// How the yarn lies in each stitch, seen from the side that it shows: the one place where stitches' shapes stand.
// u runs along the row, left to right over one stitch, v up from its foot at 0 to its top at 1; both may lie a little beyond.
// A front is worked from right to left, a back from left to right. The strands farthest from the eye come first:
// thick: in widths of a stitch. yarn: from and to which share of the stitch's yarn, the points in the order in which it runs.
// deep: how much darker it lies, 0 to 1.
const strand = (thick, yarn, deep, ...points) => ({ thick, yarn, deep, points });

// What fills the post between its legs, seen from the front.
const core = (v, yarn) => strand(.5, yarn, .6, [.74, v], [.5, v - .02], [.26, v]);

// The nearer of the two loops on top, lying across the row; the next row's legs come over it.
const brim = (v, thick, yarn, back = false) => back
  ? strand(thick, yarn, .1, [-.12, v - .05], [.14, v + .01], [.5, v + .035], [.86, v + .02], [1.12, v - .04])
  : strand(thick, yarn, 0, [1.12, v - .05], [.86, v + .01], [.5, v + .035], [.14, v + .02], [-.12, v - .04]);

// One chain of three that stand upright: two strands round a hole. across: seen from the other side, left is right.
const link = (at, across) => [.05, 0].map((deep, second) => strand(
  .3, [at + second / 6, at + (second + 1) / 6], deep,
  ...[[.5, -.1], [.76, .1], [.74, .24], [.5, .4]].map(([u, v]) => [across(second ? 1 - u : u), at + v])));

export const stitches = {
  // A short post: its loop comes out of one hole and opens upwards.
  sc: {
    front: [
      core(.42, [.3, .6]),
      brim(.92, .27, [.6, 1]),
      strand(.37, [0, .3], 0, [.55, -.1], [.63, .06], [.8, .42], [.95, .8]),
      strand(.37, [.3, .6], 0, [.07, .82], [.2, .42], [.4, .06], [.48, -.1]),
    ],
    // From behind the yarn lies across the post as a bump, the loop's feet under it.
    back: [
      brim(.95, .26, [.6, 1], true),
      strand(.33, [0, .2], .22, [.26, -.1], [.28, .06], [.38, .46]),
      strand(.33, [.2, .35], .22, [.64, .46], [.74, .06], [.76, -.1]),
      strand(.4, [.35, .6], 0, [-.12, .3], [.12, .5], [.5, .6], [.88, .5], [1.12, .28]),
    ],
  },
  // One wrap more: it lies slanting over the post, and from behind as a third loop below the top.
  hdc: {
    front: [
      core(.66, [.42, .7]),
      brim(.94, .27, [.7, 1]),
      strand(.36, [.2, .42], 0, [.57, -.06], [.61, .1], [.77, .5], [.93, .86]),
      strand(.36, [.42, .7], 0, [.09, .88], [.23, .5], [.4, .1], [.46, -.06]),
      strand(.31, [0, .2], 0, [.98, .24], [.76, .36], [.38, .53], [.06, .58]),
    ],
    back: [
      brim(.97, .25, [.75, 1], true),
      strand(.33, [.2, .38], .16, [.32, -.06], [.32, .14], [.4, .66]),
      strand(.33, [.38, .55], .16, [.62, .66], [.7, .14], [.72, -.06]),
      strand(.3, [0, .2], .05, [.02, .2], [.3, .27], [.68, .42], [.98, .5]),
      strand(.38, [.55, .75], 0, [-.14, .56], [.14, .7], [.5, .75], [.86, .7], [1.14, .54]),
    ],
  },
  // A tall post in two storeys with the wrap about its middle.
  dc: {
    front: [
      brim(.95, .27, [.75, 1]),
      strand(.34, [.2, .35], .02, [.66, -.03], [.68, .1], [.64, .3], [.56, .48]),
      strand(.34, [.35, .48], .02, [.4, .48], [.33, .3], [.33, .1], [.4, -.03]),
      strand(.35, [.48, .6], 0, [.54, .4], [.63, .58], [.78, .74], [.95, .92]),
      strand(.35, [.6, .75], 0, [.07, .92], [.24, .74], [.38, .58], [.45, .4]),
      strand(.31, [0, .2], 0, [.94, .3], [.74, .36], [.3, .5], [.08, .54]),
    ],
    back: [
      brim(.98, .25, [.8, 1], true),
      strand(.34, [.2, .34], .08, [.38, -.03], [.33, .1], [.36, .3], [.42, .52]),
      strand(.34, [.34, .48], .08, [.6, .52], [.66, .3], [.68, .1], [.64, -.03]),
      strand(.32, [.48, .56], .05, [.42, .42], [.36, .6], [.26, .84]),
      strand(.32, [.56, .64], .05, [.76, .84], [.66, .6], [.6, .42]),
      strand(.31, [0, .2], 0, [.06, .25], [.3, .32], [.72, .45], [.96, .5]),
      strand(.36, [.64, .8], 0, [-.12, .68], [.16, .8], [.5, .84], [.86, .8], [1.12, .66]),
    ],
  },
  // Round the chain of the row below, so that its legs are longer and the chain shows beside them.
  linen: {
    front: [
      core(.46, [.3, .6]),
      brim(.92, .27, [.6, 1]),
      strand(.36, [0, .3], 0, [.56, -.44], [.64, -.16], [.78, .3], [.93, .78]),
      strand(.36, [.3, .6], 0, [.09, .8], [.22, .3], [.39, -.16], [.47, -.44]),
    ],
    back: [
      brim(.95, .25, [.6, 1], true),
      strand(.34, [0, .2], .08, [.36, -.44], [.32, -.1], [.38, .42]),
      strand(.34, [.2, .35], .08, [.64, .42], [.7, -.1], [.66, -.44]),
      strand(.39, [.35, .6], 0, [-.1, .3], [.14, .5], [.5, .6], [.86, .5], [1.1, .28]),
    ],
  },
  // A chain over the stitch below: two strands of one link, lying along the row.
  chain: {
    front: [
      strand(.36, [0, .5], .05, [1.34, .46], [.9, .36], [.4, .38], [-.2, .6]),
      strand(.36, [.5, 1], 0, [1.3, .66], [.86, .82], [.4, .78], [-.2, .58]),
    ],
    back: [
      strand(.36, [0, .5], .08, [-.34, .46], [.1, .36], [.6, .38], [1.2, .6]),
      strand(.36, [.5, 1], .02, [-.3, .66], [.14, .82], [.6, .78], [1.2, .58]),
    ],
  },
  // Chains that stand for a row's first stitch, one link on the other.
  turn: { front: [0, 1, 2].flatMap(at => link(at / 3, u => u)), back: [0, 1, 2].flatMap(at => link(at / 3, u => 1 - u)) },
};
