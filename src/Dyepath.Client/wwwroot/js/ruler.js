// A ruler of sections: boundaries are dragged along it, sections to another place among the others.
const keys = new Set(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End']);
const least = 8;

export function follow(id, boundary, section, ended) {
  const ruler = document.getElementById(id);
  if (!ruler) return;
  ruler.addEventListener('keydown', event => {
    // The page must not scroll while a boundary moves; Blazor hears the key as well.
    if (event.target.closest('[role="slider"]') && keys.has(event.key)) event.preventDefault();
  });
  ruler.addEventListener('pointerdown', event => {
    if (event.button !== 0) return;
    const slider = event.target.closest('[data-boundary]'), part = event.target.closest('[data-part]');
    if (!slider && (!part || event.pointerType === 'touch')) return;
    // The scale stands still while a boundary moves, also where the whole grows.
    const box = ruler.getBoundingClientRect(), from = event.clientX, scale = +ruler.dataset.total;
    const offset = slider ? from - (slider.getBoundingClientRect().left + slider.getBoundingClientRect().right) / 2 : 0;
    let moving = !!slider;
    const share = e => (e.clientX - offset - box.left) / box.width;
    const move = e => {
      moving ||= Math.abs(e.clientX - from) > least;
      if (!moving) return;
      e.preventDefault();
      if (slider) boundary(+slider.dataset.boundary, share(e) * scale);
      else section(+part.dataset.part, share(e), false);
    };
    const up = e => {
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', up);
      removeEventListener('pointercancel', up);
      if (!moving) return;
      if (part && !slider && e.type === 'pointerup') section(+part.dataset.part, share(e), true);
      ended();
    };
    addEventListener('pointermove', move, { passive: false });
    addEventListener('pointerup', up);
    addEventListener('pointercancel', up);
    if (slider) { slider.focus(); event.preventDefault(); }
  });
}
