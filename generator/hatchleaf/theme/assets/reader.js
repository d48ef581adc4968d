/*
 * What the pages can do beyond being read: the number box, the search, the ticks of
 * one run and, in the phone copy, one topic at a time.  The website and the phone copy
 * carry the same bytes; everything that differs from unit to unit is data.  Without
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

  /* ---- Search in the owner's own words ---- */

  const SMALL = new Set(
    ("a an and are at be but by can do does for from get go has have how i if in is it " +
      "its me my of on or our so that the then there this to up was we what when where " +
      "which who why will with you your").split(" "),
  );

  function fold(text) {
    const plain = text.toLowerCase().replace(/\u2019/g, "'").normalize("NFKD");
    return plain.replace(/[\u0300-\u036f']/g, "").match(/[a-z0-9]+/g) || [];
  }

  /* Endings go, so that "leaks", "leaking" and "leak" meet. */
  function stem(word) {
    if (/^\d/.test(word) || word.length < 4) return word;
    let short = word.replace(/(ies)$/, "y").replace(/([^s])s$/, "$1");
    if (short.length > 5) short = short.replace(/ing$/, "");
    if (short.length > 4) short = short.replace(/ed$/, "");
    return short.replace(/(.)\1$/, "$1").replace(/e$/, "");
  }

  const stems = (text) => fold(text).map(stem);

  /* The words of a text that tell one question from another; all, where none does. */
  function telling(text) {
    const every = fold(text);
    const wanted = every.filter((word) => !SMALL.has(word));
    return wanted.length ? wanted : every;
  }

  /* The phone copy has all texts inside, so it brings no list of their words. */
  function wordsInside(topics) {
    const used = Object.create(null);
    topics.forEach((topic, at) => {
      const sheet = document.getElementById("t-" + pad(topic.n));
      const parts = all(".where, .normal-text, .ratings, .text", sheet);
      topic.w = all(".where", sheet).map((each) => each.textContent).join();
      topic.h = all(".text :is(h3, h4, h5)", sheet).map((each) => each.textContent);
      const text = parts.map((part) => part.innerHTML.replace(/<[^>]*>|&\w+;/g, " ")).join(" ");
      new Set(fold(text)).forEach((word) => {
        if (word.length > 1) (used[word] = used[word] || []).push(at);
      });
    });
    return used;
  }

  function index(data) {
    const texts = data.words || wordsInside(data.topics);
    const topics = data.topics.map((topic) => ({
      number: topic.n,
      title: topic.t,
      where: topic.w,
      asked: topic.a.map((phrase) => new Set(telling(phrase).map(stem))),
    }));
    const words = new Map();
    const add = (word, at, weight) => {
      if (!words.has(word)) words.set(word, new Map());
      const has = words.get(word);
      if ((has.get(at) || 0) < weight) has.set(at, weight);
    };
    Object.keys(texts).forEach((word) =>
      texts[word].forEach((at) => add(stem(word), at, 1)),
    );
    data.topics.forEach((topic, at) => {
      topic.h.forEach((heading) => stems(heading).forEach((word) => add(word, at, 2)));
      stems(topic.t).forEach((word) => add(word, at, 4));
      topic.a.forEach((phrase) => stems(phrase).forEach((word) => add(word, at, 5)));
    });
    return { topics: topics, words: words };
  }

  /* One letter wrong, missing, too many, or two in the wrong order. */
  function nearly(one, other) {
    if (Math.abs(one.length - other.length) > 1) return false;
    let start = 0;
    while (start < one.length && one[start] === other[start]) start += 1;
    let end = 0;
    while (
      end < Math.min(one.length, other.length) - start &&
      one[one.length - 1 - end] === other[other.length - 1 - end]
    ) end += 1;
    const left = one.slice(start, one.length - end);
    const right = other.slice(start, other.length - end);
    if (left.length <= 1 && right.length <= 1) return true;
    return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
  }

  /* The words of this guide that a typed word may mean, each with how well it fits. */
  function meant(word, words) {
    const found = new Map();
    if (words.has(word)) found.set(word, 1);
    if (word.length >= 3) {
      words.forEach((_, known) => {
        if (known !== word && known.startsWith(word)) found.set(known, 0.7);
      });
    }
    if (!found.size && word.length >= 4) {
      words.forEach((_, known) => {
        if (known.length >= 3 && nearly(word, known)) found.set(known, 0.5);
      });
    }
    return found;
  }

  function search(data, typed) {
    const asked = Array.from(new Set(telling(typed).map(stem)));
    const scores = data.topics.map(() => 0);
    const meanings = asked.map((word) => meant(word, data.words));
    meanings.forEach((found) => {
      const best = new Map();
      found.forEach((fit, word) => {
        const has = data.words.get(word);
        const rare = Math.log(1 + data.topics.length / has.size);
        has.forEach((weight, at) => {
          best.set(at, Math.max(best.get(at) || 0, fit * weight * rare));
        });
      });
      best.forEach((score, at) => { scores[at] += score; });
    });
    /* A phrase that owners use, met whole, weighs more than its words one by one. */
    data.topics.forEach((topic, at) => {
      let share = 0;
      topic.asked.forEach((phrase) => {
        const met = meanings.filter((found) =>
          Array.from(found.keys()).some((word) => phrase.has(word)),
        ).length;
        if (met) share = Math.max(share, met / asked.length + met / phrase.size);
      });
      scores[at] += 6 * share * share;
    });
    return data.topics
      .map((topic, at) => ({ topic: topic, score: scores[at] }))
      .filter((each) => each.score > 0)
      .sort((one, other) => other.score - one.score || one.topic.number - other.topic.number)
      .filter((each, at, list) => each.score >= list[0].score / 6)
      .slice(0, 8)
      .map((each) => each.topic);
  }

  let loading = null;

  function guide() {
    if (loading) return loading;
    const inside = document.getElementById("words");
    loading = inside
      ? Promise.resolve(index(JSON.parse(inside.textContent)))
      : fetch(root.dataset.unit + "words.json").then((answer) => {
        if (!answer.ok) throw new Error(String(answer.status));
        return answer.json();
      }).then(index);
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
    guide().then((data) => {
      if (field.value.trim() !== typed) return;
      const number = /^\d{3,4}$/.test(typed) ? Number(typed) : -1;
      let found = search(data, typed);
      const named = data.topics.filter((topic) => topic.number === number);
      found = named.concat(found.filter((topic) => topic.number !== number));
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
