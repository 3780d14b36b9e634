// taskpane: the curve of cost against surface speed from the user's own figures.

import type { Units } from "../../calc/lengths.ts";
import { readLengthText, readOwnNumberText } from "../../calc/number-text.ts";
import { Refusal } from "../../workbook/workbook.ts";
import { byId, chosen, inputById, make } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";
import { type CostInputs, costCurve, curveFacts, curveFigures } from "../pictures/cost-curve.ts";
import { showPicture } from "./picture.ts";

type NumberName = Exclude<keyof CostInputs, "units">;

const fields: readonly (readonly [name: NumberName, label: string])[] = [
  ["n", "Taylor's n"],
  ["c", "Taylor's C"],
  ["diameter", "Diameter"],
  ["feedPerRev", "Feed per revolution"],
  ["depth", "Depth"],
  ["changeTime", "Edge change, s"],
  ["edgeCost", "Cost of an edge"],
  ["machineRate", "Rate per hour"],
  ["timeFactor", "Time factor"],
];
const idOf = (name: string) => `pane-curve-${name}`;

export function curveView(context: PaneContext): void {
  byId("pane-curve-fields").append(
    ...fields.map(([name, label]) =>
      make(
        "div",
        { class: "pane-argument" },
        make("label", { for: idOf(name) }, label),
        make("input", {
          id: idOf(name),
          inputmode: "decimal",
          autocomplete: "off",
          value: name === "timeFactor" ? "2" : undefined,
          "aria-describedby": name === "timeFactor" ? "pane-curve-factor" : undefined,
        }),
      ),
    ),
  );
  byId("pane-curve-take").addEventListener("click", () =>
    context.run(async () => {
      const figures = (await context.workbook.selected())
        .flatMap(({ values }) => values.flat())
        .filter((value): value is number => typeof value === "number");
      if (figures.length !== 8 && figures.length !== 9)
        throw new Refusal(
          `The selection holds ${figures.length} figures: select eight or nine, in the order of the fields below.`,
        );
      figures.forEach((figure, index) => {
        inputById(idOf(fields[index][0])).value = String(figure);
      });
      return `${figures.length} figures are taken.`;
    }),
  );
  byId<HTMLFormElement>("pane-curve").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      byId("pane-curve-picture").hidden = true;
      const facts = curveFacts(readFields());
      if (!(await context.readCautions())) return "Nothing was drawn: the cautions were not read.";
      showPicture(byId("pane-curve-picture"), "curve", costCurve(facts), curveFigures(facts), context);
      return "The curve is drawn.";
    });
  });
}

const lengths: ReadonlySet<NumberName> = new Set(["diameter", "depth"]);
/** The unit that a field may carry, beside those of length. */
const ownUnit = (name: NumberName, units: Units) =>
  name === "feedPerRev" ? units : name === "changeTime" ? "s" : name === "machineRate" ? "per hour" : "";

function readFields(): CostInputs {
  const units = chosen("curve-units") as Units;
  const read = fields.map(([name, label]) => {
    const text = inputById(idOf(name)).value.trim();
    if (text === "") throw new Refusal(`${label}: a figure is needed.`);
    return [
      name,
      lengths.has(name)
        ? readLengthText(text, name, units)
        : readOwnNumberText(text, name, "2.5", ownUnit(name, units)),
    ];
  });
  return { ...Object.fromEntries(read), units } as CostInputs;
}
