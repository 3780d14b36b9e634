// workbook: the parts around the sheets that have to follow where cells change: the list of formulas in the order of their
// calculation, the mark of formulas that take the cells they need, the wish for a full calculation.

import { cellName, readCell } from "./addresses.ts";
import { mapTags } from "./map-elements.ts";
import { CONTENT_TYPES, type PackageParts } from "./package.ts";
import { relationsPart } from "./workbook-parts.ts";
import { cellAt, placeOf, withAttribute } from "./write-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

type Parts = Map<string, string>;

const OFFICE = "http://schemas.openxmlformats.org";
const METADATA = "xl/metadata.xml";
const METADATA_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
const METADATA_RELATION = `${OFFICE}/officeDocument/2006/relationships/sheetMetadata`;

const TYPE =
  '<metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>';
const FUTURE =
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>';
const markOf = (type: number) => `<bk><rc t="${type}" v="0"/></bk>`;

const newMetadata = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="${OFFICE}/spreadsheetml/2006/main"><metadataTypes count="1">${TYPE}</metadataTypes>${FUTURE}<cellMetadata count="1">${markOf(1)}</cellMetadata></metadata>`;

/** The mark of a formula that takes the cells it needs; undefined where the file has marks in a way that is not followed. */
export function spillMark(file: PackageParts, main: string, parts: Parts): string | undefined {
  const existing = file.names.find((name) => /(?:^|\/)metadata\.xml$/i.test(name));
  if (existing) {
    const text = file.read(existing);
    const types = [...elements(text, "metadataType")].map(({ tag }) => attribute(tag, "name"));
    const [list] = elements(text, "cellMetadata");
    const marks = [...elements(list?.inside ?? "", "bk")].map(({ inside }) =>
      Number(/\bt="(\d+)"/.exec(inside)?.[1]),
    );
    const mark = marks.findIndex((type) => types[type - 1] === "XLDAPR");
    if (mark >= 0) return String(mark + 1);
    const more = types.includes("XLDAPR") ? undefined : withType(text, types.length, marks.length);
    if (more === undefined) return undefined;
    parts.set(existing, more);
    return String(marks.length + 1);
  }
  const relations = relationsPart(main);
  parts.set(METADATA, newMetadata);
  const type = `<Override PartName="/${METADATA}" ContentType="${METADATA_TYPE}"/>`;
  parts.set(CONTENT_TYPES, withTypes(parts.get(CONTENT_TYPES) ?? file.read(CONTENT_TYPES), [type]));
  parts.set(
    relations,
    added(
      parts.get(relations) ?? file.read(relations),
      "Relationships",
      `<Relationship Id="rIdReamwrightMetadata" Type="${METADATA_RELATION}" Target="/${METADATA}"/>`,
    ),
  );
  return "1";
}

/** Marks with one more kind and one mark of that kind, behind those that are there. */
function withType(text: string, types: number, marks: number): string | undefined {
  const [kinds] = elements(text, "metadataTypes");
  if (!kinds?.tag.startsWith("<metadataTypes") || types === 0) return undefined;
  const list = (name: string, count: number, inside: string) =>
    `<${name} count="${count}">${inside}</${name}>`;
  const before = ["mdxMetadata", "metadataStrings", "metadataTypes"];
  const future = [...elements(text, "futureMetadata")].at(-1);
  const [last] = future ? [future] : before.flatMap((name) => [...elements(text, name)]);
  const [own] = elements(text, "cellMetadata");
  const end = own?.end ?? last.end;
  return [
    text.slice(0, kinds.start),
    list("metadataTypes", types + 1, kinds.inside + TYPE),
    text.slice(kinds.end, Math.max(kinds.end, last.end)),
    FUTURE,
    text.slice(Math.max(kinds.end, last.end), own?.start ?? end),
    list("cellMetadata", marks + 1, (own?.inside ?? "") + markOf(types + 1)),
    text.slice(end),
  ].join("");
}

/** The part with one more element at the end of its outermost, under the prefix that it has. */
export const added = (text: string, root: string, element: string): string =>
  text.replace(
    new RegExp(`</((?:[\\w.-]+:)?)${root}\\s*>\\s*$`),
    (end, prefix: string) => `<${prefix}${element.slice(1)}${end}`,
  );

/** The list of the kinds of parts with more of them. */
export const withTypes = (list: string, types: readonly string[]): string =>
  types.reduce((text, type) => added(text, "Types", type), list);

/** Asks the program that opens the file to compute every formula. */
export function askForAll(workbook: string): string {
  const [calculation] = elements(workbook, "calcPr");
  const [root] = elements(workbook, "workbook");
  const prefix = /^<((?:[\w.-]+:)?)/.exec(root?.tag ?? "")?.[1] ?? "";
  if (calculation) {
    const bare = calculation.tag.replace(/\sfullCalcOnLoad\s*=\s*(?:"[^"]*"|'[^']*')/, "");
    const tag = bare.replace(/\s*(\/?>)$/, ' fullCalcOnLoad="1"$1');
    return (
      workbook.slice(0, calculation.start) + tag + workbook.slice(calculation.start + calculation.tag.length)
    );
  }
  const before = ["definedNames", "externalReferences", "functionGroups", "sheets"];
  const last = before.flatMap((name) => [...elements(workbook, name)]).sort((a, b) => b.end - a.end)[0];
  if (!last) return workbook;
  return `${workbook.slice(0, last.end)}<${prefix}calcPr fullCalcOnLoad="1"/>${workbook.slice(last.end)}`;
}

/** The list of formulas without some cells, by the number that the workbook gives their sheet; it may have them no more. */
export function withoutCalculated(chain: string, gone: ReadonlySet<string>): string {
  let sheet = "";
  return chain.replace(/<(?:[\w.-]+:)?c\s[^>]*\/>/g, (element) => {
    sheet = attribute(element, "i") ?? sheet;
    if (gone.has(`${sheet} ${attribute(element, "r")}`)) return "";
    return attribute(element, "i") === undefined ? element.replace(/\s*\/>$/, ` i="${sheet}"/>`) : element;
  });
}

/** The list of formulas where those of a sheet, by the number that the workbook gives it, stand elsewhere or are gone. */
export function chainNow(
  chain: string,
  sheetId: string,
  placeNow: (place: number) => number | undefined,
): string {
  let last = "";
  return mapTags(chain, "c", (tag) => {
    const isTold = attribute(tag, "i") !== undefined;
    last = attribute(tag, "i") ?? last;
    const cell = readCell(attribute(tag, "r") ?? "");
    if (last !== sheetId || !cell) return isTold ? tag : withAttribute(tag, "i", last);
    const now = placeNow(placeOf(cell.row, cell.column));
    if (now === undefined) return undefined;
    const { row, column } = cellAt(now);
    return withAttribute(withAttribute(tag, "r", cellName(row, column)), "i", last);
  });
}

export const calculatedKey = (sheetId: string, row: number, column: number): string =>
  `${sheetId} ${cellName(row, column)}`;
