// While developing nothing is cached; the published worker takes this one's place.
self.addEventListener('fetch', () => { });
