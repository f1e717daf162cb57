// The ruler of finished measures: how wide its window is, and where it is scrolled.
export const width = id => document.getElementById(id)?.clientWidth ?? 0;

export const scrolled = id => document.getElementById(id)?.scrollLeft ?? 0;

export function scroll(id, left) {
  const element = document.getElementById(id);
  if (element) element.scrollLeft = left;
}
