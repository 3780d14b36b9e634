// workbook: what an .xlsx file says of itself: its sheets and where they lie, defined names, tables, shared strings.

import { Refusal } from "../workbook.ts";
import { type Box, readBox } from "./addresses.ts";
import type { PackageParts } from "./package.ts";
import {
  attribute,
  elements,
  prefixedAttribute,
  readCellText,
  unescapeXml,
  withoutFormatEscapes,
} from "./xml-text.ts";

export interface SheetPart {
  readonly name: string;
  /** The number that the workbook knows it by. */
  readonly id: string;
  /** The part's name in the file. */
  readonly part: string;
}

export interface DefinedName {
  readonly name: string;
  /** The sheet it belongs to, by its place; undefined for the whole workbook. */
  readonly sheet: number | undefined;
  readonly formula: string;
}

export interface Table {
  readonly name: string;
  readonly sheet: number;
  readonly box: Box;
  readonly headerRows: number;
  readonly totalsRows: number;
  readonly columns: readonly string[];
}

export interface TablePart extends Table {
  /** The part's name in the file. */
  readonly part: string;
}

export interface WorkbookParts {
  /** The part that lists the sheets. */
  readonly main: string;
  readonly calculationChain: string | undefined;
  readonly sheets: readonly SheetPart[];
  readonly names: readonly DefinedName[];
  readonly tables: readonly TablePart[];
  /** Dates count from 1904 rather than from 1900. */
  readonly from1904: boolean;
  /** The program that opens the file is asked to compute every formula. */
  readonly asksForAll: boolean;
  /** Results are rounded to what their cells show before others read them. */
  readonly roundsAsShown: boolean;
  readonly sharedStrings: string | undefined;
  readonly signed: boolean;
}

export interface Relation {
  readonly id: string;
  /** The last word of its type: `worksheet`, `table`. */
  readonly kind: string;
  readonly part: string;
}

export function readWorkbookParts(file: PackageParts): WorkbookParts {
  const main = relationsOf(file, "").find(({ kind }) => kind === "officeDocument")?.part;
  if (!main || !file.has(main)) throw new Refusal("the file is no workbook but another document");
  const text = file.read(main);
  if (!/<(?:[\w.-]+:)?workbook[\s>]/.test(text))
    throw new Refusal("the file is no workbook but another document");
  const relations = relationsOf(file, main);
  const byId = new Map(relations.map((relation) => [relation.id, relation]));
  const sheets = [...inside(text, "sheets", "sheet")].map(({ tag }) => {
    const relation = byId.get(prefixedAttribute(tag, "id") ?? "");
    const name = attribute(tag, "name");
    if (!relation || name === undefined || !file.has(relation.part))
      throw new Refusal("the workbook is damaged: it names a sheet that it does not hold");
    return { name, id: attribute(tag, "sheetId") ?? "", part: relation.part };
  });
  if (sheets.length === 0) throw new Refusal("the workbook is damaged: it has no sheet");
  const names = [...inside(text, "definedNames", "definedName")].map(({ tag, inside }) => {
    const sheet = attribute(tag, "localSheetId");
    return {
      name: attribute(tag, "name") ?? "",
      sheet: sheet === undefined ? undefined : Number(sheet),
      formula: unescapeXml(inside),
    };
  });
  const [properties] = elements(text, "workbookPr");
  const [calculation] = elements(text, "calcPr");
  return {
    main,
    calculationChain: relations.find(({ kind, part }) => kind === "calcChain" && file.has(part))?.part,
    sheets,
    names,
    tables: sheets.flatMap(({ part }, sheet) => tablesOf(file, part, sheet)),
    from1904: isTrue(attribute(properties?.tag ?? "", "date1904")),
    asksForAll: isTrue(attribute(calculation?.tag ?? "", "fullCalcOnLoad")),
    roundsAsShown: isFalse(attribute(calculation?.tag ?? "", "fullPrecision")),
    sharedStrings: relations.find(({ kind, part }) => kind === "sharedStrings" && file.has(part))?.part,
    signed: file.names.some((name) => name.toLowerCase().startsWith("_xmlsignatures/")),
  };
}

const isTrue = (value: string | undefined): boolean => value === "1" || value === "true";
const isFalse = (value: string | undefined): boolean => value === "0" || value === "false";

function* inside(text: string, list: string, item: string) {
  for (const element of elements(text, list)) yield* elements(element.inside, item);
}

/** The parts in which formulas may stand. */
export const partsWithFormulas = (file: PackageParts, main: string): string[] =>
  file.names.filter(
    (name) =>
      name === main || /(?:^|\/)(?:worksheets|charts|tables|drawings|pivotCache)\/[^/]+\.xml$/i.test(name),
  );

/** The part that holds the relations of another; of the whole file if it is "". */
export function relationsPart(part: string): string {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  return `${folder}_rels/${part.slice(folder.length)}.rels`;
}

/** The relations of a part, their targets as names of parts. */
export function relationsOf(file: PackageParts, part: string): Relation[] {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  const name = relationsPart(part);
  if (!file.has(name)) return [];
  return [...elements(file.read(name), "Relationship")]
    .filter(({ tag }) => attribute(tag, "TargetMode") !== "External")
    .map(({ tag }) => ({
      id: attribute(tag, "Id") ?? "",
      kind: (attribute(tag, "Type") ?? "").split("/").at(-1)!,
      part: resolved(folder, attribute(tag, "Target") ?? ""),
    }));
}

function resolved(folder: string, target: string): string {
  const path = target.startsWith("/") ? target.slice(1) : folder + target;
  const steps: string[] = [];
  for (const step of path.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== ".") steps.push(step);
  }
  return steps.join("/");
}

function tablesOf(file: PackageParts, part: string, sheet: number): TablePart[] {
  return relationsOf(file, part)
    .filter((relation) => relation.kind === "table" && file.has(relation.part))
    .flatMap((relation) => {
      const [table] = elements(file.read(relation.part), "table");
      const box = readBox(attribute(table?.tag ?? "", "ref") ?? "");
      if (!table || !box) return [];
      return {
        name: attribute(table.tag, "displayName") ?? attribute(table.tag, "name") ?? "",
        sheet,
        part: relation.part,
        box,
        headerRows: Number(attribute(table.tag, "headerRowCount") ?? 1),
        totalsRows: Number(attribute(table.tag, "totalsRowCount") ?? 0),
        columns: [...inside(table.inside, "tableColumns", "tableColumn")].map(({ tag }) =>
          withoutFormatEscapes(attribute(tag, "name") ?? ""),
        ),
      };
    });
}

/** The shared strings in their order. A text in several formats is one text; the reading aid beside it is none of it. */
export function readSharedStrings(text: string): string[] {
  return [...elements(text, "si")].map(({ inside }) => richText(inside));
}

/** The text of `<si>` or `<is>`. */
export function richText(inside: string): string {
  let text = "";
  for (const { inside: piece } of elements(withoutReadingAids(inside), "t")) text += readCellText(piece);
  return text;
}

function withoutReadingAids(inside: string): string {
  if (!inside.includes("rPh")) return inside;
  let text = "";
  let copied = 0;
  for (const { start, end } of elements(inside, "rPh")) {
    text += inside.slice(copied, start);
    copied = end;
  }
  return text + inside.slice(copied);
}
