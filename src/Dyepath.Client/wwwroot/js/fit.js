// The ruler of finished measures: how wide its window is, where it is scrolled, and hands that pull a size stay with it.
addEventListener('pointerdown', event => {
  if (event.target instanceof Element && event.target.matches('.fit-size')) event.target.setPointerCapture(event.pointerId);
});

let tell = () => { };
const sizes = new ResizeObserver(entries => {
  for (const { target } of entries) if (target.isConnected && target.clientWidth) tell(target.clientWidth);
});

// Tells a window's width, now and whenever it has become another.
export function watch(id, told) {
  sizes.disconnect();
  tell = told;
  const element = document.getElementById(id);
  if (element) sizes.observe(element);
}

export const scrolled = id => document.getElementById(id)?.scrollLeft ?? 0;

export function scroll(id, left) {
  const element = document.getElementById(id);
  if (element) element.scrollLeft = left;
}
