/*
 * What the pages can do beyond being read: the number box, the field of the search, the
 * ticks of one run and, in the phone copy, one topic at a time.  The website and the phone
 * copy carry the same bytes; everything that differs from unit to unit is data.  Without
 * this script every page still reads from top to bottom and every link works.
 */
(function () {
  "use strict";

  const root = document.documentElement;
  root.classList.add("scripted");
  const copy = root.classList.contains("copy");
  const numbers = (root.dataset.numbers || "").split(" ").map(Number);
  const pad = (number) => String(number).padStart(3, "0");
  const all = (selector, within) =>
    Array.from((within || document).querySelectorAll(selector));

  function address(number) {
    return copy ? "#t-" + pad(number) : root.dataset.unit + pad(number) + "/";
  }

  /* ---- The phone copy shows one topic at a time ---- */

  function sheetOf(id) {
    const target = id && document.getElementById(id);
    return (target && target.closest(".sheet")) || document.getElementById("t-000");
  }

  function show(first) {
    const id = decodeURIComponent(location.hash.slice(1));
    const sheet = sheetOf(id);
    all(".sheet.here").forEach((each) => each.classList.remove("here"));
    sheet.classList.add("here");
    const title = sheet.querySelector(".title");
    document.title =
      sheet.id === "t-000" ? title.textContent : sheet.dataset.number.padStart(3, "0") + " " + title.textContent;
    const target = id && document.getElementById(id);
    if (target && target !== sheet) {
      reveal(target);
    } else {
      scrollTo(0, 0);
      if (!first) title.focus({ preventScroll: true });
    }
  }

  function reveal(target) {
    for (let at = target; at; at = at.parentElement) {
      if (at.tagName === "DETAILS") at.open = true;
    }
    target.scrollIntoView();
  }

  function revealHash() {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (target && target.closest("details")) reveal(target);
  }

  /* Long lists are open for who has no scripts; a link into one opens it again. */
  all(".fold").forEach((each) => { each.open = false; });
  /* On paper nothing can be opened. */
  addEventListener("beforeprint", () => all("details").forEach((each) => { each.open = true; }));

  if (copy) {
    root.classList.add("one");
    addEventListener("hashchange", () => show(false));
    show(true);
  } else {
    addEventListener("hashchange", revealHash);
    revealHash();
  }

  /* ---- The number box ---- */

  function goTo(form) {
    const typed = form.elements.number.value;
    const said = form.querySelector(".said");
    const digits = typed.replace(/\D+/g, "");
    said.textContent = "";
    if (!digits) {
      said.textContent = "Type the three digits on the sticker, such as " + pad(numbers[numbers.length - 1]) + ".";
      return;
    }
    const number = Number(digits);
    if (numbers.indexOf(number) >= 0) {
      closeFinder();
      location.href = address(number);
      return;
    }
    said.textContent = number > 999
      ? "Topics have three digits. Please look at the sticker again."
      : "Topic " + pad(number) + " is not on this unit. Look at the number again, or search below in your own words.";
  }

  all("[data-go]").forEach((form) => {
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      goTo(form);
    });
  });

  /* ---- Search in the owner's own words: search.js and the words, when first used ---- */

  const own = document.currentScript.src;
  let loading = null;

  function engine() {
    if (globalThis.hatchleafSearch) return Promise.resolve(globalThis.hatchleafSearch);
    return new Promise((done, failed) => {
      const script = document.createElement("script");
      script.src = new URL("search.js", own).href;
      script.onload = () => done(globalThis.hatchleafSearch);
      script.onerror = () => failed(new Error(script.src));
      document.head.append(script);
    });
  }

  function words() {
    const inside = document.getElementById("words");
    if (inside) {
      const text = globalThis.hatchleafInflated(inside.textContent);
      return Promise.resolve(JSON.parse(text));
    }
    return fetch(root.dataset.unit + "words.json").then((answer) => {
      if (!answer.ok) throw new Error(String(answer.status));
      return answer.json();
    });
  }

  /* Gives a function: what is typed -> topics, the best first. */
  function guide() {
    if (loading) return loading;
    loading = Promise.all([engine(), words()]).then(([made, data]) => {
      const index = made.index(data);
      return (typed) => made.search(index, typed);
    });
    loading.catch(() => { loading = null; });
    return loading;
  }

  function part(name, className, text) {
    const made = document.createElement(name);
    made.className = className;
    if (text) made.textContent = text;
    return made;
  }

  function row(topic) {
    const link = part("a", "row");
    link.href = address(topic.number);
    const plate = part("span", "plate");
    plate.append(part("span", "", pad(topic.number)));
    const text = part("span", "row-text");
    text.append(part("span", "row-title", topic.title));
    if (topic.where) text.append(" ", part("span", "row-where", topic.where));
    link.append(plate, " ", text);
    link.addEventListener("click", closeFinder);
    const item = document.createElement("li");
    item.append(link);
    return item;
  }

  function answer(form) {
    const field = form.elements.words;
    const list = form.querySelector(".found");
    const said = form.querySelector(".said");
    const typed = field.value.trim();
    if (typed.length < 2) {
      list.replaceChildren();
      list.hidden = true;
      said.textContent = "";
      return;
    }
    guide().then((search) => {
      if (field.value.trim() !== typed) return;
      const found = search(typed);
      list.replaceChildren(...found.map(row));
      list.hidden = !found.length;
      said.textContent = found.length
        ? (found.length === 1 ? "1 page" : found.length + " pages")
        : "Nothing found. Try one other word, or look through the contents.";
    }).catch(() => {
      said.textContent = "The search needs the network once. Without it, use the contents or the phone copy.";
    });
  }

  all("[data-search]").forEach((form) => {
    form.elements.words.addEventListener("input", () => answer(form));
    /* The words come while one types the first of them. */
    form.elements.words.addEventListener("focus", () => guide().catch(() => {}));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      answer(form);
    });
  });

  /* ---- The finder opens over the page ---- */

  const finder = document.getElementById("finder");

  function closeFinder() {
    if (finder && finder.open) finder.close();
  }

  if (finder && finder.showModal) {
    all("[data-find]").forEach((link) => {
      link.setAttribute("aria-haspopup", "dialog");
      link.addEventListener("click", (event) => {
        event.preventDefault();
        finder.showModal();
        finder.querySelector("input").focus();
      });
    });
    all("[data-close]", finder).forEach((button) => button.addEventListener("click", closeFinder));
    finder.addEventListener("click", (event) => {
      if (event.target === finder) closeFinder();
    });
  }

  /* ---- Ticks belong to one run ---- */

  const LASTS = 12 * 60 * 60 * 1000;

  function clockTime(moment) {
    const date = new Date(moment);
    return String(date.getHours()).padStart(2, "0") + ":" + String(date.getMinutes()).padStart(2, "0");
  }

  function runs(panel) {
    const sheet = panel.closest(".sheet");
    const boxes = all(".ticks input[type=checkbox]", sheet);
    const state = panel.querySelector(".run-state");
    const start = panel.querySelector(".run-start");
    const key = "hatchleaf " + root.dataset.code + " " + sheet.id;
    let run = null;
    let kept = true;
    let message = "";

    function read() {
      try {
        const found = JSON.parse(localStorage.getItem(key));
        if (found && typeof found.at === "number" && Array.isArray(found.ticks)) run = found;
      } catch (_) {
        kept = false;
      }
    }

    function write() {
      try {
        if (run) localStorage.setItem(key, JSON.stringify(run));
        else localStorage.removeItem(key);
      } catch (_) {
        kept = false;
      }
    }

    function end() {
      const age = run ? Date.now() - run.at : 0;
      if (!run || (age >= 0 && age < LASTS)) return false;
      message = "The run started at " + clockTime(run.at) + " is more than 12 hours old. Its ticks are cleared. Press Start and do every step again.";
      run = null;
      write();
      return true;
    }

    function paint() {
      end();
      boxes.forEach((box) => { box.checked = Boolean(run) && run.ticks.indexOf(box.id) >= 0; });
      start.textContent = run ? "Start again" : "Start";
      if (!run) {
        state.textContent = message || "Not started.";
        return;
      }
      const done = boxes.filter((box) => box.checked).length;
      state.textContent = "Started " + clockTime(run.at) + ". " + done + " of " + boxes.length + " ticked." +
        (kept ? "" : " This phone forgets them when the page closes.");
    }

    function begin() {
      message = "";
      run = { at: Date.now(), ticks: [] };
    }

    start.addEventListener("click", () => {
      begin();
      write();
      paint();
    });
    boxes.forEach((box) => {
      box.addEventListener("change", () => {
        const ticked = box.checked;
        if (end()) {
          paint();
          return;
        }
        if (!run) begin();
        run.ticks = run.ticks.filter((id) => id !== box.id);
        if (ticked) run.ticks.push(box.id);
        write();
        paint();
      });
    });
    panel.hidden = false;
    read();
    paint();
    setInterval(paint, 60 * 1000);
    document.addEventListener("visibilitychange", paint);
    addEventListener("pageshow", paint);
  }

  all(".run").forEach(runs);

  /* ---- Your trip: picked among numbers of the guide, none is worked out here ---- */

  all(".trip").forEach((form) => {
    const data = JSON.parse(form.dataset.trip);
    const [people, nights, frost] = all("select, input", form);
    const said = form.querySelector("[role=status]");

    function answer() {
      const wanted = Number(nights.value);
      if (!(wanted >= 1 && wanted <= data.most && wanted % 1 === 0)) {
        said.textContent = "Type how many nights, from 1 to " + data.most + ".";
        return;
      }
      const count = wanted + (wanted === 1 ? " night" : " nights");
      const list = part("ul", "trip-found");
      const found = data[frost.checked ? "frost" : "summer"][people.value];
      const first = found[data.ends.length];
      data.ends.forEach(([name, help], at) => {
        const days = found[at];
        if (!days) return;
        const enough = parseFloat(days) >= wanted;
        const row = part("li", enough ? "" : "short");
        row.append(part("strong", "", name + ": about " + days + "."), " ",
          enough ? "Usually enough for " + count + "." : "Too short for " + count + ": plan to " + help + ".");
        list.append(row);
      });
      said.replaceChildren(list);
      if (first) said.prepend(part("p", "", "Ends first: " + first + "."));
    }

    [people, nights, frost].forEach((field) => field.addEventListener("input", answer));
    form.addEventListener("submit", (event) => event.preventDefault());
    answer();
  });

  /* ---- Wide tables scroll in their own box, by keyboard too ---- */

  function scrollers() {
    all(".table").forEach((box) => {
      if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
      else box.removeAttribute("tabindex");
    });
  }

  addEventListener("resize", scrollers);
  addEventListener("hashchange", scrollers);
  scrollers();
})();
