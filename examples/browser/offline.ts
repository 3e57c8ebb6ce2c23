/** Service worker: holds the files of the page, so that it opens without network. No answers pass here. */

interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** Hash of the files, which the build puts here: new files, new cache. */
declare const FILES_VERSION: string;

const name = `face-neck-capture-${FILES_VERSION}`;
const files = ['./', 'style.css', 'app.js'];

addEventListener('install', (event) => {
  // The types of a window are in force here; a worker is given these events.
  (event as Waiting).waitUntil(caches.open(name).then((cache) => cache.addAll(files)));
});

addEventListener('activate', (event) => {
  (event as Waiting).waitUntil(
    caches
      .keys()
      .then((all) =>
        Promise.all(
          all
            .filter((one) => one.startsWith('face-neck-capture-') && one !== name)
            .map((one) => caches.delete(one)),
        ),
      ),
  );
});

addEventListener('fetch', (event) => {
  const asked = event as Asked;
  if (asked.request.method !== 'GET') return;
  asked.respondWith(
    caches
      .open(name)
      .then((cache) => cache.match(asked.request))
      .then((held) => held ?? fetch(asked.request)),
  );
});
