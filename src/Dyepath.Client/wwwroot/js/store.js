// What is kept on this device, in IndexedDB. Every tab writes copies of its own, by [id, writer], and no other tab's.
// projects: { id, writer, stamp, lineage, text, name, swatch, etag, made, isSent, includes, at }.
// archived: { id } of projects that are on this device alone and off the shelf.
// pieces:   { id, writer, stamp, lineage, etag, made, isSent, includes, at, projectId, key, title, size, begunAt, base, entries, lastAt }, without design and log.
// designs, logs: the document with an empty log, and the first `base` entries, by [id, writer].
// entries:  the entries after those, each by itself, by [id, writer, number from 0], so that a tap writes little.
const version = 3;
let opening = null;
const whenCleared = [];
const cleared = () => whenCleared.forEach(told => told());

// In a maker's words, why a device keeps nothing.
function why(error) {
  switch (error?.name) {
    case '': return error;
    case 'QuotaExceededError': return said('it is full');
    case 'VersionError': return said('a newer Dyepath has been here; open this page again');
    default: return said('the browser does not let it');
  }
}

// Without a name the words alone are told.
const said = message => Object.assign(new Error(message), { name: '' });

function open() {
  return opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open('dyepath', version);
    request.onupgradeneeded = event => upgrade(request.result, request.transaction, event.oldVersion);
    request.onsuccess = () => {
      const database = request.result;
      // The browser has cleared it, or somebody has: the pages that are open write what they have again.
      database.onclose = () => { opening = null; cleared(); };
      database.onversionchange = event => {
        database.close();
        opening = null;
        if (event.newVersion === null) cleared();
      };
      resolve(database);
    };
    request.onblocked = () => { opening = null; reject(said('an older page of Dyepath is open in another tab; close it')); };
    request.onerror = () => { opening = null; reject(request.error); };
  }).catch(error => { opening = null; throw why(error); });
}

function upgrade(database, transaction, from) {
  const writer = '0';
  const copy = { writer, stamp: 1, lineage: { [writer]: 1 }, includes: [], made: null };
  const make = () => {
    const projects = database.createObjectStore('projects', { keyPath: ['id', 'writer'] });
    const archived = database.createObjectStore('archived', { keyPath: 'id' });
    const pieces = database.createObjectStore('pieces', { keyPath: ['id', 'writer'] });
    for (const name of ['designs', 'logs', 'entries']) database.createObjectStore(name);
    return { projects, archived, pieces };
  };
  if (from < 1) return make();
  // What earlier versions kept: one record a project, one header a piece and its entries in "taps".
  const old = {};
  transaction.objectStore('projects').getAll().onsuccess = event => {
    old.projects = event.target.result;
    database.deleteObjectStore('projects');
    if (from < 2) { move(); return; }
    transaction.objectStore('makings').getAll().onsuccess = ({ target }) => {
      old.headers = target.result;
      old.taps = [];
      transaction.objectStore('taps').openCursor().onsuccess = ({ target: { result: cursor } }) => {
        if (cursor) { old.taps.push([cursor.key, cursor.value]); cursor.continue(); return; }
        database.deleteObjectStore('makings');
        database.deleteObjectStore('taps');
        move();
      };
    };
  };
  function move() {
    const { projects, archived, pieces } = make();
    for (const { id, text, name, swatch, etag, dirty, archived: away, updatedAt } of old.projects) {
      projects.put({ ...copy, id, text, name, swatch, etag: etag ?? null, isSent: !dirty && !!etag, at: updatedAt });
      if (away && !etag) archived.put({ id });
    }
    for (const header of old.headers ?? []) {
      const log = (old.taps ?? []).filter(([[id]]) => id === header.id).sort(([a], [b]) => a[1] - b[1]).map(([, entry]) => entry);
      const { id, projectId, key, title, size, text, etag, sent, differs, begunAt, updatedAt } = header;
      pieces.put({
        ...copy, id, projectId, key, title, size, begunAt, etag: etag ?? null, isSent: !!etag && !differs && sent === log.length, at: updatedAt,
        base: log.length, entries: log.length, lastAt: log.at(-1)?.at ?? updatedAt,
      });
      transaction.objectStore('designs').put(text, [id, writer]);
      transaction.objectStore('logs').put(log, [id, writer]);
    }
  }
}

