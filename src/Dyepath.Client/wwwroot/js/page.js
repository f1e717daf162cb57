export const theme = () => document.documentElement.dataset.theme ?? '';

export function setTheme(name) {
  if (name) {
    document.documentElement.dataset.theme = name;
    localStorage.setItem('dyepath.theme', name);
  } else {
    delete document.documentElement.dataset.theme;
    localStorage.removeItem('dyepath.theme');
  }
}

export function download(name, type, bytes) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export function askBeforeLeaving(asks) {
  onbeforeunload = asks ? event => event.preventDefault() : null;
}

export function focus(id) {
  const element = document.getElementById(id);
  if (!element) return;
  for (let closed = element.closest('details:not([open])'); closed; closed = closed.parentElement.closest('details:not([open])')) closed.open = true;
  element.focus({ preventScroll: true });
  // As with the Tab key: what is typed takes the place of what stands there.
  if (element.matches('input[type="text"]')) element.select();
  element.scrollIntoView({ block: 'center' });
}

export function placeIn(x, y, selector) {
  const box = document.querySelector(selector).getBoundingClientRect();
  return [(x - box.left) / box.width, (y - box.top) / box.height];
}

export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

// The key may stand in the address still where that was changed in an open window, or nothing can be kept; else js/key.js took it.
export function takeKey() {
  const fragment = location.hash.slice(1);
  if (fragment) history.replaceState(history.state, '', location.pathname + location.search);
  const waiting = waitingKey();
  return fragment || waiting;
}

function waitingKey() {
  try {
    const key = sessionStorage.getItem('dyepath.key') ?? '';
    sessionStorage.removeItem('dyepath.key');
    return key;
  } catch {
    return '';
  }
}

// Of the steps that scroll in a narrow window, the one at hand.
export function reveal(selector) {
  document.querySelector(selector)?.scrollIntoView({ block: 'nearest', inline: 'center' });
}

let pressed = null;
export function shortcuts(callback) {
  if (!pressed) {
    addEventListener('keydown', event => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const name = key === 'z' ? (event.shiftKey ? 'redo' : 'undo') : key === 'y' ? 'redo' : null;
      if (!name) return;
      event.preventDefault();
      pressed(name);
    });
  }
  pressed = callback;
}

// The notice of last resort offers the document as long as a project is open.
let inReach = null;
const last = document.querySelector('#last-save');

export function keepInReach(text, name) {
  inReach = { text, name };
  last.hidden = false;
}

export function letGo() {
  inReach = null;
  last.hidden = true;
}

last.addEventListener('click', () => {
  try {
    download(inReach.name(), 'application/json', new TextEncoder().encode(inReach.text()));
  } catch {
    last.replaceWith('The file cannot be made here any more: open the page again, and export the document on the shelf.');
  }
});
