// tests: any character of Unicode. What the library of random values has for it builds a table of them all first.

import fc from "fast-check";

const [FIRST_SURROGATE, SURROGATES, CHARACTERS] = [0xd800, 0x800, 0x110000];

export const anySign = fc
  .integer({ min: 0, max: CHARACTERS - SURROGATES - 1 })
  .map((place) => String.fromCodePoint(place < FIRST_SURROGATE ? place : place + SURROGATES));
