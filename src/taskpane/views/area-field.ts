// taskpane: a field for cells or a value, with a button that takes the selection.

import { type Area, addressOf, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { readReference, referenceTo } from "../actions/references.ts";
import type { Entry } from "../actions/write-formula.ts";
import { make } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";

export interface AreaField {
  readonly element: HTMLElement;
  readonly input: HTMLInputElement;
  readonly entry: () => Entry;
  readonly set: (area: Area) => void;
}

interface FieldTexts {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly note?: string;
  readonly choices?: readonly string[];
}

export function areaField(
  { id, label, hint, note, choices = [] }: FieldTexts,
  context: PaneContext,
): AreaField {
  /** Of a taken selection; typing over it leaves the sheet open again. */
  let sheet: string | undefined;
  const input = make("input", {
    id,
    autocomplete: "off",
    spellcheck: "false",
    "aria-describedby": hint ? `${id}-hint` : undefined,
    list: choices.length > 0 ? `${id}-choices` : undefined,
  });
  input.addEventListener("input", () => {
    sheet = undefined;
  });
  const set = (area: Area) => {
    sheet = area.sheet;
    input.value = `=${addressOf(area)}`;
    input.dispatchEvent(new Event("change", { bubbles: true }));
  };
  const take = make("button", { type: "button", "aria-label": `Take the selection for ${label}` }, "Take");
  take.addEventListener("click", () =>
    context.run(async () => {
      const area = await takenArea(context.workbook);
      set(area);
      return `${label} is ${referenceTo(area, "")}.`;
    }),
  );
  const element = make(
    "div",
    { class: "pane-argument" },
    make("label", { for: id }, label, ...(note ? [" ", make("span", { class: "pane-note" }, note)] : [])),
    make("div", { class: "pane-field" }, input, take),
  );
  if (hint) element.append(make("p", { id: `${id}-hint`, class: "pane-hint" }, hint));
  if (choices.length > 0)
    element.append(
      make("datalist", { id: `${id}-choices` }, ...choices.map((value) => make("option", { value }))),
    );
  return { element, input, set, entry: () => ({ text: input.value, sheet }) };
}

/** The one selected area, or the active cell where nothing is filled. @throws Refusal for several areas */
async function takenArea(workbook: Workbook): Promise<Area> {
  const areas = await workbook.selected();
  if (areas.length > 1)
    throw new Refusal(
      `${areas.length} areas are selected (${areas.map(addressOf).join(" and ")}): select one.`,
    );
  return areas[0] ?? workbook.active();
}

/** The cells that a field names. @throws Refusal */
export async function areaOf(field: AreaField, label: string, workbook: Workbook): Promise<Area> {
  const { text, sheet } = field.entry();
  const written = text.trim().replace(/^=/, "");
  if (written === "") throw new Refusal(`${label}: take a selection first.`);
  const read = readReference(written, sheet ?? (await workbook.active()).sheet);
  if (!read) throw new Refusal(`${label}: "${text}" is no range of cells such as C6:C35.`);
  return read.area;
}
