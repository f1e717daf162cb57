// Keeps the program's own files, so that it opens without a connection from the second visit on. Projects are kept by the page.
self.importScripts('./service-worker-assets.js');

const cacheName = `dyepath-${self.assetsManifest.version}`;
const kept = [/\.dll$/, /\.wasm$/, /\.dat$/, /\.html$/, /\.js$/, /\.json$/, /\.css$/, /\.ttf$/, /\.svg$/, /\.png$/, /\.webmanifest$/];

// Parts of the PDF library that nothing here loads.
const unused = /PdfSharp\.(BarCodes|Charting|Quality|Snippets|WPFonts|Cryptography)\b/;

self.addEventListener('install', event => event.waitUntil(keep().then(() => self.skipWaiting())));
self.addEventListener('activate', event => event.waitUntil(forget().then(() => self.clients.claim())));
self.addEventListener('fetch', event => {
  const address = new URL(event.request.url);
  if (event.request.method !== 'GET' || address.origin !== self.location.origin || /^\/(api|openapi|health|sign-in)(\/|$)/.test(address.pathname)) return;
  event.respondWith(answer(event.request));
});

async function keep() {
  const files = self.assetsManifest.assets
    .filter(asset => kept.some(pattern => pattern.test(asset.url)) && !unused.test(asset.url) && asset.url !== 'service-worker.js')
    .map(asset => new Request(asset.url, { integrity: asset.hash, cache: 'no-cache' }));
  await (await caches.open(cacheName)).addAll(files);
}

async function forget() {
  const names = await caches.keys();
  await Promise.all(names.filter(name => name.startsWith('dyepath-') && name !== cacheName).map(name => caches.delete(name)));
}

async function answer(request) {
  const cache = await caches.open(cacheName);
  return await cache.match(request.mode === 'navigate' ? 'index.html' : request) ?? fetch(request);
}
