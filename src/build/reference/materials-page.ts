// build: the page of materials: what is calculated with, and by what names each is found.

import { materialTable } from "../../calc/materials.ts";
import { materials } from "../../data/materials/materials.ts";
import { escaped } from "./page.ts";

export function materialsContent(): string {
  // All but the source, which stands in the second table.
  const [head, ...rows] = materialTable().map((row) => row.slice(0, -1).map(String)) as [
    string[],
    ...string[][],
  ];
  const cells = (row: readonly string[], tag: string) =>
    row.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join("");
  const named = materials.map(
    ({ key, aliases, speedSource }) =>
      `<tr><th scope="row">${escaped(key)}</th><td>${escaped(aliases.join(", "))}</td><td>${escaped(speedSource)}</td></tr>`,
  );
  return `<h1>Materials</h1>
<p>Speeds, feeds and stock start from these. They are starting values for an estimate: your own trials, the tool's own data and the machine decide. Case, spaces and hyphens in a name do not matter, nor does <code>grey</code> for <code>gray</code> or <code>aluminium</code> for <code>aluminum</code>; a temper (<code>6061-T6</code>), a prefix (<code>AISI</code>, <code>EN AW-</code>) and the kind (<code>4140 steel</code>) may stand with it.</p>
<section><h2>What is calculated with</h2>
<div class="wide" role="group" aria-label="Table of materials" tabindex="0"><table><thead><tr>${cells(head, "th")}</tr></thead><tbody>${rows
    .map((row) => `<tr>${cells(row, "td")}</tr>`)
    .join("")}</tbody></table></div></section>
<section><h2>Names that each is found by, and the source of its speed</h2>
<div class="wide" role="group" aria-label="Names of materials" tabindex="0"><table><thead><tr><th>Key</th><th>Other names</th><th>Speed from</th></tr></thead><tbody>${named.join("")}</tbody></table></div>
<p>Which material a designation belongs to is a value from memory; the other sources stand on the page of <a href="MATERIALS.html">MATERIALS</a>.</p></section>`;
}
