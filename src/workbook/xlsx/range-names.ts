// workbook: names of ranges that are new, other or gone, in the list that a workbook has of them.

import { boxName, readBox } from "./addresses.ts";
import { tokensOf } from "./formula-tokens.ts";
import { mapElements } from "./map-elements.ts";
import type { PackageParts } from "./package.ts";
import { formulaRoom, readSheet } from "./read-sheet.ts";
import { withNames } from "./sheet-entries.ts";
import { partsWithFormulas, readWorkbookParts } from "./workbook-parts.ts";
import { placeOf } from "./write-sheet.ts";
import { attribute, escapeXml } from "./xml-text.ts";

export interface Renamed {
  /** The part that lists the names. */
  readonly text: string;
  /** Formulas that call one of them, by the places of their sheets and of cells. */
  readonly changed: readonly ReadonlySet<number>[];
}

/**
 * Undefined if the workbook is written in a way that is not followed here, or something other than cells calls a name
 * that is gone.
 * @param ranges by names: `'Job 7'!A1:B2`; undefined for a name that is gone
 */
export function withRanges(
  file: PackageParts,
  ranges: ReadonlyMap<string, string | undefined>,
): Renamed | undefined {
  const { main, sheets, names } = readWorkbookParts(file);
  const keys = new Map([...ranges.keys()].map((name) => [name.toUpperCase(), name]));
  const text = file.read(main);
  const isPlain = /<sheets[\s>]/.test(text);
  const called = new Set(keys.keys());
  const calls = (formula: string) => tokensOf(formula).some(({ text }) => called.has(text.toUpperCase()));
  for (let count = 0; count !== called.size; ) {
    count = called.size;
    for (const { name, formula } of names) if (calls(formula)) called.add(name.toUpperCase());
  }
  const gone = [...ranges].flatMap(([name, range]) => (range === undefined ? name.toUpperCase() : []));
  const isCalledElsewhere = gone.some(
    (name) =>
      names.some(({ formula }) => tokensOf(formula).some(({ text }) => text.toUpperCase() === name)) ||
      partsWithFormulas(file, main).some((part) => part !== main && isCalled(file.read(part), name)),
  );
  if (!isPlain || isCalledElsewhere) return undefined;
  const written = new Set<string>();
  const own = mapElements(text, "definedName", ({ tag, start, end }) => {
    const whole = text.slice(start, end);
    const name = keys.get((attribute(tag, "name") ?? "").toUpperCase());
    if (name === undefined || attribute(tag, "localSheetId") !== undefined) return whole;
    written.add(name);
    const range = ranges.get(name);
    return range === undefined ? "" : `${tag}${escapeXml(fixed(range))}</definedName>`;
  });
  const more = [...ranges].flatMap(([name, range]) =>
    range === undefined || written.has(name)
      ? []
      : `<definedName name="${escapeXml(name)}">${escapeXml(fixed(range))}</definedName>`,
  );
  const changed = sheets.map(({ part }) => {
    const places = new Set<number>();
    readSheet(file.read(part), formulaRoom(), ({ row, column }, formula) => {
      if (formula?.text !== undefined && calls(formula.text)) places.add(placeOf(row, column));
    });
    return places;
  });
  return { text: withNames(own, more.join("")), changed };
}

/** Whether a chart, a table, or what a sheet has around its cells calls a name. */
function isCalled(part: string, name: string): boolean {
  const word = new RegExp(`(?:^|[^\\p{L}\\w.])${name}(?![\\p{L}\\w.(])`, "iu");
  return word.test(part.replace(/<(?:[\w.-]+:)?sheetData[\s>][\s\S]*<\/(?:[\w.-]+:)?sheetData\s*>/, ""));
}

/** A range of the grid with dollar signs. */
function fixed(range: string): string {
  const at = range.lastIndexOf("!") + 1;
  const area = range.slice(at);
  const box = readBox(area.replaceAll("$", ""));
  const plain = box ? boxName(box) : area;
  return range.slice(0, at) + plain.replace(/[A-Z]+|\d+/g, "$$$&");
}
