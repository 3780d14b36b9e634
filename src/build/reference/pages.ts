// build: all reference pages: one per function, the rules of all, how a callout is read, the materials, the papers, and the index.

import { copyFileSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Formula } from "../../calc/formula.ts";
import type { Units } from "../../calc/lengths.ts";
import { type Declaration, readDeclarations } from "../declarations.ts";
import { sourceFolder } from "../paths.ts";
import { referencePolicy } from "../policy.ts";
import { calloutContent } from "./callout-page.ts";
import { mathOf } from "./formulas.ts";
import { indexContent } from "./index-page.ts";
import { literalArguments, loadFunctions } from "./load.ts";
import { materialsContent } from "./materials-page.ts";
import { framed, functionContent } from "./page.ts";
import { papersContent } from "./papers-page.ts";
import { pictureOf } from "./pictures.ts";
import { realErrors } from "./real-errors.ts";
import { rulesContent } from "./rules-page.ts";
import { symbolTable } from "./symbols.ts";
import { tablesContent } from "./tables-page.ts";
import { tasks } from "./topics.ts";
import { workedExamples } from "./worked-examples.ts";

/** Writes dist/reference/, with its style. */
export async function writeReference(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of await referencePages()) writeFileSync(join(folder, name), text);
  copyFileSync(join(sourceFolder, "build", "reference", "reference.css"), join(folder, "reference.css"));
}

/** Text of every page by its name in dist/reference/. Throws where a task names a function that is not there. */
async function referencePages(): Promise<Map<string, string>> {
  const declarations = readDeclarations();
  const registered = await loadFunctions(declarations);
  const { explanationOf } = await import("../../../functions/map-rows.ts");
  const { handedOver } = await import("../../../functions/register.ts");
  const { vocabulary } = await import("../../../functions/arguments.ts");
  const accepts = new Map(Object.entries(vocabulary).map(([name, { accepts: says }]) => [name, says]));
  const ids = new Set(declarations.map(({ id }) => id));
  for (const [task, named] of tasks)
    for (const id of named)
      if (!ids.has(id)) throw new Error(`task "${task}" names ${id}, which is no function`);

  const pages = new Map<string, string>();
  for (const declaration of declarations) {
    const { call: handed } = registered.get(declaration.id)!;
    const last = declaration.parameters.length;
    const call = (...inputs: any[]) =>
      handed(...(declaration.parameters.at(-1)?.repeating ? handedOver(last, inputs) : inputs));
    const inputs = literalArguments(declaration.examples[0].formula).inputs;
    const how = explanationOf(call(...inputs));
    const formula = (how?.calculate as { formula?: Formula } | undefined)?.formula;
    const steps = formula ? registered.get("STEPS")!.call([[declaration.id]], inputs) : [];
    const content = functionContent(declaration, {
      asked: tasks.filter(([, named]) => named.includes(declaration.id)).map(([task]) => task),
      formulas: formula && how ? formulasOf(formula, how.values, how.names.includes("units")) : [],
      symbols: formula && how ? symbolTable(declaration, formula, how) : "",
      picture: pictureOf(declaration.id),
      worked: workedExamples(declaration, call),
      steps: steps.map(([line]) => String(line)),
      accepts,
      errors: realErrors(declaration, inputs, call),
      seeAlso: relatedTo(declaration, declarations),
    });
    pages.set(`${declaration.id}.html`, framed(`${declaration.id} – Reamwright`, referencePolicy, content));
  }
  pages.set("rules.html", framed("Rules – Reamwright reference", referencePolicy, rulesContent()));
  pages.set("callouts.html", framed("Callouts – Reamwright reference", referencePolicy, calloutContent()));
  pages.set(
    "material-names.html",
    framed("Materials – Reamwright reference", referencePolicy, materialsContent()),
  );
  pages.set("papers.html", framed("Papers – Reamwright reference", referencePolicy, papersContent()));
  pages.set("tables.html", framed("Tables – Reamwright reference", referencePolicy, tablesContent()));
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

/** Functions named beside it in a task, then its neighbors, each with what it does. */
function relatedTo({ id, topic }: Declaration, declarations: readonly Declaration[]): [string, string][] {
  const named = tasks.filter(([, ids]) => ids.includes(id)).flatMap(([, ids]) => ids);
  const near = declarations.filter((other) => other.topic === topic).map((other) => other.id);
  return [...new Set([...named, ...near])]
    .filter((other) => other !== id)
    .slice(0, 6)
    .map((other) => [other, declarations.find((one) => one.id === other)!.description]);
}
