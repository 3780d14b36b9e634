// workbook: sheets that were made elsewhere put into a workbook, in parts of their own, at its end or in the place of one
// of its sheets; what is there already stays as it is.

import { Adopted, type OtherPackage } from "./adopt-parts.ts";
import { added, withTypes } from "./edit-workbook.ts";
import { leaveOut } from "./leave-out.ts";
import { mergedStyles } from "./merge-styles.ts";
import { CONTENT_TYPES, over, type PackageParts } from "./package.ts";
import { removableRelations } from "./restructured-parts.ts";
import { freeSheetPart, type SheetEntry, withEntries } from "./sheet-entries.ts";
import { isColumnNamed } from "./table-cells.ts";
import { isTableNamed, TableNames, type TablePlaces, tableKey } from "./table-names.ts";
import { readWorkbookParts, relationsOf, relationsPart, type Table } from "./workbook-parts.ts";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const STYLES = "xl/styles.xml";
const STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

export interface MadeSheet {
  readonly name: string;
  /** Its part in the package that it comes with. */
  readonly part: string;
  /** The text of its part, with styles by their numbers in the styles of that package. */
  readonly text: string;
  /** The place of the sheet whose place it takes; undefined for a sheet that is new. */
  readonly instead?: number;
  /** The names for its printed cells, if it stands at this place of the workbook, from 0. */
  readonly printNames?: (place: number) => string;
}

/** Sheets with the package that they were made in. */
export interface MadeSheets {
  readonly sheets: readonly MadeSheet[];
  readonly styles: string;
  readonly from: OtherPackage;
}

/** Parts of a workbook that are new or have changed, among them these of new sheets. */
export interface WithSheets {
  readonly parts: ReadonlyMap<string, string>;
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  /** Parts that are left out, by their names in small letters. */
  readonly gone: ReadonlySet<string>;
  /** The parts of the sheets that are new. */
  readonly added: readonly string[];
}

/** Undefined if the workbook is written in a way that is not followed here. */
export function putSheets(file: PackageParts, { sheets, styles, from }: MadeSheets): WithSheets | undefined {
  const { main, sheets: own, tables, names } = readWorkbookParts(file);
  const parts = new Map<string, string>();
  const gone = new Set<string>();
  const now = over(file, parts, gone);
  const { read } = now;
  for (const { instead } of sheets) {
    if (instead === undefined) continue;
    const { part } = own[instead];
    const relations = relationsOf(file, part);
    if (relations.some(({ kind }) => !removableRelations.has(kind))) return undefined;
    if (!file.has(relationsPart(part))) continue;
    const left = leaveOut(now, part, () => true);
    for (const [name, text] of left.parts) parts.set(name, text);
    for (const name of left.gone) gone.add(name);
  }
  const styleSheet = relationsOf(file, main).find(
    ({ kind, part }) => kind === "styles" && file.has(part),
  )?.part;
  // A workbook without styles has those that come with the sheets.
  const merged =
    styleSheet === undefined
      ? { text: styles, cells: 0, conditional: 0 }
      : mergedStyles(read(styleSheet), styles);
  if (!merged) return undefined;
  const replaced = new Set(sheets.flatMap(({ instead }) => instead ?? []));
  const isKept = ({ sheet }: Table) => !replaced.has(sheet);
  const taken = [...tables.filter(isKept), ...names].map(({ name }) => name);
  const tableNames = new TableNames(now, taken);
  /** Tables of the sheet that gives way. */
  let had: TablePlaces = new Map();
  const adopted = new Adopted(now, from, (name, text) =>
    /\/tables\//.test(name) ? tableNames.given(text, had) : text,
  );
  const newSheets: SheetEntry[] = [];
  for (const { name, part: made, text, instead, printNames } of sheets) {
    had = new Map(tables.flatMap((one) => (one.sheet === instead ? [[tableKey(one.box), one.name]] : [])));
    const part = instead === undefined ? freeSheetPart(now) : own[instead].part;
    const its = adopted.relations(made);
    parts.set(part, restyled(text, merged));
    if (its !== undefined) parts.set(relationsPart(part), its);
    if (instead !== undefined) continue;
    newSheets.push({ name, part, ...(printNames ? { names: printNames } : {}) });
  }
  // What formulas elsewhere call by its name must have it still.
  const isLost = (table: Table) => !isKept(table) && !tableNames.has(table.name);
  for (const [name, text] of adopted.parts) parts.set(name, text);
  if (tables.some((table) => isLost(table) && isTableNamed(now, main, table.name))) return undefined;
  const left = new Set(
    readWorkbookParts(over(now, parts)).tables.flatMap(({ name, columns }) =>
      columns.map((header) => `${name} ${header}`.toUpperCase()),
    ),
  );
  const isColumnLost = ({ name, columns }: Table) =>
    columns.some(
      (header) => !left.has(`${name} ${header}`.toUpperCase()) && isColumnNamed(now, main, header),
    );
  if (tables.some((table) => !isKept(table) && isColumnLost(table))) return undefined;
  const entries = withEntries(now, main, newSheets);
  if (!entries) return undefined;
  for (const [name, text] of entries) parts.set(name, text);
  parts.set(styleSheet ?? STYLES, merged.text);
  const types = adopted.types(read(CONTENT_TYPES));
  if (styleSheet === undefined) {
    const link = `<Relationship Id="rIdReamwrightStyles" Type="${OFFICE}/styles" Target="/${STYLES}"/>`;
    parts.set(relationsPart(main), added(read(relationsPart(main)), "Relationships", link));
    types.push(`<Override PartName="/${STYLES}" ContentType="${STYLES_TYPE}"/>`);
  }
  parts.set(CONTENT_TYPES, withTypes(read(CONTENT_TYPES), types));
  return { parts, pictures: adopted.pictures, gone, added: newSheets.map(({ part }) => part) };
}

/** The sheet with the numbers that its styles have now. */
function restyled(text: string, { cells, conditional }: { cells: number; conditional: number }): string {
  const plus = (tag: string, name: string, offset: number) =>
    tag.replace(new RegExp(`(\\s${name}=")(\\d+)"`), (_, start: string, number: string) => {
      return `${start}${Number(number) + offset}"`;
    });
  return text
    .replace(/<(?:c|row)\s[^>]*>/g, (tag) => plus(tag, "s", cells))
    .replace(/<col\s[^>]*>/g, (tag) => plus(tag, "style", cells))
    .replace(/<cfRule\s[^>]*>/g, (tag) => plus(tag, "dxfId", conditional));
}
