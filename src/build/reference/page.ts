// build: one reference page of one function, and the frame that all the pages share.

import { type Source, sources } from "../../data/sources.ts";
import type { Declaration } from "../declarations.ts";

export interface PageParts {
  /** Formula lines as MathML, by unit set; empty where there is none. */
  readonly formulas: readonly { readonly title: string; readonly lines: readonly string[] }[];
  /** The worked example, line by line, as STEPS gives it. */
  readonly steps: readonly string[];
  /** What each argument accepts. */
  readonly accepts: ReadonlyMap<string, string>;
  readonly seeAlso: readonly string[];
}

export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** A whole page: head, the ways to the index and the general pages, the content, the cautions. */
export function framed(title: string, policy: string, content: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<title>${escaped(title)}</title>
<link rel="icon" href="../icons/icon-32.png">
<link rel="stylesheet" href="reference.css">
<script src="reference.js" defer></script>
</head>
<body>
<header><nav aria-label="Reference"><a href="index.html">Reamwright reference</a> <a href="rules.html">What holds for every function</a> <a href="callouts.html">How a callout is read</a> <a href="material-names.html">Materials and their names</a></nav></header>
<main>
${content}
</main>
<footer>Starting values for an estimate. The machine's manual, the tool's own data, local codes and qualified people decide what is run. <a href="../licences.txt">Licences</a></footer>
</body>
</html>
`;
}

export function functionContent(declaration: Declaration, parts: PageParts): string {
  const { id, description, remarks, parameters, returns, row, examples } = declaration;
  const shown = parameters.map(({ name, optional, repeating }) =>
    repeating ? `${name}…` : optional ? `[${name}]` : name,
  );
  const sections = [
    `<h1>${id}</h1>`,
    `<p>${escaped(description)}</p>`,
    `<p><code>=REAM.${id}(${escaped(shown.join(", "))})</code></p>`,
    section("Arguments", argumentTable(declaration, parts.accepts)),
    section(
      "Result",
      `<p>${escaped(returns)}.</p>${
        row.length > 0
          ? `<p>Gives ${row.length} cells side by side for each row: ${escaped(row.join(", "))}. Inside a table take one with INDEX, as <code>INDEX(REAM.${id}(…),1,2)</code>.</p>`
          : ""
      }`,
    ),
    parts.formulas.length > 0 &&
      section(
        "Formula",
        parts.formulas
          .map(({ title, lines }) => `${title ? `<h3>${escaped(title)}</h3>` : ""}${lines.join("\n")}`)
          .join("\n"),
      ),
    section(
      "Examples",
      `<table class="examples"><thead><tr><th>Formula</th><th>Result</th></tr></thead><tbody>${examples
        .map(
          ({ formula, result }) =>
            `<tr><td><code>${escaped(formula)}</code></td><td>${escaped(result)}</td></tr>`,
        )
        .join("")}</tbody></table>`,
    ),
    parts.steps.length > 0 &&
      section(`The first example, step by step`, `<pre>${escaped(parts.steps.join("\n"))}</pre>`),
    remarks && section("Good to know", `<p>${escaped(remarks)}</p>`),
    section("Errors", errorText(declaration)),
    section(
      "Source",
      `<ul>${declaration.sources
        .map((key) => sources[key as keyof typeof sources])
        .map(({ kind, text }) => `<li>${escaped(text)} <small>(${kindWords[kind]})</small></li>`)
        .join("")}</ul>`,
    ),
    section(
      "See also",
      `<p>${parts.seeAlso.map((other) => `<a href="${other}.html">${other}</a>`).join(", ")}</p>`,
    ),
  ];
  return sections.filter(Boolean).join("\n");
}

const kindWords: Readonly<Record<Source["kind"], string>> = {
  print: "published",
  exact: "exact by definition",
  derived: "derived",
  practice: "common practice",
  memory: "from memory",
};

function section(title: string, content: string): string {
  return `<section><h2>${escaped(title)}</h2>\n${content}</section>`;
}

function argumentTable({ parameters }: Declaration, accepts: ReadonlyMap<string, string>): string {
  if (parameters.length === 0) return "<p>None.</p>";
  const rows = parameters.map(
    ({ name, description, optional, repeating }) =>
      `<tr><th scope="row">${escaped(name)}${repeating ? "…" : ""}</th><td>${escaped(description)}</td><td>${escaped(accepts.get(name) ?? "")}</td><td>${optional ? "optional" : "required"}</td></tr>`,
  );
  return `<table class="arguments"><thead><tr><th>Name</th><th>What it is</th><th>Takes</th><th>Given</th></tr></thead><tbody>${rows.join("")}</tbody></table>`;
}

function errorText({ parameters, row }: Declaration): string {
  if (parameters.length === 0) return "<p>None.</p>";
  const wide = row.length > 0 ? " A range of several columns is #VALUE! here." : "";
  return `<p><code>#VALUE!</code> where an input is wrong, <code>#N/A</code> where it is right and there is no answer, or where ranges of different sizes do not meet; the message names the argument, what came and what is accepted. One bad row spoils only itself; an error cell given as input comes back as it is.${wide} More in <a href="rules.html">what holds for every function</a>.</p>`;
}