async function within(mode, names, work) {
  const database = await open();
  return await new Promise((resolve, reject) => {
    // Strict: what is said to be saved is on the disk, also when the battery dies in the next moment.
    let transaction;
    try {
      transaction = database.transaction(names, mode, { durability: 'strict' });
    } catch (error) {
      reject(why(error));
      return;
    }
    let answer;
    transaction.oncomplete = () => resolve(answer);
    transaction.onabort = () => reject(why(transaction.reason ?? transaction.error));
    attempt(transaction, () => work(value => { answer = value; }, ...names.map(name => transaction.objectStore(name))));
  });
}

const ask = (request, told) => { request.onsuccess = () => attempt(request.transaction, () => told(request.result)); };

// What is thrown is why the transaction ends.
function attempt(transaction, act) {
  try {
    act();
  } catch (error) {
    transaction.reason = error;
    transaction.abort();
  }
}
const of = id => IDBKeyRange.bound([id], [id, []]);
// As in Keeping/Lineage.cs.
const floor = lineage => Object.keys(lineage).filter(key => key[0] === '~').map(key => key.slice(1)).sort().at(-1) ?? '';
const follows = (one, other) => Object.entries(other).every(([writer, changes]) =>
  (one[writer] ?? 0) >= changes || (writer[0] !== '@' && writer.replace(/^~/, '') <= floor(one)));

// Writes a copy in the place of those that it follows. What they knew of the host is in it then.
function supersede(copy, others, remove) {
  const ahead = others.filter(other => !follows(copy.lineage, other.lineage));
  for (const old of others) {
    if (ahead.includes(old)) continue;
    remove(old);
    if (copy.isSent) continue;
    // The same text, of which another tab knows that the host has it.
    if (old.isSent && follows(old.lineage, copy.lineage)) Object.assign(copy, { etag: old.etag, made: old.made, isSent: true, includes: [] });
    else copy.includes = [...new Set([...copy.includes, ...old.includes, old.etag])].filter(etag => etag && etag !== copy.etag);
  }
  return ahead.length > 0;
}

const told = (copy, others) => JSON.stringify({ ahead: false, others, etag: copy.etag ?? null, made: copy.made ?? null, isSent: copy.isSent, includes: copy.includes });

function check(one, other) {
  if (one?.stamp !== other.stamp) throw said('what was written is not there');
}

const projects = ['projects'];

export async function readProject(id) {
  return JSON.stringify(await within('readonly', projects, (answer, store) => ask(store.getAll(of(id)), answer)));
}

export async function writeProject(json) {
  const copy = JSON.parse(json);
  const others = await within('readwrite', projects, (answer, store) => ask(store.getAll(of(copy.id)), all => {
    answer(supersede(copy, all.filter(other => other.writer !== copy.writer), old => store.delete([old.id, old.writer])));
    store.put(copy);
  }));
  persist();
  announce('projects', copy.id, false);
  const read = await within('readonly', projects, (answer, store) => ask(store.get([copy.id, copy.writer]), answer));
  // Another tab may have gone on from it in this moment.
  if (read) check(read.text === copy.text ? read : null, copy);
  else if (!(await within('readonly', projects, (answer, store) => ask(store.getAll(of(copy.id)), answer))).some(other => follows(other.lineage, copy.lineage))) check(null, copy);
  return told(copy, others);
}

// Which copy is this tab's own: its session outlives a reload, and ends with the tab. A browser may keep none.
const writerOf = id => `dyepath.writer.${id}`;
export function lastWriter(id) {
  try { return sessionStorage.getItem(writerOf(id)); } catch { return null; }
}
export function rememberWriter(id, writer) {
  try { sessionStorage.setItem(writerOf(id), writer); } catch { /* It is asked by the time of the change then. */ }
}

export async function listProjects() {
  const [copies, away] = await within('readonly', ['projects', 'archived'], (answer, store, archived) =>
    ask(archived.getAllKeys(), keys => ask(store.getAll(), all => answer([all, new Set(keys)]))));
  return JSON.stringify(copies.map(({ text, ...rest }) => ({ ...rest, archived: away.has(rest.id) })));
}

export const removeProject = id => within('readwrite', ['projects', 'archived'], (answer, store, archived) => {
  store.delete(of(id));
  archived.delete(id);
  answer(true);
});

