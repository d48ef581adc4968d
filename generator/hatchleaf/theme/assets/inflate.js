/*
 * The phone copy carries its search words deflated (RFC 1951), a twentieth of the whole
 * file less.  Phones of before 2023 cannot undo that by themselves, so it is done here.
 */
(function () {
  "use strict";

  const LENGTHS = [3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258];
  const ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
  const DISTANCES = [1, 2, 3, 4].concat(...Array.from({ length: 13 }, (_, i) => [4 * 2 ** i + 1, 6 * 2 ** i + 1]));
  const moreOfLength = (at) => (at < 8 || at === 28 ? 0 : (at - 4) >> 2);
  const moreOfDistance = (at) => (at < 4 ? 0 : (at - 2) >> 1);

  function inflate(bytes) {
    const out = [];
    let at = 0;
    let held = 0;
    let count = 0;

    function bits(wanted) {
      while (count < wanted) {
        if (at >= bytes.length) throw new Error("cut off");
        held |= bytes[at] << count;
        at += 1;
        count += 8;
      }
      const value = held & ((1 << wanted) - 1);
      held >>>= wanted;
      count -= wanted;
      return value;
    }

    /* Huffman codes from the lengths of their symbols: RFC 1951, 3.2.2. */
    function codes(lengths) {
      const counts = new Array(16).fill(0);
      const symbols = [];
      for (let size = 1; size < 16; size += 1) {
        lengths.forEach((length, symbol) => {
          if (length !== size) return;
          counts[size] += 1;
          symbols.push(symbol);
        });
      }
      return { counts: counts, symbols: symbols };
    }

    function next(code) {
      let value = 0;
      let first = 0;
      let before = 0;
      for (let size = 1; size < 16; size += 1) {
        value |= bits(1);
        const same = code.counts[size];
        if (value - first < same) return code.symbols[before + value - first];
        before += same;
        first = (first + same) << 1;
        value <<= 1;
      }
      throw new Error("no such code");
    }

    function fixed() {
      const lengths = Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8));
      return [codes(lengths), codes(new Array(30).fill(5))];
    }

    function described() {
      const [literals, distances, sizes] = [bits(5) + 257, bits(5) + 1, bits(4) + 4];
      const first = new Array(19).fill(0);
      for (let i = 0; i < sizes; i += 1) first[ORDER[i]] = bits(3);
      const code = codes(first);
      const lengths = [];
      while (lengths.length < literals + distances) {
        const symbol = next(code);
        if (symbol < 16) {
          lengths.push(symbol);
        } else {
          const again = symbol === 16 ? lengths[lengths.length - 1] : 0;
          const times = symbol === 16 ? 3 + bits(2) : symbol === 17 ? 3 + bits(3) : 11 + bits(7);
          for (let i = 0; i < times; i += 1) lengths.push(again);
        }
      }
      return [codes(lengths.slice(0, literals)), codes(lengths.slice(literals))];
    }

    for (let last = 0; !last;) {
      last = bits(1);
      const kind = bits(2);
      if (kind === 0) {
        held = 0;
        count = 0;
        const size = bytes[at] | (bytes[at + 1] << 8);
        at += 4;
        for (let i = 0; i < size; i += 1) out.push(bytes[at + i]);
        at += size;
      } else {
        const [literals, distances] = kind === 1 ? fixed() : described();
        for (let symbol = next(literals); symbol !== 256; symbol = next(literals)) {
          if (symbol < 256) {
            out.push(symbol);
          } else {
            const size = LENGTHS[symbol - 257] + bits(moreOfLength(symbol - 257));
            const far = next(distances);
            const back = out.length - DISTANCES[far] - bits(moreOfDistance(far));
            for (let i = 0; i < size; i += 1) out.push(out[back + i]);
          }
        }
      }
    }
    return Uint8Array.from(out);
  }

  /* Base64 of deflated UTF-8 -> text. */
  globalThis.hatchleafInflated = (packed) =>
    new TextDecoder().decode(inflate(Uint8Array.from(atob(packed), (each) => each.charCodeAt(0))));
})();
