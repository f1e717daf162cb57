// An open page belongs to one version: all its files are asked for under that version's address, from which this file came.
// A newer version is taken by all tabs together, when none of them has anything under way.
export const version = /\/v\/([^/]+)\//.exec(new URL(import.meta.url).pathname)?.[1] ?? null;

const container = navigator.serviceWorker;
const locks = navigator.locks;

// Held by every page for as long as it is open, so that the worker keeps its version.
const opened = 'dyepath-';
// Held by a page while something is unsaved, computed or typed; and while it has what a reload forgets, such as undo.
const busy = 'dyepath.busy';
const forgetful = 'dyepath.forgetful';

const unseenFor = 5 * 60_000;
// Ended by the first touch of a key or of the pointer.
const pauseLasts = 60_000;
const askEvery = 10 * 60_000;
// Of a page that is opening, and of one that has time.
const shortly = 3_000;
const patience = 30_000;
// While every kept file is read and weighed, and what is broken fetched; a slow machine takes minutes.
const mending = 4 * 60_000;

let waiting = null;
let outdated = false;
let gone = false;
let reopens = false;
let wanted = false;
let pausedUntil = 0;
let saved = true;
let typed = null;
let told = () => { };
let engine = null;

const within = (milliseconds, promise, otherwise) =>
  Promise.race([promise, new Promise(resolve => setTimeout(resolve, milliseconds, otherwise))]);

const ask = (worker, question, milliseconds = patience) => within(milliseconds, new Promise(resolve => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = event => resolve(event.data);
  worker.postMessage(question, [port2]);
}), null);

// A worker that is only starting may be too slow to answer: it is asked again for as long as it is there.
async function versionOf(worker) {
  for (; ;) {
    const answer = await ask(worker, 'version');
    if (answer !== null || worker.state === 'redundant') return answer;
  }
}

// Once: asked again while the page is on its way, the browser begins anew with it.
function reopen() {
  if (reopens) return;
  reopens = true;
  location.reload();
}

const held = new Map();
function hold(name, on) {
  if (!locks || on === held.has(name)) return;
  if (on) {
    let release;
    const until = new Promise(resolve => { release = resolve; });
    held.set(name, { release, ended: locks.request(name, { mode: 'shared' }, () => until) });
  } else {
    const { release, ended } = held.get(name);
    release();
    held.delete(name);
    return ended;
  }
}

const activated = worker => new Promise(resolve => {
  const look = () => { if (worker.state === 'activated' || worker.state === 'redundant') resolve(worker.state === 'activated'); };
  worker.addEventListener('statechange', look);
  look();
});

// Before the program starts. Where no other tab is open, what waits is taken at once.
// Returns whether the page is being opened again.
export async function begin() {
  if (!container) return false;
  const registration = await within(shortly, container.getRegistration().catch(() => null), null);
  if (registration?.waiting && locks && !(await locks.query()).held.some(lock => lock.name.startsWith(opened))) {
    const next = registration.waiting;
    if (![null, version].includes(await ask(next, 'version', shortly))) {
      next.postMessage('take');
      if (await within(shortly, activated(next), false)) {
        reopen();
        return true;
      }
    }
  }
  if (version) hold(opened + version, true);
  container.addEventListener('controllerchange', controlled);
  container.register('/service-worker.js', { updateViaCache: 'none' }).then(watch).catch(() => { });
  return false;
}

async function watch(registration) {
  if (!registration) return;
  const follow = () => {
    const next = registration.installing;
    next?.addEventListener('statechange', () => { if (next.state === 'installed') found(registration); });
  };
  registration.addEventListener('updatefound', follow);
  // What was being installed before this page listened is told by no event.
  follow();
  found(registration);
  let asked = Date.now();
  const update = () => {
    if (document.hidden || Date.now() - asked < askEvery) return;
    asked = Date.now();
    registration.update().catch(() => { });
  };
  setInterval(update, askEvery);
  document.addEventListener('visibilitychange', update);
  if (registration.active && await versionOf(registration.active) === version) registration.active.postMessage('opened');
}

