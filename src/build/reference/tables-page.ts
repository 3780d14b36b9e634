// build: the page of the tables behind the answers: stock, feeds, tools, grades, and gauge allowances.

import { sizeSteps, standardTolerances } from "../../data/iso286/standard-tolerances.ts";
import { modernTools } from "../../data/modern-tools.ts";
import { plugGauges } from "../../data/plug-gauges.ts";
import { reamingFeeds } from "../../data/reaming-feeds.ts";
import { sources } from "../../data/sources.ts";
import { stockAllowances } from "../../data/stock-allowances.ts";
import { escaped } from "./page.ts";

type Cell = string | number;

export function tablesContent(): string {
  const stock = (["mm", "in"] as const).map((units) =>
    table(
      `Stock on diameter, ${units}`,
      [`up to and including, ${units}`, `minimum, ${units}`, `maximum, ${units}`],
      stockAllowances[units].map(({ upTo, minimum, maximum }) => [upTo ?? "above", minimum, maximum]),
    ),
  );
  const feeds = table(
    "Feed per revolution of HSS reamers",
    ["diameter, in", "feed, in/rev", "diameter, mm", "feed, mm/rev"],
    reamingFeeds.map(([diameter, feed]) => [diameter, feed, inMm(diameter), inMm(feed)]),
  );
  const tools = table(
    "Speed and feed of other tools",
    ["tool", "material", "speed, m/min", "feed per tooth, mm (guided blade: per revolution)"],
    modernTools.map(({ tool, materials, speed, feedPerTooth }) => [
      tool,
      materials.join(", "),
      speed.join(" to "),
      feedPerTooth.join(" to "),
    ]),
  );
  const shown = ["5", "6", "7", "8", "9", "10", "11"];
  const grades = table(
    "Standard tolerances, µm",
    ["over, mm", "up to, mm", ...shown.map((grade) => `IT${grade}`)],
    sizeSteps.map((upTo, at) => [
      at === 0 ? 0 : sizeSteps[at - 1],
      upTo,
      ...shown.map((grade) => standardTolerances[grade][at]),
    ]),
  );
  const gauges = (["6", "7"] as const).map((grade) =>
    table(
      `Plug gauges for IT${grade} holes, µm`,
      ["over, mm", "up to, mm", "z", "y", "H"],
      plugGauges[grade].map((row) => [...row]),
    ),
  );
  return `<h1>Tables behind the answers</h1>
<p>What the functions look up. Speeds in HSS and carbide, hardness, and cutting force stand with the <a href="material-names.html">materials</a>. Your own values come first: put them in a table of your own and name it in <a href="DATAFOR.html">DATAFOR</a> or <a href="PLAN.html">PLAN</a>.</p>
${part("Stock", ["stock-metric", "stock-practice"], stock)}
${part("Feeds", ["start-feed", "start-feed-practice"], [feeds])}
${part("Tools", ["modern-tools"], [tools])}
${part("Grades", ["iso-286-1"], [grades])}
${part("Gauge allowances", ["plug-gauges"], gauges)}`;
}

function part(title: string, keys: readonly (keyof typeof sources)[], tables: readonly string[]): string {
  const from = keys.map((key) => sources[key].text).join("; ");
  return `<section><h2>${title}</h2>${tables.join("")}<p><small>${escaped(from)}</small></p></section>`;
}

function table(title: string, head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const cells = (row: readonly Cell[], tag: string) =>
    row.map((cell) => `<${tag}>${escaped(String(cell))}</${tag}>`).join("");
  return `<h3>${escaped(title)}</h3><div class="wide" role="group" aria-label="${escaped(title)}" tabindex="0"><table><thead><tr>${cells(head, "th")}</tr></thead><tbody>${rows
    .map((row) => `<tr>${cells(row, "td")}</tr>`)
    .join("")}</tbody></table></div>`;
}

const inMm = (inches: number) => Number((inches * 25.4).toPrecision(3));
