// build: the page of what holds for every function, in plain words.

import { vocabulary } from "../../../functions/arguments.ts";
import { LONGEST } from "../../calc/lengths.ts";
import { escaped } from "./page.ts";

const unitRows: readonly (readonly [quantity: string, metric: string, inch: string])[] = [
  ["length, diameter, deviation, tolerance, stock, runout", "mm", "in"],
  ["surface speed", "m/min", "ft/min"],
  ["feed per revolution, feed per tooth", "mm", "in"],
  ["feed rate", "mm/min", "in/min"],
  ["torque", "N·m", "lbf·in"],
  ["power", "kW", "hp (550 ft·lbf/s)"],
  ["temperature", "°C", "°F"],
];

export function rulesContent(): string {
  const zeroCounts = Object.entries(vocabulary)
    .filter(([, { zeroCounts: counts }]) => counts)
    .map(([name]) => `<code>${escaped(name)}</code>`);
  return `<h1>What holds for every function</h1>
<section><h2>Units</h2>
<p>Where a function has <code>units</code>, it is the last argument: <code>"mm"</code> if you leave it out, or <code>"in"</code>. It sets all the units of the call:</p>
<table><thead><tr><th>Quantity</th><th>"mm"</th><th>"in"</th></tr></thead><tbody>${unitRows
    .map((row) => `<tr>${row.map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`)
    .join("")}</tbody></table>
<p>The time of a hole or a part is in seconds, tool life in minutes, a machine rate is per hour, money has no unit. Deviations come in the same unit as sizes, so <code>=A2+REAM.UPPERDEV(A2,"H7")</code> is a size.</p></section>
<section><h2>One cell or a whole column</h2>
<p>Give any argument one cell or a range, <code>units</code> too. Ranges spread against each other as with <code>+</code>: one cell serves all rows, a column with a row gives a grid, and where the sizes do not meet the cell is <code>#N/A</code>. One call over a column gives what a call per row would, and is faster.</p>
<p>A function that gives several cells per row (limits, for one) takes single cells or one column. It fills the cells to its right, so they must be free. In an Excel table, which does not let results spill, take one of the cells: <code>=INDEX(REAM.LIMITS([@Callout]),1,2)</code>. A list, such as measured sizes, is taken whole: blanks in it are left out, and a bad entry is named by its position.</p></section>
<section><h2>Blanks</h2>
<p>A row with nothing in it gives an empty cell, so a formula may run on below the last entry. A blank among filled cells is an error that names it. An optional argument left blank takes its default.</p>
<p>Excel hands an empty cell over as 0 at times, so a 0 counts as blank where no sensible value is 0, as for a diameter. It counts as a value where one may be: in readings, distances, times, costs, offsets, temperatures.</p>
<details><summary>Every argument in which a 0 is a value</summary><p>${zeroCounts.join(", ")}</p></details></section>
<section><h2>Numbers that are text</h2>
<p>Cells pasted from mail and drawings often hold text. A length may be <code>12,5</code>, <code>.500</code>, <code>1/2</code>, <code>1-1/2</code>, <code>12.5 mm</code> or <code>1/2"</code>; a unit written in the cell wins over <code>units</code> and is converted. A comma is the decimal mark unless exactly three digits follow it: <code>1,250</code> could be either and is refused, as is a number with both marks. TRUE and FALSE are not numbers. A length over ${LONGEST.mm} mm (${LONGEST.in} in) is refused: <code>1/2</code> typed into a plain cell becomes a date, and a date is a number of tens of thousands.</p>
<p>Put classes and callouts in quotes inside a formula: <code>"H7"</code>. Without them <code>H7</code> is a cell.</p></section>
<section><h2>Errors</h2>
<p><code>#VALUE!</code>: an input cannot be used. <code>#N/A</code>: the input can be used, but there is no answer to it. Point at the cell's mark to read which argument it is, what came and what is accepted. An error in one row does not affect the others. An error cell that is given as input comes back as it is.</p></section>
<section><h2>Exactness</h2>
<p>Stated sizes and table values are calculated with as exact decimals, so 12 + 0.018 is 12.018 and nothing behind it. Lengths come rounded to 1e-7 of their unit; CONVERT is not rounded. The same input gives the same result in every language and on every machine.</p></section>
<section><h2>How far a figure can be trusted</h2>
<p>Each page names its source and what kind it is: published; exact by definition; derived from first principles; common practice, which has no source; or a value from memory, which names a source that we could not open. <a href="SOURCES.html">SOURCES</a> lists them in the sheet, <a href="STEPS.html">STEPS</a> writes out how a result comes about.</p></section>`;
}
