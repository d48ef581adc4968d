/*
 * Has the browser keep this unit's guide, and says so where it is true.  What is said is
 * looked up each time: the worker holds its cache against the list of all files.  The
 * words stand hidden in the page; without this script it says none of them.
 */
(function () {
  "use strict";

  const workers = navigator.serviceWorker;
  const root = document.documentElement;
  if (!workers || !root.dataset.unit) return;
  const storage = navigator.storage || {};
  const PATIENCE = 60000;

  function show(name, wanted) {
    document.querySelectorAll('[data-kept="' + name + '"]').forEach((each) => {
      each.hidden = !wanted;
    });
  }

  function ask(worker) {
    return new Promise((done) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = (event) => done(event.data);
      setTimeout(done, PATIENCE, null);
      worker.postMessage("whole?", [channel.port2]);
    });
  }

  /* True where the browser has promised not to throw it away. */
  async function lasting() {
    try {
      if (await storage.persisted()) return true;
      /* Added to the home screen: no browser asks its owner then. */
      return matchMedia("(display-mode: standalone)").matches && await storage.persist();
    } catch (_) {
      return false;
    }
  }

  let looks = 0;

  async function look() {
    looks += 1;
    const mine = looks;
    const registration = await workers.getRegistration(root.dataset.unit);
    const worker = registration && registration.active;
    const said = worker ? await ask(worker) : null;
    const saved = Boolean(said && said.whole);
    const sure = saved && await lasting();
    if (mine !== looks) return;
    show("saved", saved);
    show("unsure", saved && !sure);
    show("ask", saved && !sure && Boolean(storage.persist));
    if (!saved || sure) show("refused", false);
    /* This page came from the version before, while a new one was taking over. */
    if (saved && workers.controller && said.edition !== root.dataset.edition) show("renewed", true);
  }

  let controlled = Boolean(workers.controller);

  workers.addEventListener("controllerchange", () => {
    if (controlled) show("renewed", true);
    controlled = true;
    look();
  });

  /*
   * The browser looks for a new edition in its own time; for the emergencies it is asked
   * to do so at once.  Not by the worker: one that waits for its own successor stays.
   */
  async function begin() {
    const settings = { updateViaCache: "none" };
    const registration = await workers.register(root.dataset.unit + "sw.js", settings);
    if (root.dataset.number === "1") registration.update().catch(() => null);
    await look();
  }

  const tried = () => begin().catch(() => null);

  document.querySelectorAll('button[data-kept="renewed"]').forEach((button) => {
    button.addEventListener("click", () => location.reload());
  });
  document.querySelectorAll('button[data-kept="ask"]').forEach((button) => {
    button.addEventListener("click", async () => {
      const granted = await storage.persist().catch(() => false);
      await look();
      show("ask", false);
      show("refused", !granted);
    });
  });

  /* The page itself comes first: on one bar of signal the rest would be in its way. */
  if (document.readyState === "complete") tried();
  else addEventListener("load", tried);
  addEventListener("online", tried);
  addEventListener("pageshow", (event) => { if (event.persisted) look(); });
  document.addEventListener("visibilitychange", () => { if (!document.hidden) look(); });
})();
