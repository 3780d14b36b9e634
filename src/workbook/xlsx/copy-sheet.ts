// workbook: a copy of a sheet at the end of its workbook, with all that hangs on it: charts, formats and names of its own
// cells are for those of the copy, its tables have names of their own.

import { Adopted } from "./adopt-parts.ts";
import { withTypes } from "./edit-workbook.ts";
import { drawingNow, formulasAround } from "./follow-around.ts";
import { type Followed, follow } from "./follow-formula.ts";
import { tokensOf } from "./formula-tokens.ts";
import { mapInside, mapTags, NotCertain } from "./map-elements.ts";
import { CONTENT_TYPES, type PackageParts } from "./package.ts";
import { copiedRelations } from "./restructured-parts.ts";
import { freeSheetPart, withEntries } from "./sheet-entries.ts";
import { followed } from "./shift-around.ts";
import { shiftedCells } from "./shift-cells.ts";
import { TableNames, tableKey } from "./table-names.ts";
import { relationsOf, relationsPart, type WorkbookParts } from "./workbook-parts.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements, unescapeXml } from "./xml-text.ts";

export interface CopiedSheet {
  readonly parts: ReadonlyMap<string, string>;
  /** Formulas of the copy whose values may be others, by their places. */
  readonly changed: ReadonlySet<number>;
}

/** @throws NotCertain */
export function copiedSheet(
  file: PackageParts,
  { main, sheets, names, tables }: WorkbookParts,
  place: number,
  name: string,
): CopiedSheet {
  const { name: sheet, part } = sheets[place];
  const text = file.read(part);
  if (relationsOf(file, part).some(({ kind }) => !copiedRelations.has(kind))) throw new NotCertain(part);
  if (isHidden(file.read(main), place) || /<(?:[\w.-]+:)?(?:controls|oleObjects)\b/.test(text))
    throw new NotCertain(part);
  const tableNames = new TableNames(
    file,
    [...tables, ...names].map((one) => one.name),
  );
  const copies = tables
    .filter((table) => table.sheet === place)
    .map(({ name: old, box }) => ({ old, box, name: tableNames.nameOfCopy(old) }));
  const renamed = new Map(copies.map((one) => [one.old.toUpperCase(), one.name]));
  const places = new Map(copies.map((one) => [tableKey(one.box), one.name]));
  const all = sheets.map((one) => one.name);
  const now = (formula: string): Followed | undefined =>
    follow(withTableNames(formula, renamed), sheet, { sheet, name }, all);
  const inTable = (own: string) =>
    ["calculatedColumnFormula", "totalsRowFormula"].reduce(
      (table, element) => mapInside(table, element, (inside) => followed(inside, now)),
      tableNames.given(own, places),
    );
  const adopted = new Adopted(
    file,
    { ...file, names: file.names, picture: () => undefined },
    (own, inside) => (/\/tables\//i.test(own) ? inTable(inside) : drawingNow(own, inside, now)),
    (own) => !/\.(?:xml|vml)$/i.test(own),
  );
  // Formulas that name their own sheet read it as before, as the grid has them; its own tables are those of the copy.
  const inCells = (formula: string) => ({ text: withTableNames(formula, renamed), isOther: false });
  const found = shiftedCells(text, inCells, undefined, () => false);
  if (!found) throw new NotCertain(sheet);
  const around = formulasAround(found.text, { alone: now, shared: now, isMoved: false });
  const copy = freeSheetPart(file);
  const relations = adopted.relations(part);
  const printer = relationsOf(file, part).find(({ kind }) => kind === "printerSettings")?.id;
  const localNames = (at: number) =>
    [...elements(file.read(main), "definedName")]
      .filter(({ tag }) => attribute(tag, "localSheetId") === String(place))
      .map(({ tag, inside }) => {
        const own = withAttribute(tag, "localSheetId", String(at));
        return `${own}${followed(inside, now)}</definedName>`;
      })
      .join("");
  const entries = withEntries(file, main, [{ name, part: copy, names: localNames }]);
  if (!entries) throw new NotCertain(main);
  const parts = new Map([...entries, ...adopted.parts, [copy, withoutIdentity(around, printer)]]);
  const types = parts.get(CONTENT_TYPES)!;
  parts.set(CONTENT_TYPES, withTypes(types, adopted.types(types)));
  if (relations !== undefined)
    parts.set(
      relationsPart(copy),
      mapTags(relations, "Relationship", (tag) => (attribute(tag, "Id") === printer ? undefined : tag)),
    );
  return { parts, changed: found.changed };
}

const isHidden = (workbook: string, place: number): boolean =>
  [...elements(workbook, "sheet")].some(
    ({ tag }, i) => i === place && (attribute(tag, "state") ?? "visible") !== "visible",
  );

const withTableNames = (formula: string, renamed: ReadonlyMap<string, string>): string =>
  renamed.size === 0
    ? formula
    : tokensOf(formula)
        .map(({ kind, text }) => (kind === "name" ? (renamed.get(text.toUpperCase()) ?? text) : text))
        .join("");

/** Without what one sheet of a workbook has: that it is in sight, its name in macros, the settings of its printer. */
const withoutIdentity = (sheet: string, printer: string | undefined): string => {
  const views = mapTags(sheet, "sheetView", (tag) => withAttribute(tag, "tabSelected", undefined));
  const unnamed = mapTags(views, "sheetPr", (tag) => withAttribute(tag, "codeName", undefined));
  return mapTags(unnamed, "pageSetup", (tag) =>
    printer === undefined ? tag : tag.replace(new RegExp(`\\s[\\w.-]+:id="${unescapeXml(printer)}"`), ""),
  );
};
