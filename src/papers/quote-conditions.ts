// papers: the conditions under a customer quote.

import { readCallout } from "../calc/callouts/read-callout.ts";
import { findMaterial } from "../calc/materials/find-material.ts";
import { beforePlating } from "../calc/reamers/reamer-limits.ts";
import { Refusal } from "../workbook/workbook.ts";
import { lengthFigure } from "./figures.ts";
import { COLUMNS, cell, type Layout, linesOf } from "./layout.ts";
import type { QuoteData } from "./quote-data.ts";
import type { QuotedPart } from "./quoted-part.ts";

/** Materials whose chips burn. */
const BURNING: ReadonlySet<string> = new Set(["magnesium", "titanium"]);

export function conditions(layout: Layout, data: QuoteData, parts: readonly QuotedPart[]): void {
  const { texts } = data;
  layout.heading("Conditions");
  for (const [label, text] of [
    ["Delivery", texts.delivery],
    ["Payment", texts.payment],
    ["Freight", texts.freight],
  ])
    layout.row([cell(label, 2, "label"), cell(text, 10, text === "" ? "line" : undefined, "@")]);
  const said: string[] = [];
  if (texts.arrive.toLowerCase() === "drilled") said.push(...parts.map(drilledSentence));
  if (texts.inspection !== "") said.push(`Inspection: ${texts.inspection}`);
  for (const part of parts) {
    const finish = roughness(part.callout) ?? texts.finish;
    if (finish !== "") said.push(`Finish of ${part.part}: ${finish}`);
  }
  said.push(
    "Prices hold for the material and hardness stated. Harder material or a hard skin changes the price.",
    "A reamer follows the drilled hole. It does not correct its position.",
    "Sizes are at 20 °C (68 °F).",
    ...platingSentences(parts, data),
  );
  if (parts.some(({ material }) => BURNING.has(findMaterial(material).key)))
    said.push("Chips burn; tell us about other metals in the parts.");
  for (const text of said) layout.row([cell(text, COLUMNS, "wrapped", "@")], linesOf(text));
}

function drilledSentence({ part, drill, stock, units, rowNumber }: QuotedPart): string {
  if (drill === "" || stock === undefined)
    throw new Refusal(
      `Row ${rowNumber} has no drill, and the parts arrive drilled. Set "Parts arrive" to blank, or change the row.`,
    );
  const named = /^[\d./-]+$/.test(drill) ? `${drill} ${units}` : drill;
  return `${part}: please drill to ${named} (${lengthFigure(stock, units)} ${units} on diameter), position to drawing.`;
}

/** What a callout says of the surface, as it is written. */
export function roughness(callout: string): string | undefined {
  return /\bR[az]\s*\d+(?:[.,]\d+)?|√\s*\d+(?:[.,]\d+)?|\d+(?:[.,]\d+)?\s*√|\b\d+\s*(?:RMS|FINISH)\b/i.exec(
    callout,
  )?.[0];
}

/** One thickness is typed for all plated holes, so they are in one unit. */
function platingSentences(parts: readonly QuotedPart[], data: QuoteData): string[] {
  const plated = parts.filter(({ callout, units }) => readCallout(callout, "callout", units).coated === true);
  const other = plated.find(({ units }) => units !== plated[0].units);
  if (other && data.coating)
    throw new Refusal(
      `Rows ${plated[0].rowNumber} and ${other.rowNumber} are plated, one in mm and one in inches, and the coating has one thickness. Quote them apart.`,
    );
  return plated.map((part) => platingSentence(part, data));
}

function platingSentence({ part, callout, units, rowNumber }: QuotedPart, { coating }: QuoteData): string {
  const read = readCallout(callout, "callout", units);
  if (!coating)
    throw new Refusal(
      `Row ${rowNumber} is plated after reaming. Write the coating thickness on the sheet "Quote data".`,
    );
  const { thickness, tolerance, buildUp } = coating;
  const [low, high] = beforePlating(read, thickness, tolerance, buildUp, units);
  const length = (value: number) => lengthFigure(value, units);
  return `${part}: reamed to the size before coating: ${length(low)}–${length(high)} ${units}, for a coating of ${length(thickness)} ± ${length(tolerance)} ${units}.`;
}
