// build: the page of materials: what is calculated with, and by what names each is found.

import { materialTable } from "../../calc/materials/material-table.ts";
import { materials } from "../../data/materials/materials.ts";
import { materialNames } from "../../data/materials/names.ts";
import { twoMetalNames } from "../../data/materials/two-metal-names.ts";
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
    ({ key, speedSource }) =>
      `<tr><th scope="row">${escaped(key)}</th><td>${escaped(materialNames[key].replaceAll("; ", ", "))}</td><td>${escaped(speedSource)}</td></tr>`,
  );
  return `<h1>Materials</h1>
<p>Speeds, feeds, and stock start from these. They are starting values for an estimate: your own trials, the tool's own data, and the machine decide. Case, spaces, hyphens, and accents in a name do not matter. A state or temper (<code>42CrMo4+QT</code>, <code>6061-T6</code>), a standard (<code>AISI</code>, <code>EN AW-</code>), the kind of metal (<code>4140 steel</code>), and a hardness (<code>220 HB</code>) may stand with it. A steel of 45 to 65 HRC is hardened steel, with or without a name: <code>58 HRC</code>, <code>D2 60 HRC</code>.</p>
<section><h2>What is calculated with</h2>
<div class="wide" role="group" aria-label="Table of materials" tabindex="0"><table><thead><tr>${cells(head, "th")}</tr></thead><tbody>${rows
    .map((row) => `<tr>${cells(row, "td")}</tr>`)
    .join("")}</tbody></table></div></section>
<section><h2>Names that each is found by, and the source of its speed</h2>
<div class="wide" role="group" aria-label="Names of materials" tabindex="0"><table><thead><tr><th>Key</th><th>Other names</th><th>Speed from</th></tr></thead><tbody>${named.join("")}</tbody></table></div>
</section>
<section><h2>Names that two metals share</h2>
<p>Alone they are not read. Write the standard or the metal with them: <code>AISI A2</code>, <code>EN AW-1050</code>, <code>660 bronze</code>.</p>
<div class="wide" role="group" aria-label="Names that two metals share" tabindex="0"><table><thead><tr><th>Name</th><th>Can be</th></tr></thead><tbody>${Object.entries(
    twoMetalNames,
  )
    .map(
      ([name, meanings]) =>
        `<tr><th scope="row">${escaped(name)}</th><td>${escaped(meanings.replace(/ = [^;]*/g, ""))}</td></tr>`,
    )
    .join("")}</tbody></table></div>
<p>Which material a designation belongs to is a value from memory; the other sources are on the page of <a href="MATERIALS.html">MATERIALS</a>.</p></section>`;
}
