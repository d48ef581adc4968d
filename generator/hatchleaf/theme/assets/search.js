/*
 * Search in the owner's own words.  No page is touched here: an index is made of one
 * guide's words, and what is typed is answered with topics, the best first.  The website
 * loads this file when someone first searches; the phone copy has the same bytes inside.
 */
(function () {
  "use strict";

  /* ---- Words ---- */

  /* They tell no question from another. */
  const SMALL = new Set(
    ("a an and any are as at be been but by can could did do does for from get getting " +
      "go going got had has have how i if in into is it its just me my of on or our out " +
      "must need please should so some that the then there this to too up was we were what when " +
      "where which while who why will with would you your").split(" "),
  );

  function fold(text) {
    const plain = text.toLowerCase().replace(/\u2019/g, "'").normalize("NFKD");
    return plain.replace(/[\u0300-\u036f']/g, "").match(/[a-z0-9]+/g) || [];
  }

  /* Endings go, so that "leaks", "leaking" and "leak" meet. */
  function stem(word) {
    if (/^\d/.test(word) || word.length < 4) return word;
    let short = word.replace(/ies$/, "y").replace(/([^s])s$/, "$1");
    if (short.length > 5) short = short.replace(/ing$/, "");
    if (short.length > 4) short = short.replace(/ed$/, "");
    return short.replace(/(.)\1$/, "$1").replace(/e$/, "");
  }

  const telling = (word) => !SMALL.has(word);
  const once = (word) => word.replace(/(.)\1+/g, "$1");

  /* The places of a name of one to four words in a row of words. */
  function runs(row, names, found) {
    for (let at = 0; at < row.length; at += 1) {
      for (let size = Math.min(4, row.length - at); size > 1; size -= 1) {
        const name = row.slice(at, at + size).join(" ");
        if (names.has(name)) found(name, at, size);
      }
    }
  }

  /* ---- The index of one guide ---- */

  /* A letter is a number: those from "#" on, but for the two that JSON would escape. */
  function number(packed, at) {
    const code = packed.charCodeAt(at);
    return code - 35 - (code > 60) - (code > 92);
  }

  const GOES_ON = 89;

  /* Steps from page to page, a letter each. */
  function unpack(packed, take) {
    let page = -1;
    for (let i = 0; i < packed.length; i += 1) {
      const step = number(packed, i);
      page += step;
      if (step < GOES_ON) take(page);
    }
  }

  const SAME = 0.65;
  const MEANS = 0.6;
  const WEIGHTS = { title: 3, asked: 2.2, symptom: 1.2, text: 0.25 };

  function index(data) {
    const others = new Map();
    /* Words as they are written -> their stems. */
    const forms = new Map();
    const write = (word) => {
      if (!forms.has(word)) forms.set(word, stem(word));
      return forms.get(word);
    };
    const bare = (name) => fold(name).map(write).join(" ");
    const mean = (key, word, fit) => {
      if (!others.has(key)) others.set(key, new Map());
      if (key !== word) others.get(key).set(word, Math.max(fit, others.get(key).get(word) || 0));
    };
    data.same.forEach((group) => group.map(bare).forEach((key, _, keys) =>
      keys.forEach((word) => mean(key, word, SAME))));
    Object.keys(data.means).forEach((name) =>
      data.means[name].forEach((other) => mean(bare(name), bare(other), MEANS)));
    const names = new Set();
    others.forEach((row, key) => [key, ...row.keys()].forEach((name) => {
      if (name.indexOf(" ") > 0) names.add(name);
    }));

    const words = new Map();
    const add = (word, at, weight) => {
      if (!words.has(word)) words.set(word, new Map());
      const has = words.get(word);
      has.set(at, (has.get(at) || 0) + weight);
    };
    let word = "";
    data.words.split("\n").filter(Boolean).forEach((line) => {
      const [rest, ...levels] = line.split("\t");
      word = word.slice(0, number(rest, 0)) + rest.slice(1);
      const key = word.indexOf("_") < 0 ? write(word) : bare(word.replace(/_/g, " "));
      levels.forEach((packed, level) =>
        unpack(packed, (at) => add(key, at, WEIGHTS.text * (level + 1))));
    });

    const topics = data.topics.map((topic, at) => {
      const phrases = [];
      const phrase = (text, weight) => {
        const row = fold(text);
        const keys = row.map(write);
        const set = new Set(keys.filter((_, i) => telling(row[i])));
        runs(keys, names, (name) => set.add(name));
        phrases.push({ set: set, weight: weight });
        return set;
      };
      const seen = new Map();
      const field = (texts, name, weight) => texts.forEach((text) => {
        phrase(text, weight).forEach((word) => {
          const key = name + word;
          const times = (seen.get(key) || 0) + 1;
          seen.set(key, times);
          /* Said again, a word says less. */
          add(word, at, WEIGHTS[name] / (times * times));
        });
      });
      field([topic.t], "title", 1);
      field(topic.a, "asked", 1);
      field(topic.h, "symptom", 0.8);
      return { number: topic.n, title: topic.t, where: topic.w, phrases: phrases };
    });
    /* What a word says: the fewer pages hold it, the more. */
    const rare = (pages) => Math.log(1 + topics.length / pages);
    const short = new Map();
    forms.forEach((word, form) => {
      const key = once(form);
      if (!short.has(key)) short.set(key, new Set());
      short.get(key).add(word);
    });
    return {
      topics: topics, words: words, forms: forms, short: short, others: others, names: names, rare: rare,
    };
  }

  /* ---- What was typed ---- */

  /* Letters wrong, missing, too many, or two in the wrong order; `most` + 1 when more. */
  function slips(one, other, most) {
    if (Math.abs(one.length - other.length) > most) return most + 1;
    let before = [];
    let last = Array.from({ length: other.length + 1 }, (_, j) => j);
    for (let i = 1; i <= one.length; i += 1) {
      const row = [i];
      let least = i;
      for (let j = 1; j <= other.length; j += 1) {
        const same = one[i - 1] === other[j - 1];
        let cost = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1));
        if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
          cost = Math.min(cost, before[j - 2] + 1);
        }
        row.push(cost);
        least = Math.min(least, cost);
      }
      if (least > most) return most + 1;
      before = last;
      last = row;
    }
    return last[other.length];
  }

  /* The words of this guide, or of the lists, that a typed word may mean: word -> fit. */
  function meant(typed, guide, open) {
    const word = stem(typed);
    const found = new Map();
    const known = (key) => guide.words.has(key) || guide.others.has(key);
    if (known(word)) found.set(word, 1);
    else if (typed.length > 2) {
      (guide.short.get(once(typed)) || []).forEach((key) => found.set(key, 0.9));
    }
    if (/^\d/.test(word) || (found.size && !open)) return found;
    const better = (key, fit) => { if ((found.get(key) || 0) < fit) found.set(key, fit); };
    if (word.length >= 3) {
      const fit = found.size ? BEGUN / 2 : BEGUN;
      guide.forms.forEach((key, form) => { if (form.startsWith(typed)) better(key, fit); });
    }
    if (!found.size && typed.length >= 4) {
      let least = typed.length >= 8 ? 2 : 1;
      guide.forms.forEach((key, form) => {
        if (form.length < 3) return;
        const count = slips(typed, form, least);
        /* Two slips and another first letter is another word. */
        if (count > least || (count === 2 && form[0] !== typed[0])) return;
        if (count < least) found.clear();
        least = count;
        found.set(key, count === 1 ? 0.75 : 0.6);
      });
    }
    return found;
  }

  /* "slideout" -> "slide out", where both halves are words of this guide. */
  function parted(typed, guide) {
    const known = (word) => SMALL.has(word) || guide.words.has(stem(word));
    if (typed.length < 6 || known(typed) || guide.others.has(stem(typed))) return [typed];
    for (let at = typed.length - 2; at >= 2; at -= 1) {
      const halves = [typed.slice(0, at), typed.slice(at)];
      if (halves.every(known) && halves.some((half) => half.length > 3)) return halves;
    }
    return [typed];
  }

  /*
   * What is asked for, thing by thing.  A thing is a Map: word or name -> how well it
   * fits.  Other names for it count a little less.
   */
  function things(typed, guide) {
    const row = fold(typed).flatMap((word) => parted(word, guide));
    /* The last word may not be finished yet. */
    const meanings = row.map((word, at) =>
      telling(word) ? meant(word, guide, at === row.length - 1) : new Map());
    const pages = (key) => (guide.words.get(key) || guide.others.get(key) || new Set()).size;
    /* In a name of several words, the likeliest one stands for a slip. */
    const keys = row.map((word, at) => guide.forms.get(word) || Array.from(meanings[at])
      .sort((one, other) => other[1] - one[1] || pages(other[0]) - pages(one[0]))
      .map((each) => each[0])[0] || stem(word));
    const taken = new Array(row.length).fill(false);
    const list = [];
    const widened = (found) => {
      Array.from(found).forEach(([word, fit]) => {
        (guide.others.get(word) || []).forEach((less, other) => {
          found.set(other, Math.max(found.get(other) || 0, fit * less));
        });
      });
      return found;
    };
    runs(keys, guide.names, (name, at, size) => {
      if (taken.slice(at, at + size).some(Boolean)) return;
      taken.fill(true, at, at + size);
      const found = widened(new Map([[name, 1]]));
      /* The words of a name, said apart, are a hint of it. */
      list.push({ found: found, parts: keys.slice(at, at + size).filter((key, i) => telling(row[at + i])) });
    });
    const rest = row.map((_, at) => at).filter((at) => !taken[at] && telling(row[at]));
    rest.forEach((at) => list.push({ found: widened(meanings[at]), parts: [] }));
    /* Nothing but small words: then they are what is asked for. */
    if (!list.length) row.forEach((word) => list.push({ found: meant(word, guide), parts: [] }));
    return list;
  }

  const BEGUN = 0.8;
  const HELD = 1.8;
  const PHRASE = 0.8;

  /* "210", "0210", "topic 45", "No. 210". */
  const NAMED = /^\s*(?:(?:topic|page|sticker|number|no|nr|#)[\s.#]*)*0*(\d{1,3})\s*$/i;

  function search(guide, typed) {
    const count = guide.topics.length;
    const asked = things(typed, guide).map((thing) => {
      const held = new Map();
      const put = (word, fit) => (guide.words.get(word) || []).forEach((weight, at) => {
        const score = fit * weight / (weight + HELD);
        if (score > (held.get(at) || 0)) held.set(at, score);
      });
      thing.found.forEach((fit, word) => put(word, fit));
      if (thing.parts.length > 1) {
        for (let at = 0; at < count; at += 1) {
          const shares = thing.parts.map((word) => {
            const has = guide.words.get(word);
            const weight = (has && has.get(at)) || 0;
            return weight / (weight + HELD);
          });
          const score = 0.7 * Math.min(...shares);
          if (score > (held.get(at) || 0)) held.set(at, score);
        }
      }
      return { found: thing.found, parts: thing.parts, held: held, says: held.size ? guide.rare(held.size) : 0 };
    });
    const whole = asked.reduce((sum, thing) => sum + thing.says, 0);
    const scores = guide.topics.map((topic, at) => {
      if (!whole) return 0;
      let score = 0;
      asked.forEach((thing) => { score += thing.says * (thing.held.get(at) || 0); });
      score /= whole;
      return score ? score + PHRASE * likeness(topic, asked, whole, guide) : 0;
    });
    const found = guide.topics
      .map((topic, at) => ({ topic: topic, score: scores[at] }))
      .filter((each) => each.score > 0)
      .sort((one, other) => other.score - one.score || one.topic.number - other.topic.number)
      .filter((each, at, list) => each.score >= list[0].score / 4)
      .slice(0, 8)
      .map((each) => each.topic);
    const named = typed.match(NAMED);
    const number = named ? Number(named[1]) : -1;
    return guide.topics.filter((topic) => topic.number === number)
      .concat(found.filter((topic) => topic.number !== number)).slice(0, 8);
  }

  /* How like what was typed the likest of a topic's phrases is, from 0 to 1. */
  function likeness(topic, asked, whole, guide) {
    let best = 0;
    topic.phrases.forEach((phrase) => {
      const met = new Set();
      let got = 0;
      asked.forEach((thing) => {
        let fits = 0;
        thing.found.forEach((fit, word) => {
          if (phrase.set.has(word)) {
            fits = Math.max(fits, fit);
            met.add(word);
            word.split(" ").forEach((part) => met.add(part));
          }
        });
        if (!fits && thing.parts.length > 1 && thing.parts.every((part) => phrase.set.has(part))) {
          fits = 0.8;
          thing.parts.forEach((part) => met.add(part));
        }
        got += thing.says * fits;
      });
      if (!got) return;
      let says = 0;
      let said = 0;
      phrase.set.forEach((word) => {
        if (word.indexOf(" ") > 0) return;
        const has = guide.words.get(word);
        const one = guide.rare(has ? has.size : 1);
        says += one;
        if (met.has(word)) said += one;
      });
      const like = phrase.weight * Math.sqrt((got / whole) * (says ? said / says : 0));
      if (like > best) best = like;
    });
    return best * best;
  }

  globalThis.hatchleafSearch = { index: index, search: search };
})();
