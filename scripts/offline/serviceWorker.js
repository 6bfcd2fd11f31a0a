// Keeps one whole build in the browser, so that the tool opens and does everything without a network. A build is kept whole or
// not at all; a newer one waits until no page of the one before is open, so that work is never interrupted.
// FILES (addresses beside this file) and VERSION are written before this text when the tool is built: see plugin.ts.

const PREFIX = 'wedgewall-build-';
const HERE = PREFIX + VERSION;
const START = new URL('./', self.location.href).href;

self.addEventListener('install', (event) => {
  event.waitUntil(keepBuild());
});

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOthers().then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(START)) return;
  event.respondWith(kept(request));
});

async function keepBuild() {
  const cache = await caches.open(HERE);
  try {
    await Promise.all(
      FILES.map(async (file) => {
        const address = new URL(file, START).href;
        // Past the browser's own store: what is kept must be of this very build.
        const answer = await fetch(address, { cache: 'no-cache' });
        if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
        await cache.put(address, answer);
      }),
    );
  } catch (error) {
    await caches.delete(HERE);
    throw error;
  }
}

async function dropOthers() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PREFIX) && name !== HERE).map((name) => caches.delete(name)),
  );
}

/** From what is kept; else from the network. The page itself is asked for by the folder it lies in. */
async function kept(request) {
  const cache = await caches.open(HERE);
  const asked = new URL(request.url);
  const address = asked.origin + asked.pathname;
  const file = address === START ? new URL('index.html', START).href : address;
  return (await cache.match(file)) ?? fetch(request);
}
