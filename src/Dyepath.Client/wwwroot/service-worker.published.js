// Keeps one version of the program, so that it opens without a connection from the second visit on. Projects are kept by the page.
// Every file is asked for under its version's address (v/VERSION/…), so that no page is answered with a file of another version.
// A new version waits until a page says that it is to be taken. See docs/decisions/one-page-one-version.md.
self.importScripts('./service-worker-assets.js');

const version = self.assetsManifest.version.replaceAll('+', '-').replaceAll('/', '_');
const root = `/v/${version}/`;
const kept = [/\.dll$/, /\.wasm$/, /\.dat$/, /\.html$/, /\.js$/, /\.json$/, /\.css$/, /\.ttf$/, /\.svg$/, /\.png$/, /\.webmanifest$/];

// Parts of the PDF library that nothing here loads.
const unused = /PdfSharp\.(BarCodes|Charting|Quality|Snippets|WPFonts|Cryptography)\b/;

// The program's own pages. Every other address is the host's to answer.
const pages = /^\/($|p\/|make\/|not-found$)/;

const cacheName = version => `dyepath-${version}`;
const hashes = new Map(self.assetsManifest.assets
  .filter(asset => kept.some(pattern => pattern.test(asset.url)) && !unused.test(asset.url) && asset.url !== 'service-worker.js')
  // The host names the version in its page, so that its bytes are not the published ones.
  .map(asset => [root + asset.url, asset.url === 'index.html' ? '' : asset.hash]));

self.addEventListener('install', event => event.waitUntil(keepAll()));
self.addEventListener('activate', event => event.waitUntil(forget().then(() => self.clients.claim())));

self.addEventListener('fetch', event => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    if (pages.test(pathname)) event.respondWith(page(request));
  } else if (/^\/v\/[^/]+\/./.test(pathname)) {
    event.respondWith(file(request, pathname));
  } else if (/^\/[^/]+\.(svg|png|webmanifest)$/.test(pathname)) {
    event.respondWith(file(request, root + pathname.slice(1)));
  }
});

self.addEventListener('message', event => {
  const answer = value => event.ports[0]?.postMessage(value);
  switch (event.data) {
    case 'version': answer(version); break;
    case 'take': event.waitUntil(self.skipWaiting()); break;
    // A page that was opened past the worker, as by a hard reload, works without a connection too.
    case 'opened': event.waitUntil(self.clients.claim().then(forget)); break;
    case 'mend': event.waitUntil(mend().then(answer, () => answer(0))); break;
  }
});

// All of it or nothing: the version at work stays where a file cannot be had or there is no room.
async function keepAll() {
  const name = cacheName(version);
  const begun = await caches.has(name);
  // To the end of every one: a file that is kept after the cache is deleted would make it anew.
  const ends = await Promise.allSettled([...hashes.keys()].map(async address => await find(address) ?? await fetchWhole(address)));
  const failed = ends.find(end => end.status === 'rejected');
  if (!failed) return;
  if (!begun) await caches.delete(name);
  throw failed.reason;
}

const find = (address, of = version) => caches.match(address, { cacheName: cacheName(of), ignoreVary: true });

// Fetched and kept. The browser may hold a copy that the page has just fetched; where that is broken, the host is asked.
async function fetchWhole(address) {
  const ask = cache => fetch(new Request(address, { integrity: hashes.get(address), cache }));
  const response = await ask('default').catch(() => ask('reload'));
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  const copy = response.clone();
  await (await caches.open(cacheName(version))).put(address, copy);
  return response;
}

async function page(request) {
  const address = `${root}index.html`;
  return await find(address) ?? await fetchWhole(address).catch(() => fetch(request));
}

async function file(request, address) {
  const of = address.split('/')[2];
  return await find(address, of) ?? (hashes.has(address) ? await fetchWhole(address).catch(() => fetch(request)) : await fetch(request));
}

// Versions that no page has open. What is just being fetched, or waits, is not old.
async function forget() {
  if (!self.navigator.locks || self.registration.installing || self.registration.waiting) return;
  const open = new Set((await self.navigator.locks.query()).held.map(lock => lock.name));
  const names = (await caches.keys()).filter(name => name.startsWith('dyepath-') && name !== cacheName(version) && !open.has(name));
  await Promise.all(names.map(name => caches.delete(name)));
}

// Fetches what is missing or not as it was published. Returns how many files that were.
async function mend() {
  let mended = 0;
  for (const [address, hash] of hashes) {
    if (await isWhole(await find(address), hash)) continue;
    await fetchWhole(address);
    mended++;
  }
  return mended;
}

async function isWhole(response, hash) {
  if (!response || !hash) return !!response;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await response.arrayBuffer()));
  return hash === `sha256-${btoa(String.fromCharCode(...digest))}`;
}
