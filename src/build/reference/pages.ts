// build: all reference pages: one per function, and an index by task and by topic.

import { copyFileSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Formula } from "../../calc/formula.ts";
import type { Units } from "../../calc/lengths.ts";
import { type Declaration, readDeclarations } from "../declarations.ts";
import { referencePolicy } from "../policy.ts";
import { grammarLines } from "./callout-grammar.ts";
import { mathOf } from "./formulas.ts";
import { literalArguments, loadFunctions, type Matrix } from "./load.ts";
import { escaped, framed, functionContent } from "./page.ts";
import { tasks, topics } from "./topics.ts";

/** Writes dist/reference/, with its style and its search. */
export async function writeReference(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of await referencePages()) writeFileSync(join(folder, name), text);
  for (const name of ["reference.css", "search.js"])
    copyFileSync(join(import.meta.dirname, name), join(folder, name));
}

/** Text of every page by its name in dist/reference/. Throws where a task names a function that is not there. */
export async function referencePages(): Promise<Map<string, string>> {
  const declarations = readDeclarations();
  const registered = await loadFunctions(declarations);
  const { witnessed } = await import("../../../functions/map-rows.ts");
  const { vocabulary } = await import("../../../functions/arguments.ts");
  const accepts = new Map(Object.entries(vocabulary).map(([name, { accepts: says }]) => [name, says]));
  const ids = new Set(declarations.map(({ id }) => id));
  for (const [task, named] of tasks)
    for (const id of named)
      if (!ids.has(id)) throw new Error(`task "${task}" names ${id}, which is no function`);

  const pages = new Map<string, string>();
  for (const declaration of declarations) {
    const call = (inputs: readonly (Matrix | null)[]) => registered.get(declaration.id)!.call(...inputs);
    const inputs = literalArguments(declaration.examples[0]!.formula).inputs;
    const { seen } = witnessed(() => call(inputs));
    const formula = (seen?.calculate as { formula?: Formula } | undefined)?.formula;
    const steps = formula ? registered.get("STEPS")!.call([[declaration.id]], inputs) : [];
    const content = functionContent(declaration, {
      formulas: formula && seen ? formulasOf(formula, seen.values, seen.names.includes("units")) : [],
      steps: steps.map(([line]) => String(line)),
      accepts,
      seeAlso: relatedTo(declaration, declarations),
    });
    pages.set(`${declaration.id}.html`, framed(`${declaration.id} – Reamwright`, referencePolicy, content));
  }
  pages.set("callouts.html", framed("Callouts – Reamwright reference", referencePolicy, calloutContent()));
  pages.set("index.html", framed("Reamwright reference", referencePolicy, indexContent(declarations)));
  return pages;
}

function formulasOf(formula: Formula, values: readonly any[], hasUnits: boolean) {
  const linesIn = (units: Units) => formula.steps(units, ...values).map(mathOf);
  const [metric, inch] = [linesIn("mm"), linesIn("in")];
  if (!hasUnits || metric.join() === inch.join()) return [{ title: "", lines: metric }];
  return [
    { title: "In mm", lines: metric },
    { title: "In inches", lines: inch },
  ];
}

/** Functions named beside it in a task, then its neighbours. */
function relatedTo({ id, topic }: Declaration, declarations: readonly Declaration[]): string[] {
  const named = tasks.filter(([, ids]) => ids.includes(id)).flatMap(([, ids]) => ids);
  const near = declarations.filter((other) => other.topic === topic).map((other) => other.id);
  return [...new Set([...named, ...near])].filter((other) => other !== id).slice(0, 8);
}

function calloutContent(): string {
  return `<h1>How a callout is read</h1>
<p>A callout is the text on the drawing. Every kind of space and line break counts as one space, every kind of minus as one. Capitals are a hole, small letters a shaft. The grammar below is the one that the tests print callouts from: all that it makes is read.</p>
<pre>${escaped(grammarLines().join("\n"))}</pre>
<p><code>?</code> may be left out, <code>*</code> may repeat, <code>_</code> is any space or none, <code>-</code> at least one. SIZE, CLASS, LIMIT, DEPTH and COUNT are numbers and classes as written; DEVIATIONS are two with their signs, either order, or ± one.</p>
<h2>Refused, with the reason</h2>
<ul>
<li>a size or a class alone, one deviation alone, a deviation as large as the size, a tolerance wider than a quarter of it</li>
<li>a thread; a text of over 200 characters; any word or sign not above</li>
<li>a comma that could part thousands (1,250), unless another number in the callout shows it is a decimal comma</li>
<li>a size in inch style (.500) in a sheet of mm without a unit; mm and inches in one callout</li>
<li>a class with deviations that are not its own</li>
</ul>`;
}

function indexContent(declarations: readonly Declaration[]): string {
  const link = (id: string) => `<a href="${id}.html">${id}</a>`;
  const byTask = tasks.map(([task, ids]) => `<li>${escaped(task)}: ${ids.map(link).join(", ")}</li>`);
  const byTopic = topics.map(([topic, title]) => {
    const rows = declarations
      .filter((declaration) => declaration.topic === topic)
      .map(({ id, description }) => `<li data-function>${link(id)} ${escaped(description)}</li>`);
    return rows.length > 0 ? `<section><h2>${escaped(title)}</h2><ul>${rows.join("\n")}</ul></section>` : "";
  });
  return `<h1>What do you need?</h1>
<p><label>Search <input id="search" type="search" autocomplete="off" placeholder="stock, run-out, speed"></label> <span id="found" role="status"></span></p>
<p><a href="callouts.html">How a callout is read</a></p>
<section id="tasks"><h2>By task</h2><ul>${byTask.join("\n")}</ul></section>
${byTopic.join("\n")}
<script src="search.js" defer></script>`;
}