export const archiveProject = (id, away) => within('readwrite', ['archived'], (answer, store) => {
  if (away) store.put({ id }); else store.delete(id);
  answer(true);
});

const parts = ['pieces', 'designs', 'logs', 'entries'];
const entriesOf = (id, writer) => IDBKeyRange.bound([id, writer, 0], [id, writer, Infinity]);

export async function readPiece(id) {
  const copies = await within('readonly', parts, (answer, headers, designs, logs, entries) => ask(headers.getAll(of(id)), all => {
    const found = all.map(header => ({ header, design: null, log: [] }));
    for (const copy of found) {
      const { writer } = copy.header;
      ask(designs.get([id, writer]), design => { copy.design = design; });
      ask(logs.get([id, writer]), log => ask(entries.getAll(entriesOf(id, writer)), more => { copy.log = [...log ?? [], ...more]; }));
    }
    answer(found);
  }));
  return JSON.stringify(copies);
}

// Header and design and log; or, where `had` is the stamp of this writer's copy, header and the entries that are new.
// `unread`: writers whose copies the program cannot read; they stay where they are, and are passed over.
export async function writePiece(json, had, unread) {
  const { header, design, log } = JSON.parse(json);
  const key = [header.id, header.writer];
  const answer = await within('readwrite', parts, (say, headers, designs, logs, entries) => ask(headers.getAll(of(header.id)), all => {
    const mine = all.find(other => other.writer === header.writer);
    const others = all.filter(other => other.writer !== header.writer && !unread.includes(other.writer));
    if (others.some(other => !follows(header.lineage, other.lineage))) { say('ahead'); return; }
    const grows = had >= 0;
    if (grows && mine?.stamp !== had) { say('anew'); return; }
    supersede(header, others, old => {
      headers.delete([old.id, old.writer]);
      designs.delete([old.id, old.writer]);
      logs.delete([old.id, old.writer]);
      entries.delete(entriesOf(old.id, old.writer));
    });
    if (grows) {
      header.base = mine.base;
      log.forEach((entry, i) => entries.add(entry, [...key, header.entries - log.length + i]));
    } else {
      header.base = log.length;
      designs.put(design, key);
      logs.put(log, key);
      entries.delete(entriesOf(...key));
    }
    headers.put(header);
    say('written');
  }));
  if (answer === 'anew') return 'anew';
  if (answer === 'written') {
    persist();
    announce('makings', header.id, false);
  }
  if (answer === 'ahead') return JSON.stringify({ ahead: true, others: true, etag: null, made: null, isSent: false, includes: [] });
  const [read, count] = await within('readonly', ['pieces', 'entries'], (say, headers, entries) =>
    ask(headers.getAll(of(header.id)), all => ask(entries.count(entriesOf(...key)), more => say([all, more]))));
  const mine = read.find(other => other.writer === header.writer);
  if (mine) check(mine.base + count === header.entries ? mine : null, header);
  else if (!read.some(other => follows(other.lineage, header.lineage))) check(null, header);
  return told(header, false);
}

export async function listPieces() {
  return JSON.stringify(await within('readonly', ['pieces'], (answer, headers) => ask(headers.getAll(), answer)));
}

export const removePiece = id => within('readwrite', parts, (answer, headers, ...rest) => {
  headers.delete(of(id));
  for (const store of rest) store.delete(of(id));
  answer(true);
});

let asked = false;
// That the browser does not clear it when it wants room. Some browsers ask her first; nothing waits for her answer.
function persist() {
  if (asked) return;
  asked = true;
  navigator.storage?.persist?.().catch(() => {});
}

const channels = new Map();
function channel(sort) {
  if (!channels.has(sort)) channels.set(sort, 'BroadcastChannel' in globalThis ? new BroadcastChannel(`dyepath.${sort}`) : null);
  return channels.get(sort);
}
export const announce = (sort, id, removed) => channel(sort)?.postMessage({ id, removed });
export function listen(sort, wrote, removed) {
  const heard = channel(sort);
  if (heard) heard.onmessage = ({ data }) => (data.removed ? removed : wrote)(data.id);
}
export function watch(told, online, seen) {
  whenCleared.push(told);
  addEventListener('online', () => online());
  document.addEventListener('visibilitychange', () => seen(document.visibilityState === 'visible'));
}
