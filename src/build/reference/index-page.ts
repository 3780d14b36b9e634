// build: the index of the reference, by task and by topic, with its search.

import type { Declaration } from "../declarations.ts";
import { paneHelp } from "../pane-help.ts";
import { escaped } from "./page.ts";
import { tasks, topics } from "./topics.ts";

export function indexContent(declarations: readonly Declaration[]): string {
  const link = (id: string) => `<a href="${id}.html">${id}</a>`;
  const byTask = tasks.map(
    ([task, ids]) => `<li>${escaped(task)}<span class="links">${ids.map(link).join(" ")}</span></li>`,
  );
  const byTopic = topics.map(([topic, title]) => {
    const entries = declarations
      .filter((declaration) => declaration.topic === topic)
      .map(({ id, description }) => `<li>${link(id)} <span>${escaped(description)}</span></li>`);
    return entries.length > 0
      ? `<section class="topic"><h2>${escaped(title)}</h2><ul>${entries.join("\n")}</ul></section>`
      : "";
  });
  const byName = [...declarations].map(({ id }) => id).sort();
  return `<h1>What do you need?</h1>
<p class="search"><label for="search">Search</label> <input id="search" type="search" autocomplete="off" placeholder="how much stock, chip load, hole too big"> <span id="found" role="status"></span></p>
<ul id="results" class="topic"></ul>
<section class="tasks"><h2>By task</h2><ul>${byTask.join("\n")}</ul></section>
${byTopic.join("\n")}
<section class="names"><h2>A to Z</h2><p class="links">${byName.map(link).join(" ")}</p></section>
<script type="application/json" id="help">${JSON.stringify(paneHelp(declarations)).replaceAll("<", "\\u003c")}</script>`;
}
