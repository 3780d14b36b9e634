// build: the page of how a callout is read: ways to write one with what each gives, then the grammar.

import { limits } from "../../calc/callouts/limits.ts";
import { readCallout } from "../../calc/callouts/read-callout.ts";
import type { Units } from "../../calc/lengths.ts";
import { Problem } from "../../calc/problem.ts";
import { grammarLines } from "./callout-grammar.ts";
import { escaped } from "./page.ts";

/** Each way of writing, one of the grammar's branches or words after another. */
const ways: readonly (readonly [text: string, units: Units])[] = [
  ["12 H7", "mm"],
  ["4X Ø12 H7 THRU", "mm"],
  ["12,5 H7 ↧30", "mm"],
  ["1-1/2 H7", "in"],
  [".5000 RC4", "in"],
  ["12 H7/g6", "mm"],
  ["12 H7 (+0.018/0)", "mm"],
  ["4-⌀12 H7 (12.018/12.000)", "mm"],
  ["12 +0.018/0", "mm"],
  ["12 -0.005 +0.013", "mm"],
  ["12 ±0.01", "mm"],
  [".5000 +.0005/-.0000", "in"],
  ["12.000-12.018", "mm"],
  [".501/.500", "in"],
  [".5005 .5000", "in"],
  [".5000 MIN .5005 MAX", "in"],
  ["160 +40/0 µm", "mm"],
  ["12.70 +0.013/0 [.5000 +.0005/-.0000]", "mm"],
  ["2x2-Ø6H7 20 tief", "mm"],
  ["12 H7 ↧20 +1/0, SLIP FIT FOR 5/16 DOWEL", "mm"],
  ["|⌖|Ø.005 Ⓜ|A|B| Ø.250 +.001/-.000 63√", "in"],
  ["φ9.8キリ φ10H7リーマ 通し", "mm"],
  [".484 DRILL, REAM .500 +.0005/-.0000", "in"],
];

/** One for each rule by which a callout could be read in two ways. */
const doubtful: readonly (readonly [text: string, units: Units])[] = [
  ["160 +40/0", "mm"],
  ["12 ±0.0005", "mm"],
  ["12.0000 H7", "mm"],
  ["0.375 H7", "mm"],
  ["0.500 +0.002/-0.000", "mm"],
  ["1/2 H7", "mm"],
  ["12 H7", "in"],
  ["6.000-6.012", "in"],
  ["4X8", "mm"],
];

function messageOf(text: string, units: Units): string {
  try {
    readCallout(text, "callout", units);
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown.message;
    throw thrown;
  }
  throw new Error(`${text} is read`);
}

export function calloutContent(): string {
  const rows = ways.map(([text, units]) => {
    const [least, greatest] = limits(readCallout(text, "callout", units), units);
    return `<tr><td><code>${escaped(text)}</code></td><td>${units}</td><td>${least}</td><td>${greatest}</td></tr>`;
  });
  const doubts = doubtful
    .map(
      ([text, units]) =>
        `<tr><td><code>${escaped(text)}</code></td><td>${units}</td><td>${escaped(messageOf(text, units))}</td></tr>`,
    )
    .join("");
  return `<h1>How a callout is read</h1>
<p>A callout is the text on the drawing. Capitals are a hole, small letters a shaft. Every kind of space counts as one space, every kind of minus as one.</p>
<section><h2>Ways to write one</h2>
<table><thead><tr><th>In the cell</th><th>Units</th><th>Lower limit</th><th>Upper limit</th></tr></thead><tbody>${rows.join("")}</tbody></table></section>
<p>A tolerance belongs to the dimension it follows. One behind a depth is the depth's. Once the size has its whole tolerance, other words are kept as a note. A number in a phrase that begins with FOR, PER, SEE, NOTE, ITEM, DETAIL, or SPEC belongs to that note, up to a comma, semicolon, or line break.</p>
<section><h2>Not read, with the reason</h2>
<ul>
<li>a size or a class alone, one deviation alone, a deviation as large as the size, a tolerance wider than a quarter of it</li>
<li>a thread, a taper, a radius, a reference or basic dimension; a number that has no place; a text of over 200 characters</li>
<li>a whole number from 2 to 8 behind an × that could be a count or a depth (8 H7 x4)</li>
<li>a comma that could part thousands (1,250), unless another number in the callout shows it is a decimal comma</li>
<li>a fraction or a size in inch style (.500) in a sheet in mm without a unit; mm and inches in one callout</li>
<li>a class with deviations or limits that are not its own; a second size in brackets that does not agree</li>
</ul></section>
<section><h2>Two readings</h2>
<p>A callout that could be mm or inches, or µm or mm, is not read. The message shows both, each as you would write it. A unit in the cell settles it.</p>
<table><thead><tr><th>In the cell</th><th>Units</th><th>Message</th></tr></thead><tbody>${doubts}</tbody></table></section>
<section><h2>The grammar</h2>
<p>The tests print callouts from it, and all that it makes is read. <code>?</code> may be left out, <code>*</code> may repeat, <code>_</code> is any space or none, <code>-</code> at least one. SIZE, CLASS, LIMIT, DEPTH and COUNT are numbers and classes as written; DEVIATIONS are two with their signs, either order, or ± one.</p>
<pre>${escaped(grammarLines().join("\n"))}</pre></section>`;
}
