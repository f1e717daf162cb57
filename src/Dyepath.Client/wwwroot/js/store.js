// What is kept on this device, in IndexedDB.
// projects: { id, text, name, etag, dirty, revision, archived, updatedAt, swatch }.
// makings: { id, projectId, key, title, size, text, etag, sent, differs, revision, begunAt, updatedAt }, the text with an empty log.
// taps: the entries of the makings' logs, each by itself, by [making, number from 0], so that a tap writes one small record.
let opening = null;

function open() {
  return opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open('dyepath', 2);
    request.onupgradeneeded = event => {
      const database = request.result;
      if (event.oldVersion < 1) database.createObjectStore('projects', { keyPath: 'id' });
      if (event.oldVersion < 2) {
        database.createObjectStore('makings', { keyPath: 'id' });
        database.createObjectStore('taps');
      }
    };
    request.onsuccess = () => {
      request.result.onclose = () => { opening = null; };
      request.result.onversionchange = () => { request.result.close(); opening = null; };
      resolve(request.result);
    };
    request.onerror = () => { opening = null; reject(request.error); };
  });
}

async function within(mode, names, work) {
  const database = await open();
  return await new Promise((resolve, reject) => {
    // Strict: what is said to be saved is on the disk, also when the battery dies in the next moment.
    const transaction = database.transaction(names, mode, { durability: 'strict' });
    let answer;
    transaction.oncomplete = () => resolve(answer);
    transaction.onerror = transaction.onabort = () => reject(transaction.error);
    work(value => { answer = value; }, ...names.map(name => transaction.objectStore(name)));
  });
}

const ask = (request, told) => { request.onsuccess = () => told(request.result); };

const projects = ['projects'];

export async function get(id) {
  const record = await within('readonly', projects, (answer, store) => ask(store.get(id), answer));
  return record ? JSON.stringify(record) : null;
}

export async function list() {
  const records = await within('readonly', projects, (answer, store) => ask(store.getAll(), answer));
  return JSON.stringify(records.map(({ text, ...rest }) => rest));
}

// Writes where the revision is still the one that was read; returns the new one, or -1 where another tab was quicker.
export const put = (json, expected) => within('readwrite', projects, (answer, store) => {
  const record = JSON.parse(json);
  ask(store.get(record.id), now => {
    if ((now?.revision ?? 0) !== expected) { answer(-1); return; }
    record.revision = expected + 1;
    store.put(record);
    answer(record.revision);
  });
});

export const remove = id => within('readwrite', projects, (answer, store) => { store.delete(id); answer(true); });

const making = ['makings', 'taps'];
const tapsOf = id => IDBKeyRange.bound([id, 0], [id, Infinity]);

export async function getMaking(id) {
  const kept = await within('readonly', making, (answer, headers, taps) => {
    ask(headers.get(id), header => header && ask(taps.getAll(tapsOf(id)), entries => answer({ header, entries })));
  });
  return kept ? JSON.stringify(kept) : null;
}

// Without their texts, with the number of entries and when the last one was made.
export async function listMakings() {
  const found = await within('readonly', making, (answer, headers, taps) => ask(headers.getAll(), records => {
    const listed = records.map(({ text, ...rest }) => ({ ...rest, entries: 0 }));
    for (const header of listed) {
      ask(taps.openCursor(tapsOf(header.id), 'prev'), last => {
        if (last) [header.entries, header.updatedAt] = [last.key[1] + 1, last.value.at];
      });
    }
    answer(listed);
  }));
  return JSON.stringify(found);
}

// False where there is one already.
export const addMaking = json => within('readwrite', making, (answer, headers, taps) => {
  const { header, entries } = JSON.parse(json);
  ask(headers.getKey(header.id), taken => {
    if (!taken) {
      headers.add(header);
      entries.forEach((entry, n) => taps.add(entry, [header.id, n]));
    }
    answer(!taken);
  });
});

// False where the log, in another tab, has grown, was written anew or was put away.
export const addTap = (id, revision, n, json) => within('readwrite', making, (answer, headers, taps) => ask(headers.get(id), header => {
  if (header?.revision !== revision) { answer(false); return; }
  ask(taps.count(IDBKeyRange.bound([id, Math.max(0, n - 1)], [id, n])), near => {
    // The entry before it, and nothing in its place.
    const next = near === Math.min(n, 1);
    if (next) taps.add(JSON.parse(json), [id, n]);
    answer(next);
  });
}));

// What the host has; the log stays. False where document or log were written anew meanwhile.
export const putMaking = json => within('readwrite', ['makings'], (answer, headers) => {
  const header = JSON.parse(json);
  ask(headers.get(header.id), now => {
    const same = now?.revision === header.revision;
    if (same) headers.put(header);
    answer(same);
  });
});

// Writes document and log anew, under the next revision, where both are still as they were read.
export const replaceMaking = (json, had) => within('readwrite', making, (answer, headers, taps) => {
  const { header, entries } = JSON.parse(json);
  ask(headers.get(header.id), now => ask(taps.count(tapsOf(header.id)), count => {
    const same = now?.revision === header.revision && count === had;
    if (same) {
      headers.put({ ...header, revision: header.revision + 1 });
      taps.delete(tapsOf(header.id));
      entries.forEach((entry, n) => taps.add(entry, [header.id, n]));
    }
    answer(same);
  }));
});

export const removeMaking = id => within('readwrite', making, (answer, headers, taps) => {
  headers.delete(id);
  taps.delete(tapsOf(id));
  answer(true);
});

export async function persist() {
  return await navigator.storage?.persist?.() ?? false;
}

const channel = name => 'BroadcastChannel' in globalThis ? new BroadcastChannel(`dyepath.${name}`) : null;
const channels = { projects: channel('projects'), makings: channel('makings') };
export const announce = (what, id) => channels[what]?.postMessage(id);
export function listen(what, changed, online) {
  if (channels[what]) channels[what].onmessage = event => changed(event.data);
  addEventListener('online', () => online());
}
export function watch(seen) {
  document.addEventListener('visibilitychange', () => seen(document.visibilityState === 'visible'));
}
