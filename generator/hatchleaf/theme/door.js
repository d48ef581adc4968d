/* The dealer's door: a code is looked at before anyone is sent anywhere. */
(() => {
  "use strict";

  const root = document.documentElement;
  const table = root.dataset.table.split(" ");
  const dealer = root.dataset.dealer;
  const form = document.getElementById("enter");
  const code = form.elements.code;
  const number = form.elements.number;
  const CODE = 15;
  const TOPIC = 3;
  root.classList.add("scripted");

  /* The check digit by Damm finds each wrong digit and each swap of two neighbors. */
  const sound = (digits) =>
    Array.from(digits).reduce((at, digit) => table[at][digit], "0") === "0";

  const grouped = (digits) => digits.replace(/(\d{5})(?=\d)/g, "$1 ");
  const padded = (digits) => digits.padStart(TOPIC, "0");

  /* Digits of what was typed: with spaces, dashes, or as a whole address. */
  function bare(typed) {
    const address = typed.trim().match(/^(?:https?:\/\/)?[^/\s]*\.[^/\s]*\/(.*)$/i);
    const path = (address ? address[1] : typed).split(/[?#]/)[0];
    return path.replace(/index\.html$/, "").replace(/[^0-9a-z]/gi, "");
  }

  function letter(text) {
    const found = text.match(/[a-z]/i);
    if (!found) return "";
    const like = { o: "0", i: "1", l: "1", b: "8", s: "5", z: "2" }[found[0].toLowerCase()];
    return "A code has digits only, and there is the letter " + found[0] + "." +
      (like ? " Perhaps it is the digit " + like + "." : "");
  }

  /* What is wrong with the digits of a code, in words; empty when nothing is. */
  function wrong(digits) {
    if (!digits) return "Type the 15 digits that stand on the sticker.";
    if (letter(digits)) return letter(digits);
    if (digits.length === TOPIC) {
      return digits + " is the number of a topic. The code has 15 digits and is on the same sticker.";
    }
    if (digits.length !== CODE) {
      const few = digits.length < CODE;
      return (digits.length === 1 ? "This is 1 digit." : "These are " + digits.length + " digits.") +
        " A code has 15, three groups of five: " + (few ? "some are missing." : "there are too many.");
    }
    if (digits[0] === "0") return "A code never begins with 0. Look at the first group again.";
    if (!sound(digits)) {
      return "A digit is wrong, or two have changed places. Compare each group with the sticker: " + grouped(digits) + ".";
    }
    return "";
  }

  function wrongNumber(digits) {
    if (/[a-z]/i.test(digits)) return "The number of a topic has digits only.";
    return digits.length > TOPIC ? "The number of a topic has three digits." : "";
  }

  /* A code and a topic's number that were typed as one. */
  function parted(digits) {
    const both = /^\d+$/.test(digits) && digits.length > CODE && digits.length <= CODE + TOPIC;
    return both ? [digits.slice(0, CODE), digits.slice(CODE)] : [digits, ""];
  }

  const address = (digits, topic) =>
    root.dataset.root + digits + "/" + (topic ? padded(topic) + "/" : "");

  function say(field, text) {
    document.getElementById(field.id + "-said").textContent = text;
    if (text) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const [digits, behind] = parted(bare(code.value));
    const topic = bare(number.value) || behind;
    const faults = [[code, wrong(digits)], [number, wrongNumber(topic)]];
    faults.forEach(([field, text]) => say(field, text));
    const first = faults.find(([, text]) => text);
    if (first) first[0].focus();
    else location.href = address(digits, topic);
  });

  [code, number].forEach((field) => field.addEventListener("input", () => say(field, "")));

  /* ---- An address that leads nowhere: what may have been meant ---- */

  const lost = document.getElementById("lost");

  function tell(text, more, link) {
    const parts = [text, more].filter(Boolean).map((words) => {
      const line = document.createElement("p");
      line.textContent = words;
      return line;
    });
    if (link) {
      const way = document.createElement("a");
      way.className = "button";
      way.href = link;
      way.textContent = "Open the guide";
      parts.push(way);
    }
    lost.replaceChildren(...parts);
  }

  function typedAddress() {
    try {
      return decodeURIComponent(location.pathname);
    } catch (_) {
      return location.pathname;
    }
  }

  function missing(digits, topic) {
    tell("This code is written as codes are, but no guide with it is here.",
      "Compare it with the sticker. If it is the same, call " + dealer + ".");
    fetch("/" + digits + "/", { method: "HEAD" }).then((answer) => {
      if (!answer.ok) return;
      code.value = grouped(digits);
      tell("The guide to this unit is here, but it has no topic " + padded(topic) + ".",
        "Look at the number on the sticker again, or open the guide and look in its contents.",
        "/" + digits + "/");
    }).catch(() => {});
  }

  function look() {
    const typed = typedAddress();
    const all = bare(typed);
    const [digits, topic] = parted(all);
    if (!/^\d/.test(all) || typed === "/404.html") return;
    if (all.length <= TOPIC && !letter(all)) {
      number.value = padded(all);
      tell("The code of the unit is missing in this address.", "Type it below; the number of the topic is there already.");
      return;
    }
    code.value = grouped(digits);
    number.value = topic && padded(topic);
    const fault = wrong(digits);
    if (fault) {
      tell("The code in this address is not right.", fault);
    } else if (typed !== address(digits, topic)) {
      location.replace(address(digits, topic));
    } else if (topic) {
      missing(digits, topic);
    } else {
      tell("This code is written as codes are, but no guide with it is here.",
        "Compare it with the sticker. If it is the same, call " + dealer + ".");
    }
  }

  if (lost) look();
})();
