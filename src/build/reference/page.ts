// build: one reference page of one function, and the frame that all the pages share.

import { type Source, sources } from "../../data/sources.ts";
import type { Declaration } from "../declarations.ts";
import type { RealError } from "./real-errors.ts";

export interface PageParts {
  /** What people ask when they need it. */
  readonly asked: readonly string[];
  /** Formula lines as MathML, by unit set; empty where there is none. */
  readonly formulas: readonly { readonly title: string; readonly lines: readonly string[] }[];
  /** The table of the formula's symbols. */
  readonly symbols: string;
  /** What words say badly, drawn: SVG, or "". */
  readonly picture: string;
  /** The tables of the worked examples. */
  readonly worked: string;
  /** The first example, line by line, as STEPS gives it. */
  readonly steps: readonly string[];
  /** What each argument accepts. */
  readonly accepts: ReadonlyMap<string, string>;
  readonly errors: readonly RealError[];
  readonly seeAlso: readonly (readonly [id: string, reason: string])[];
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
<header><nav aria-label="Reference"><a href="index.html">Reamwright reference</a> <a href="rules.html">What holds for every function</a> <a href="callouts.html">How a callout is read</a> <a href="material-names.html">Materials and their names</a> <a href="tables.html">Tables</a> <a href="papers.html">Papers</a></nav></header>
<main>
${content}
</main>
<footer>Starting values for an estimate. The machine's manual, the tool's own data, local codes and qualified people decide what is run. <a href="../licenses.txt">Licenses</a></footer>
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
    section(
      "When to use it",
      `<p>${parts.asked.map((question) => escaped(question)).join("<br>")}</p>${remarks ? `<p>${escaped(remarks)}</p>` : ""}`,
    ),
    section("Arguments", argumentTable(declaration, parts.accepts)),
    section(
      "Result",
      `<p>${escaped(returns)}.</p>${
        row.length > 0
          ? `<p>${row.length} cells side by side for each row: ${escaped(row.join(", "))}. Inside a table take one with INDEX: <code>INDEX(REAM.${id}(…),1,2)</code>.</p>`
          : ""
      }`,
    ),
    parts.picture !== "" &&
      section(
        "Picture",
        `<div class="wide picture" role="group" aria-label="Picture" tabindex="0">${parts.picture}</div>`,
      ),
    parts.formulas.length > 0 &&
      section(
        "Formula",
        `${parts.formulas
          .map(
            ({ title, lines }) =>
              `${title ? `<h3>${escaped(title)}</h3>` : ""}<div class="wide math" role="group" aria-label="Formula ${escaped(title.toLowerCase())}" tabindex="0">${lines.join("\n")}</div>`,
          )
          .join("\n")}\n${parts.symbols}`,
      ),
    section(
      "Worked example",
      `${parts.worked}<p>Where your Excel separates arguments by <code>;</code>, write <code>;</code> for each comma.</p>`,
    ),
    parts.steps.length > 0 &&
      section("The first example, step by step", `<pre>${escaped(parts.steps.join("\n"))}</pre>`),
    examples.length > 2 && section("More examples", exampleTable(examples)),
    section("Errors", errorText(declaration, parts.errors)),
    section(
      "Source",
      `<ul>${declaration.sources
        .map((key) => sources[key as keyof typeof sources])
        .map(({ kind, text }) => `<li>${escaped(text)} <small>(${kindWords[kind]})</small></li>`)
        .join("")}</ul>`,
    ),
    section(
      "See also",
      `<ul>${parts.seeAlso
        .map(([other, reason]) => `<li><a href="${other}.html">${other}</a>: ${escaped(reason)}</li>`)
        .join("")}</ul>`,
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

function exampleTable(examples: Declaration["examples"]): string {
  const rows = examples.map(
    ({ formula, result }) => `<tr><td><code>${escaped(formula)}</code></td><td>${escaped(result)}</td></tr>`,
  );
  return `<table class="examples"><thead><tr><th>Formula</th><th>Result</th></tr></thead><tbody>${rows.join("")}</tbody></table>`;
}

function argumentTable({ parameters }: Declaration, accepts: ReadonlyMap<string, string>): string {
  if (parameters.length === 0) return "<p>None.</p>";
  const rows = parameters.map(
    ({ name, description, optional, repeating }) =>
      `<tr><th scope="row">${escaped(name)}${repeating ? "…" : ""}</th><td>${escaped(description)}</td><td>${escaped(accepts.get(name) ?? "")}</td><td>${optional ? "optional" : "required"}</td></tr>`,
  );
  return `<table class="arguments"><thead><tr><th>Name</th><th>What it is</th><th>Takes</th><th>Given</th></tr></thead><tbody>${rows.join("")}</tbody></table>`;
}

function errorText({ parameters, row }: Declaration, errors: readonly RealError[]): string {
  if (parameters.length === 0) return "<p>None.</p>";
  const wide = row.length > 0 ? " A range of several columns is #VALUE! here." : "";
  const real =
    errors.length > 0
      ? `<table class="errors"><thead><tr><th>If this cell</th><th>holds</th><th>you get</th><th>and read</th></tr></thead><tbody>${errors
          .map(
            ({ argument, content, code, message }) =>
              `<tr><th scope="row">${escaped(argument)}</th><td>${escaped(content)}</td><td><code>${escaped(code)}</code></td><td>${escaped(message)}</td></tr>`,
          )
          .join("")}</tbody></table>`
      : "";
  return `${real}<p>Each message says what the cell may hold. One bad row spoils only itself. An error cell as input comes back as it is. Ranges of different sizes give <code>#N/A</code> where they do not meet.${wide} More in <a href="rules.html">what holds for every function</a>.</p>`;
}