async function found(registration) {
  const next = registration.waiting;
  if (!next || !container.controller || [null, version].includes(await versionOf(next))) return;
  waiting = next;
  tell();
  settle();
}

async function controlled() {
  const now = container.controller && await versionOf(container.controller);
  if (now && now !== version) outlived();
}

// Another version is at work: this page opens again as soon as it is at rest.
function outlived() {
  outdated = true;
  tell();
  settle();
}

const isAtRest = () => saved && !typed?.isConnected;

const isPausing = () => performance.now() < pausedUntil;

// Takes the new version if this is the moment; looks again in a second only where it may be the moment then.
let settling = false;
let again = null;
async function settle() {
  clearTimeout(again);
  if (outdated && isAtRest()) reopen();
  again = !reopens && (outdated || (waiting && (wanted || isPausing()))) ? setTimeout(settle, 1_000) : null;
  if (!waiting || outdated || settling || !locks || !isAtRest() || !(wanted || isPausing())) return;
  settling = true;
  try {
    const taken = await alone(wanted ? [busy] : [busy, forgetful], () => {
      waiting.postMessage('take');
      return within(patience, activated(waiting), false);
    });
    // She may have begun to type meanwhile.
    if (taken) outlived();
  } finally {
    settling = false;
  }
}

// Does it where no tab holds any of the locks.
const alone = ([name, ...rest], work) => name === undefined ? work()
  : locks.request(name, { ifAvailable: true }, lock => lock !== null && alone(rest, work));

// What the program knows of: whether all is kept and nothing is being computed, and whether something could be undone.
export function rest(isSaved, undoable) {
  saved = isSaved;
  Promise.all([weigh(), hold(forgetful, undoable)]).then(settle);
}

const weigh = () => hold(busy, !isAtRest());

// Between two pages of the program nothing is half done.
export function pause() {
  pausedUntil = performance.now() + pauseLasts;
  settle();
}

export function take() {
  wanted = true;
  tell();
  settle();
}

// What a field holds is the program's when it is left.
addEventListener('input', event => {
  if (event.target.matches?.('input:not([type="checkbox"], [type="radio"], [type="range"], [type="color"], [type="file"]), textarea')) typed = event.target;
  weigh();
}, true);
for (const name of ['change', 'focusout']) {
  addEventListener(name, event => {
    if (event.target !== typed) return;
    // After the program has heard of it.
    setTimeout(() => {
      typed = null;
      weigh();
      settle();
    });
  }, true);
}
for (const name of ['pointerdown', 'keydown', 'wheel'])
  addEventListener(name, () => { pausedUntil = 0; }, { capture: true, passive: true });

let unseen = null;
document.addEventListener('visibilitychange', () => {
  clearTimeout(unseen);
  pausedUntil = 0;
  if (document.hidden) {
    unseen = setTimeout(() => {
      if (document.hidden) pausedUntil = Infinity;
      settle();
    }, unseenFor);
  }
});

// Where something could not be fetched: whether the host still has this version.
export async function check() {
  if (!version || gone) return;
  const answer = await fetch(`/v/${version}/js/worker.js`, { method: 'HEAD', cache: 'no-store' }).catch(() => null);
  if (answer?.status === 410) mix();
}

// Something of another version was found, or nothing more of this one is to be had.
export function mix() {
  gone = true;
  tell();
}

let start;
export const started = new Promise(resolve => { start = resolve; });

// The program is about to show its first page.
export function listen(ownEngine, callback) {
  start();
  engine = ownEngine;
  told = callback;
  tell();
}

const tell = () => told(gone ? 'gone' : outdated || waiting && wanted ? 'wanted' : waiting && locks ? 'waits' : '');

// What the second runtime has to be, too.
export const ownEngine = () => engine;

// After a start that failed: puts right what is kept. Returns whether it is worth another try; only one a session.
export async function mend() {
  try {
    if (sessionStorage.getItem('dyepath.mended')) return false;
    sessionStorage.setItem('dyepath.mended', 'yes');
  } catch {
    return false;
  }
  return !!container?.controller && await ask(container.controller, 'mend', mending) > 0;
}
