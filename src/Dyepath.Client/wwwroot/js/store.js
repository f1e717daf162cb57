// Projects on this device, in IndexedDB. A record is { id, text, name, etag, dirty, revision, archived, updatedAt, swatch }.
const name = 'dyepath', kept = 'projects';
let opening = null;

function open() {
  return opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(kept, { keyPath: 'id' });
    request.onsuccess = () => {
      request.result.onclose = () => { opening = null; };
      request.result.onversionchange = () => { request.result.close(); opening = null; };
      resolve(request.result);
    };
    request.onerror = () => { opening = null; reject(request.error); };
  });
}

async function within(mode, work) {
  const database = await open();
  return await new Promise((resolve, reject) => {
    // Strict: what is said to be saved is on the disk, also when the battery dies in the next moment.
    const transaction = database.transaction(kept, mode, { durability: 'strict' });
    let answer;
    transaction.oncomplete = () => resolve(answer);
    transaction.onerror = transaction.onabort = () => reject(transaction.error);
    work(transaction.objectStore(kept), value => { answer = value; });
  });
}

export async function get(id) {
  const record = await within('readonly', (store, answer) => {
    const request = store.get(id);
    request.onsuccess = () => answer(request.result);
  });
  return record ? JSON.stringify(record) : null;
}

export async function list() {
  const records = await within('readonly', (store, answer) => {
    const request = store.getAll();
    request.onsuccess = () => answer(request.result);
  });
  return JSON.stringify(records.map(({ text, ...rest }) => rest));
}

// Writes where the revision is still the one that was read; returns the new one, or -1 where another tab was quicker.
export const put = (json, expected) => within('readwrite', (store, answer) => {
  const record = JSON.parse(json);
  const request = store.get(record.id);
  request.onsuccess = () => {
    if ((request.result?.revision ?? 0) !== expected) { answer(-1); return; }
    record.revision = expected + 1;
    store.put(record);
    answer(record.revision);
  };
});

export const remove = id => within('readwrite', (store, answer) => { store.delete(id); answer(true); });

export async function persist() {
  return await navigator.storage?.persist?.() ?? false;
}

const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('dyepath.projects') : null;
export const announce = id => channel?.postMessage(id);
export function listen(changed, online) {
  if (channel) channel.onmessage = event => changed(event.data);
  addEventListener('online', () => online());
}
