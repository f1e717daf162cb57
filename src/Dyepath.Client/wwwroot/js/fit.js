// The ruler of finished measures: how wide its window is, where it is scrolled, and hands that pull a size stay with it.
addEventListener('pointerdown', event => {
  if (event.target instanceof Element && event.target.matches('.fit-size')) event.target.setPointerCapture(event.pointerId);
});

export const width = id => document.getElementById(id)?.clientWidth ?? 0;

export const scrolled = id => document.getElementById(id)?.scrollLeft ?? 0;

export function scroll(id, left) {
  const element = document.getElementById(id);
  if (element) element.scrollLeft = left;
}
