// What a phone can do for busy hands. Nothing here runs while nobody acts.
const kept = 'dyepath.';
export const load = name => localStorage.getItem(kept + name);
export const save = (name, text) => localStorage.setItem(kept + name, text);

// Space, enter and page-down finish, so that foot pedals work too; page-up and backspace take back. A held key counts once.
const names = { ' ': 'done', Enter: 'done', PageDown: 'done', Backspace: 'back', PageUp: 'back', o: 'on', e: 'early', l: 'late' };
let pressed = null;

export function keys(callback) {
  if (!pressed) { addEventListener('keydown', key); addEventListener('click', once, true); addEventListener('click', letGo); }
  pressed = callback;
}

export function noKeys() {
  removeEventListener('keydown', key);
  removeEventListener('click', once, true);
  removeEventListener('click', letGo);
  pressed = null;
}

// Two taps within this time are one: no colour is worked in it. By the taps' own times, which a busy phone does not put off.
const double = 300;
let finished = -Infinity;

// What finishes or tells of a look; what takes back is never held up.
function once(event) {
  if (!event.target.closest?.('.make-done, .make-three button:not([aria-expanded]), .make-looks button, .make-offs button')) return;
  if (event.timeStamp - finished >= double) { finished = event.timeStamp; return; }
  event.stopImmediatePropagation();
  event.preventDefault();
}

// A finger that taps a button leaves the keyboard on it, and a pedal would press it again.
function letGo(event) {
  if (event.detail > 0 && event.target.closest?.('.make-foot')) document.activeElement?.blur();
}

function key(event) {
  if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
  const name = names[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!name) return;
  const at = event.target.closest?.('input, select, textarea, button, a, summary');
  // A button under the keyboard's own focus does what it says, but the great one is the same as the key.
  if (at && (at.matches('input, select, textarea') || ((event.key === ' ' || event.key === 'Enter') && !at.matches('.make-done')))) return;
  event.preventDefault();
  if (!event.repeat) pressed?.(name);
}

// Some browsers press a button when the space bar is let go.
addEventListener('keyup', event => { if (pressed && event.key === ' ' && event.target.matches?.('.make-done')) event.preventDefault(); });

export const able = what => what === 'speak' ? 'speechSynthesis' in globalThis : 'vibrate' in navigator;

export function speak(words, rate, voice) {
  if (!('speechSynthesis' in globalThis)) return;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(words);
  said.rate = rate;
  const chosen = voice && speechSynthesis.getVoices().find(v => v.name === voice);
  if (chosen) { said.voice = chosen; said.lang = chosen.lang; } else said.lang = document.documentElement.lang;
  speechSynthesis.speak(said);
}

export const hush = () => globalThis.speechSynthesis?.cancel();
export const voices = () => (globalThis.speechSynthesis?.getVoices() ?? []).flatMap(v => [v.name, v.lang]);
export const buzz = milliseconds => { navigator.vibrate?.(milliseconds); };

// One lock at a time: nobody would release another.
let lock = null, asking = false, wanted = false;
async function ask() {
  if (!wanted || lock || asking || document.visibilityState !== 'visible') return;
  asking = true;
  try {
    const given = lock = await navigator.wakeLock?.request('screen') ?? null;
    given?.addEventListener('release', () => { if (lock === given) lock = null; });
  } catch { /* A battery that is nearly empty, or no secure connection: the screen sleeps as it is used to. */ }
  asking = false;
  if (!wanted) release();
}

function release() {
  lock?.release();
  lock = null;
}

export function awake(on) {
  wanted = on;
  if (on) ask();
  else release();
}
document.addEventListener('visibilitychange', ask);

export const top = () => scrollTo(0, 0);

// The work again after a panel: from its top, with the keyboard on the great button.
export function ready() {
  document.querySelector('.make-done')?.focus({ preventScroll: true });
  scrollTo(0, 0);
}
