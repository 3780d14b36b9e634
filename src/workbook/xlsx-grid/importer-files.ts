// workbook: the parts of an .xlsx file as the importer of the grid's library takes them: without what it would choke
// on, empty rows and styled nothing far from any content.

import { type Box, readBox } from "../xlsx/addresses.ts";
import type { Package } from "../xlsx/package.ts";
import { walkSheet } from "../xlsx/walk-sheet.ts";
import type { WorkbookParts } from "../xlsx/workbook-parts.ts";
import { attribute } from "../xlsx/xml-text.ts";
import { readDirectory, type ZipLimits } from "../xlsx/zip-directory.ts";
import { unpack } from "../xlsx/zip-parts.ts";

export type ImporterFiles = Record<string, string | { imageSrc: string }>;

/** Rows and columns that are kept beyond the last content, with their styles. */
const SPARE_ROWS = 50;
const SPARE_COLUMNS = 20;

const isNeeded = (name: string): boolean =>
  name === "[Content_Types].xml" ||
  name === "_rels/.rels" ||
  (/^xl\/.*\.(?:xml|rels)$/i.test(name) && !/pivotCacheRecords|\/comments|threadedComments/i.test(name));

const imageKinds: Readonly<Record<string, string>> = {
  png: "image/png",
  jpg: "image/jpeg",
  jpeg: "image/jpeg",
  gif: "image/gif",
  webp: "image/webp",
};

/** `sheets` are the parts with cells as they are to be taken; other sheets are left out. */
export function importerFiles(
  file: Package,
  bytes: Uint8Array,
  limits: ZipLimits,
  { main, sheets: listed }: WorkbookParts,
  sheets: ReadonlyMap<string, string>,
): ImporterFiles {
  const files: ImporterFiles = {};
  const leftOut = new Set(
    listed.filter(({ part }) => !sheets.has(part.toLowerCase())).map(({ name }) => name),
  );
  for (const name of file.names.filter(isNeeded)) {
    const text = sheets.get(name.toLowerCase()) ?? withoutPrefix(file.read(name));
    if (name === main) files[name] = withoutSheets(text, leftOut);
    else files[name] = /\.rels$/i.test(name) ? withRelativeTargets(text, name) : text;
  }
  for (const entry of readDirectory(bytes, limits).entries) {
    const kind = imageKinds[entry.name.split(".").at(-1)!.toLowerCase()];
    if (kind && /^xl\/media\/image/i.test(entry.name))
      files[entry.name] = { imageSrc: `data:${kind};base64,${base64(unpack(bytes, entry))}` };
  }
  addStyles(files);
  return files;
}

const withoutSheets = (workbook: string, names: ReadonlySet<string>): string =>
  workbook.replace(/<sheet\s[^>]*\/>/g, (sheet) => (names.has(attribute(sheet, "name") ?? "") ? "" : sheet));

/** The importer knows no target that is named from the root. */
function withRelativeTargets(relations: string, name: string): string {
  const folder = name
    .replace(/_rels\/[^/]*$/, "")
    .split("/")
    .slice(0, -1);
  return relations.replace(/(\sTarget\s*=\s*["'])\/([^"']*)/g, (_, start: string, target: string) => {
    const path = target.split("/");
    let same = 0;
    while (same < folder.length && folder[same] === path[same]) same++;
    return start + "../".repeat(folder.length - same) + path.slice(same).join("/");
  });
}

/** A sheet's part with nothing but its cells. */
export function bareSheet(sheet: string): string {
  const end = /<\/sheetData\s*>|<sheetData\s*\/>/.exec(sheet);
  return end ? `${sheet.slice(0, end.index + end[0].length)}</worksheet>` : sheet;
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const STYLES = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

/** The importer cannot do without styles; a file can. */
function addStyles(files: ImporterFiles): void {
  const types = String(files["[Content_Types].xml"]);
  if (types.includes(STYLES)) return;
  const part = "xl/plainStyles.xml";
  const override = `<Override PartName="/${part}" ContentType="${STYLES}"/>`;
  files["[Content_Types].xml"] = types.replace("</Types>", () => `${override}</Types>`);
  files[part] =
    `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders><cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellXfs></styleSheet>`;
}

function base64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 0x8000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}

/** More cells than these are not filled by one formula. */
const MOST_FILLED = 100_000;

export const isTooLarge = (box: Box | undefined): boolean =>
  box !== undefined && (box.bottom - box.top + 1) * (box.right - box.left + 1) > MOST_FILLED;

/** The sheet's part with its cells no further than a little beyond the last content. */
export function trimmedSheet(text: string, lastRow: number, lastColumn: number): string {
  const bottom = lastRow + SPARE_ROWS;
  const right = lastColumn + SPARE_COLUMNS;
  const pieces: string[] = [];
  let copied = 0;
  const cut = ({ start, end }: { start: number; end: number }) => {
    pieces.push(text.slice(copied, start));
    copied = end;
  };
  walkSheet(text, {
    cell({ row, column, span, formula }) {
      if (row > bottom) return;
      if (column > right) cut(span);
      else if (formula && isTooLarge(readBox(formula.attributes.ref ?? ""))) cut(formula);
    },
    rowEnd: ({ row, span }) => row > bottom && cut(span),
  });
  pieces.push(text.slice(copied));
  const merges = pieces.join("").replace(/<(?:[\w.-]+:)?mergeCell\b[^>]*\/>/g, (merge) => {
    const box = readBox(attribute(merge, "ref") ?? "");
    return box && box.top <= bottom && box.left <= right ? merge : "";
  });
  // The importer takes a window that is split for one with frozen rows, as many as its lines are long.
  const unsplit = merges.replace(/<(?:[\w.-]+:)?pane\b(?![^>]*\bstate="frozen)[^>]*\/>/, "");
  return withoutPrefix(unsplit);
}

/** The importer knows no prefix before the names of the format's own elements. */
function withoutPrefix(text: string): string {
  const prefix = /<([\w.-]+):(?:worksheet|workbook|styleSheet|sst|table|Types|Relationships)[\s>]/.exec(
    text.slice(0, 100_000),
  )?.[1];
  if (!prefix) return text;
  return text
    .replaceAll(`<${prefix}:`, "<")
    .replaceAll(`</${prefix}:`, "</")
    .replace(`xmlns:${prefix}=`, "xmlns=");
}
