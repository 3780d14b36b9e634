// workbook: a workbook file of one sheet of values, made from nothing: no formula, name, link, comment or property can
// come into it. Repeated rows would be a name: the file has none.

import { strToU8, zipSync } from "fflate";
import { type Content, type Look, type NewSheet, Refusal } from "../workbook.ts";
import { cellName, readBox } from "./addresses.ts";
import { pageSetupXml } from "./page-setup.ts";
import { escapeAttribute, writeCellText } from "./xml-text.ts";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
/** A day that says nothing: files in the archive carry no time of their own. */
const NO_TIME = "1980-01-01T00:00:00";
const LINE_POINTS = 12.5;
const FIRST_OWN_FORMAT = 164;

interface Style {
  readonly look?: Look;
  readonly format?: string;
  readonly align?: string;
}

/** @throws Refusal if a cell holds a formula */
export function valuesFile(sheet: NewSheet): Uint8Array<ArrayBuffer> {
  const styles = new Styles();
  const text = sheetXml(sheet, styles);
  const name = sheetName(sheet.name);
  const parts: Record<string, string> = {
    "[Content_Types].xml": `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="${escapeAttribute(name)}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${RELATIONS}/styles" Target="styles.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": text,
    "xl/styles.xml": styles.xml(),
  };
  const files = Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, [strToU8(HEAD + part), { mtime: NO_TIME }] as const]),
  );
  return zipSync(files as never) as Uint8Array<ArrayBuffer>;
}

/** A name that a sheet may have, in the browser workbook too: 31 characters, none of those that stand in references. */
export const sheetName = (wanted: string): string =>
  wanted
    .replace(/[[\]:*?/\\]/g, "-")
    .replace(/'/g, "’")
    .slice(0, 31)
    .trim() || "Sheet";

function sheetXml(sheet: NewSheet, styles: Styles): string {
  const { top, columns, merges = [], painted = [], heights = [], print } = sheet;
  const paint = new Map<string, Style>();
  for (const { area, ...style } of painted) {
    const box = readBox(area)!;
    for (let row = box.top; row <= box.bottom; row++)
      for (let column = box.left; column <= box.right; column++) {
        const name = cellName(row, column);
        paint.set(name, { ...paint.get(name), ...definedOf(style) });
      }
  }
  const height = new Map(heights);
  const rows = top.map((contents, row) => {
    const lines = height.get(row);
    const cells = contents.map((content, column) => {
      const name = cellName(row, column);
      return cellXml(name, content, styles.idOf(paint.get(name)));
    });
    const high = lines ? ` ht="${lines * LINE_POINTS}" customHeight="1"` : "";
    return `<row r="${row + 1}"${high}>${cells.join("")}</row>`;
  });
  const cols = columns.map(
    ({ width }, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
  );
  const merged = merges.map((area) => `<mergeCell ref="${area}"/>`).join("");
  return [
    `<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>`,
    `<sheetViews><sheetView showGridLines="0" workbookViewId="0"/></sheetViews>`,
    `<cols>${cols.join("")}</cols><sheetData>${rows.join("")}</sheetData>`,
    merged && `<mergeCells count="${merges.length}">${merged}</mergeCells>`,
    print ? pageSetupXml(print) : "",
    "</worksheet>",
  ].join("");
}

const definedOf = (style: Style): Style =>
  Object.fromEntries(Object.entries(style).filter(([, value]) => value !== undefined));

function cellXml(name: string, content: Content, style: number): string {
  const styled = style === 0 ? "" : ` s="${style}"`;
  if (content === "") return style === 0 ? "" : `<c r="${name}"${styled}/>`;
  if (typeof content === "number") return `<c r="${name}"${styled}><v>${content}</v></c>`;
  if (typeof content === "boolean") return `<c r="${name}"${styled} t="b"><v>${Number(content)}</v></c>`;
  if (content.startsWith("="))
    throw new Refusal(`${name} holds a formula: a file for others holds values only.`);
  const text = writeCellText(content.replace(/^'/, ""));
  return `<c r="${name}"${styled} t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;
}

/** Fonts, fills and borders by their place in the lists below. */
const FONTS = [
  "",
  "<b/>",
  '<i/><color rgb="FF566473"/>',
  '<b/><sz val="14"/>',
  '<b/><sz val="16"/>',
  '<color rgb="FF33414F"/>',
];
const FILLS = ["none", "gray125", "FFE6E6E6", "FFF2F2F2"];
const BORDERS = ["", '<bottom style="thin"><color auto="1"/></bottom>'];
const all = '<left style="thin"/><right style="thin"/><top style="thin"/><bottom style="thin"/>';

const looks: Readonly<Record<Look, { font?: number; fill?: number; border?: number; wraps?: boolean }>> = {
  title: { font: 3 },
  heading: { font: 1, border: 1 },
  header: { font: 1, fill: 2, border: 1, wraps: true },
  label: { font: 5 },
  note: { font: 2 },
  input: {},
  total: { font: 1, fill: 3 },
  strong: { font: 1 },
  big: { font: 4 },
  shaded: { fill: 2 },
  wrapped: { wraps: true },
  line: { border: 1 },
  frame: { border: 2, wraps: true },
  page: {},
};

class Styles {
  private readonly formats = new Map<string, number>();
  private readonly ids = new Map<string, number>();
  private readonly list: string[] = [xf(0, 0, 0, 0, "")];

  idOf(style: Style | undefined): number {
    if (!style) return 0;
    const key = JSON.stringify([style.look, style.format, style.align]);
    let id = this.ids.get(key);
    if (id === undefined) {
      id = this.list.length;
      this.ids.set(key, id);
      const { font = 0, fill = 0, border = 0, wraps = false } = style.look ? looks[style.look] : {};
      const align = style.align ? ` horizontal="${style.align}"` : "";
      const alignment = `<alignment vertical="top"${align}${wraps ? ' wrapText="1"' : ""}/>`;
      this.list.push(xf(this.formatOf(style.format), font, fill, border, alignment));
    }
    return id;
  }

  private formatOf(format: string | undefined): number {
    if (format === undefined) return 0;
    if (format === "@") return 49;
    let id = this.formats.get(format);
    if (id === undefined) {
      id = FIRST_OWN_FORMAT + this.formats.size;
      this.formats.set(format, id);
    }
    return id;
  }

  xml(): string {
    const formats = [...this.formats].map(
      ([code, id]) => `<numFmt numFmtId="${id}" formatCode="${escapeAttribute(code)}"/>`,
    );
    const fonts = FONTS.map(
      (font) => `<font>${font.includes("<sz") ? font : fontInOrder(font)}<name val="Arial"/></font>`,
    );
    const fills = FILLS.map((fill) =>
      /^F/.test(fill)
        ? `<fill><patternFill patternType="solid"><fgColor rgb="${fill}"/></patternFill></fill>`
        : `<fill><patternFill patternType="${fill}"/></fill>`,
    );
    const borders = [...BORDERS, all].map((border) => `<border>${border}</border>`);
    const counted = (name: string, items: readonly string[]) =>
      items.length === 0 ? "" : `<${name} count="${items.length}">${items.join("")}</${name}>`;
    return [
      `<styleSheet xmlns="${MAIN}">`,
      counted("numFmts", formats),
      counted("fonts", fonts),
      counted("fills", fills),
      counted("borders", borders),
      counted("cellStyleXfs", ['<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>']),
      counted("cellXfs", this.list),
      "</styleSheet>",
    ].join("");
  }
}

/** The size stands between what a font is and its color. */
const fontInOrder = (font: string): string => {
  const color = font.indexOf("<color");
  return color < 0 ? `${font}<sz val="9"/>` : `${font.slice(0, color)}<sz val="9"/>${font.slice(color)}`;
};

function xf(format: number, font: number, fill: number, border: number, alignment: string): string {
  const ids = `numFmtId="${format}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"`;
  const applied = 'applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"';
  return `<xf ${ids} ${applied}>${alignment}</xf>`;
}
