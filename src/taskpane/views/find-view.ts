// taskpane: finding a function, reading it, filling its arguments and putting it into the sheet.

import { addressOf } from "../../workbook/workbook.ts";
import { functionFinder } from "../actions/find-functions.ts";
import { inHostForm } from "../actions/host-formula.ts";
import { type Entry, planFormula, putFormula, type Reach } from "../actions/write-formula.ts";
import { byId, chosen, inputById, make } from "../dom.ts";
import { type Help, type HelpFunction, signature } from "../help.ts";
import { type PaneContext, reasonOf } from "../pane-context.ts";
import { type AreaField, areaField } from "./area-field.ts";

const MOST_FOUND = 12;
/** More ranges of a repeating argument than anyone fills here; the rest is typed. */
const REPEATED_FIELDS = 4;
/** Topics whose results are run on a machine. */
const SPEED_TOPICS = new Set(["Speeds and feeds", "Torque and power", "Tool life"]);

export function findView(context: PaneContext): void {
  const load = async () => {
    byId("pane-count").textContent = "Loading the list of functions…";
    try {
      startSearch(await context.help(), context);
    } catch (error) {
      byId("pane-count").textContent =
        `The list of functions could not be loaded (${(error as Error).message}). The functions themselves work in cells.`;
      byId("pane-found").replaceChildren(listButton("Try again", "", () => void load()));
    }
  };
  void load();
  startForm(context);
}

function startSearch(help: Help, context: PaneContext): void {
  const find = functionFinder(help);
  const query = inputById("pane-query");
  const found = byId("pane-found");
  const byName = new Map(help.functions.map((described) => [described.id, described]));

  const entryFor = (described: HelpFunction) =>
    listButton(`REAM.${described.id}`, described.description, () => open(described, context));
  const showTasks = () => {
    byId("pane-count").textContent = "Or pick what you have and need:";
    found.replaceChildren(
      ...help.tasks.map(({ task, ids }) =>
        listButton(task, ids.join(", "), () => {
          const known = ids.map((id) => byName.get(id)).filter((one) => one !== undefined);
          byId("pane-count").textContent = task;
          found.replaceChildren(
            ...known.map(entryFor),
            listButton("← All tasks", "", () => {
              showTasks();
              query.focus();
            }),
          );
          found.querySelector("button")?.focus();
        }),
      ),
    );
  };
  const search = () => {
    if (query.value.trim() === "") return showTasks();
    const { functions: all, fits } = find(query.value);
    const told = all.length === 1 ? "1 function" : `${all.length} functions`;
    byId("pane-count").textContent = !fits
      ? "Nothing fits these words. These are used most:"
      : all.length > MOST_FOUND
        ? `${told}, the nearest ${MOST_FOUND} first`
        : told;
    found.replaceChildren(...all.slice(0, MOST_FOUND).map(entryFor));
  };
  query.addEventListener("input", search);
  query.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== "ArrowDown") return;
    event.preventDefault();
    found.querySelector("button")?.focus();
  });
  byId("pane-back").addEventListener("click", () => {
    byId("pane-function").hidden = true;
    byId("pane-search").hidden = false;
    query.focus();
  });
  search();
}

function listButton(title: string, text: string, act: () => void): HTMLElement {
  const button = make("button", { type: "button" }, make("b", {}, title));
  if (text) button.append(" ", make("span", {}, text));
  button.addEventListener("click", act);
  return make("li", {}, button);
}

interface OpenForm {
  readonly described: HelpFunction;
  readonly fields: readonly AreaField[];
}
let opened: OpenForm | undefined;

function open(described: HelpFunction, context: PaneContext): void {
  const { id, description, returns, row, remarks, examples, parameters } = described;
  byId("pane-name").textContent = `REAM.${id}`;
  byId("pane-description").textContent = description;
  byId("pane-signature").textContent = signature(described);
  byId("pane-returns").textContent = row.length > 0 ? `${row.join(", ")}, side by side` : returns;
  const showExamples = (hasDecimalComma: boolean) =>
    byId("pane-examples").replaceChildren(
      ...examples.map(({ formula, result }) =>
        make("p", {}, make("code", {}, inHostForm(formula, hasDecimalComma)), ` gives ${result}`),
      ),
    );
  showExamples(false);
  void context.workbook
    .hasDecimalComma()
    .then((has) => has && opened?.described.id === id && showExamples(has));
  byId("pane-remarks").textContent = remarks;
  byId("pane-more").setAttribute("href", `reference/${id}.html`);
  const fields = parameters.flatMap(({ name, description: what, accepts, optional, repeating, choices }) =>
    Array.from({ length: repeating ? REPEATED_FIELDS : 1 }, (_, index) =>
      areaField(
        {
          id: `pane-argument-${name}-${index}`,
          label: index === 0 ? name : `${name} ${index + 1}`,
          hint: index === 0 ? [what, accepts].filter(Boolean).join(" — ") : undefined,
          note: optional || index > 0 ? "may be left out" : undefined,
          choices,
        },
        context,
      ),
    ),
  );
  const none = make("p", { class: "pane-hint" }, "None.");
  byId("pane-arguments").replaceChildren(
    ...(fields.length > 0 ? fields.map(({ element }) => element) : [none]),
  );
  opened = { described: unrolled(described), fields };
  byId("pane-search").hidden = true;
  byId("pane-function").hidden = false;
  byId("pane-formula").textContent = signature(described);
  byId("pane-name").focus();
}

/** A repeating argument as so many optional ones. */
function unrolled(described: HelpFunction): HelpFunction {
  return {
    ...described,
    parameters: described.parameters.flatMap((argument) =>
      argument.repeating
        ? Array.from({ length: REPEATED_FIELDS }, (_, index) => ({
            ...argument,
            optional: argument.optional || index > 0,
          }))
        : [argument],
    ),
  };
}

function startForm(context: PaneContext): void {
  const form = byId<HTMLFormElement>("pane-put");
  const plan = () => {
    const { described, fields } = opened!;
    const entries: Entry[] = fields.map(({ entry }) => entry());
    return planFormula(context.workbook, described, entries, chosen("reach") as Reach);
  };
  const shown = async (formula: string) => inHostForm(formula, await context.workbook.hasDecimalComma());
  const preview = async () => {
    const formula = byId("pane-formula");
    try {
      formula.textContent = await shown((await plan()).formula);
    } catch (thrown) {
      formula.textContent = reasonOf(thrown);
    }
  };
  form.addEventListener("input", preview);
  form.addEventListener("change", preview);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      await plan();
      if (SPEED_TOPICS.has(opened!.described.topic) && !(await context.readCautions()))
        return "Nothing was put in: the cautions were not read.";
      // Another cell may have been selected, or filled, while they were read.
      const made = await plan();
      await putFormula(context.workbook, made);
      const formula = await shown(made.formula);
      byId("pane-formula").textContent = formula;
      return `${addressOf(made.target)} holds ${formula}`;
    });
  });
}
