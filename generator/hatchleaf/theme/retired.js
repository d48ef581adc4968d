/* In place of a worker that keeps a guide: takes away what it kept, and itself. */
(function () {
  "use strict";

  async function leave() {
    const names = await caches.keys();
    const ours = names.filter((name) => name.startsWith("hatchleaf " + GUIDE.code + " "));
    await Promise.all(ours.map((name) => caches.delete(name)));
    await self.registration.unregister();
  }

  self.addEventListener("install", () => self.skipWaiting());
  self.addEventListener("activate", (event) => event.waitUntil(leave()));
})();
