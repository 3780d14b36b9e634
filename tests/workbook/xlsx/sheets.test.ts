// tests: cells found in the text of a sheet, values put into it, and every other sign left as it was.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../../src/workbook/workbook.ts";
import { cellName } from "../../../src/workbook/xlsx/addresses.ts";
import {
  mapFormulas,
  type SheetCell,
  sheetText,
  visitCells,
} from "../../../src/workbook/xlsx/sheet-cells.ts";
import { type CellValue, withValues } from "../../../src/workbook/xlsx/sheet-values.ts";
import { richText } from "../../../src/workbook/xlsx/workbook-parts.ts";
import {
  attribute,
  decodePart,
  readCellText,
  unescapeXml,
  writeCellText,
} from "../../../src/workbook/xlsx/xml-text.ts";

const sheet = (rows: string, prefix = "") =>
  `<${prefix}worksheet xmlns="urn:x"><${prefix}cols/><!-- <sheetData> --><${prefix}sheetData>${rows}</${prefix}sheetData><${prefix}legacy/></${prefix}worksheet>`;

function cellsOf(text: string): SheetCell[] {
  const cells: SheetCell[] = [];
  visitCells(sheetText(text), (cell) => cells.push(cell));
  return cells;
}

const seen = (text: string) =>
  cellsOf(text).map(({ row, column, type, formula, value }) => {
    const inside = (span: typeof value) => (span ? text.slice(span.open, span.close) : undefined);
    return [cellName(row, column), type, inside(formula), inside(value)];
  });

describe("cells", () => {
  test("with and without addresses, empty ones, comments, and tags with > in a value", () => {
    const rows =
      '<row r="2"><c r="B2" t="str"><f>A1&amp;"x"</f><v>1x</v></c><c/><c s="a>b"><v>7</v></c></row>' +
      '<!-- <c r="Z1"><v>1</v></c> --><row><c t="b"><v>1</v></c></row>';
    expect(seen(sheet(rows))).toEqual([
      ["B2", "str", 'A1&amp;"x"', "1x"],
      ["C2", "n", undefined, undefined],
      ["D2", "n", undefined, "7"],
      ["A3", "b", undefined, "1"],
    ]);
  });

  test("under a prefix, as some writers have it", () => {
    expect(seen(sheet('<x:row r="1"><x:c r="A1"><x:f>1</x:f><x:v>1</x:v></x:c></x:row>', "x:"))).toEqual([
      ["A1", "n", "1", "1"],
    ]);
  });

  test("none in a sheet without any", () => {
    expect(seen("<worksheet><sheetData/></worksheet>")).toEqual([]);
    expect(seen("<worksheet></worksheet>")).toEqual([]);
    expect(seen("<chartsheet ></chartsheet>")).toEqual([]);
  });

  test.each([
    '<row r="1"><c r="A1"><v>1</row>',
    '<row r="1"><c r="A1"><v>1</v>',
    '<row r="1"><c r="A1" t="s',
    '<row r="x"><c/></row>',
    '<row r="1"><c r="ZZZ1"/></row>',
    '<row r="1"><c r="A0"/></row>',
    "<c/>",
  ])("a damaged sheet is refused: %s", (rows) => {
    expect(() => cellsOf(sheet(rows))).toThrow(Refusal);
  });

  test("what is no sheet is refused", () => {
    expect(() => sheetText("<html></html>")).toThrow("a sheet is not one");
  });
});

describe("values", () => {
  const put = (
    rows: string,
    values: Readonly<Record<string, CellValue>>,
    spilled: readonly string[] = [],
  ) => {
    const text = sheet(rows);
    const result = withValues(sheetText(text), (row, column) => {
      const name = cellName(row, column);
      return name in values ? { value: values[name]!, isSpilled: spilled.includes(name) } : undefined;
    });
    expect(result.text.startsWith(sheet("").split("</sheetData>")[0])).toBe(true);
    expect(result.text.endsWith("</sheetData><legacy/></worksheet>")).toBe(true);
    const inside = result.text.slice(
      sheet("").indexOf("</sheetData>"),
      -"</sheetData><legacy/></worksheet>".length,
    );
    return { rows: inside, found: result.found };
  };

  test.each<[string, CellValue, string, string]>([
    ["a number", 2.5, '<c r="A1" s="3"><f>B1</f><v>1</v></c>', '<c r="A1" s="3"><f>B1</f><v>2.5</v></c>'],
    ["a first value", 2, '<c r="A1"><f>B1</f></c>', '<c r="A1"><f>B1</f><v>2</v></c>'],
    ["for an empty one", 2, '<c r="A1"><f>B1</f><v/></c>', '<c r="A1"><f>B1</f><v>2</v></c>'],
    ["a number for a text", 2, '<c r="A1" t="str"><f>B1</f><v>x</v></c>', '<c r="A1"><f>B1</f><v>2</v></c>'],
    [
      "a text",
      "a<b & c",
      '<c r="A1"><f>B1</f><v>1</v></c>',
      '<c r="A1" t="str"><f>B1</f><v>a&lt;b &amp; c</v></c>',
    ],
    [
      "a text with spaces",
      " a",
      '<c r="A1"><f>B1</f></c>',
      '<c r="A1" t="str"><f>B1</f><v xml:space="preserve"> a</v></c>',
    ],
    ["true", true, '<c r="A1" t="e"><f>B1</f><v>#N/A</v></c>', '<c r="A1" t="b"><f>B1</f><v>1</v></c>'],
    [
      "an error",
      { code: "#N/A" },
      '<c t="n" r="A1"><f>B1</f><v>1</v></c>',
      '<c r="A1" t="e"><f>B1</f><v>#N/A</v></c>',
    ],
    [
      "an error that was there",
      { code: "#N/A" },
      '<c r="A1" t="e" ><f>B1</f><v>#N/A</v></c>',
      '<c r="A1" t="e" ><f>B1</f><v>#N/A</v></c>',
    ],
    ["the same number", 0.1, '<c r="A1"><f>B1</f><v>1.0E-1</v></c>', '<c r="A1"><f>B1</f><v>1.0E-1</v></c>'],
    ["a very small number", 1e-7, '<c r="A1"><f>B1</f><v>1</v></c>', '<c r="A1"><f>B1</f><v>1E-7</v></c>'],
    ["nothing", null, '<c r="A1" t="str"><v>x</v></c>', '<c r="A1"></c>'],
    ["in an empty cell", 2, '<c r="A1" s="1"/>', '<c r="A1" s="1"><v>2</v></c>'],
    ["for an inline text", 2, '<c r="A1" t="inlineStr"><is><t>x</t></is></c>', '<c r="A1"><v>2</v></c>'],
    [
      "for an inline text of a formula",
      2,
      '<c r="A1" t="inlineStr"><f>B1</f><is><t>x</t></is></c>',
      '<c r="A1"><f>B1</f><v>2</v></c>',
    ],
  ])("%s", (_, value, before, after) => {
    const result = put(`<row r="1">${before}<c r="B1"><v>9</v></c></row>`, { A1: value });
    expect(result).toEqual({ rows: `<row r="1">${after}<c r="B1"><v>9</v></c></row>`, found: 1 });
  });

  test("of an array go into cells that the file has, and not over another formula", () => {
    const before =
      '<row r="1"><c r="A1"><f t="array" ref="A1:C1">X()</f><v>0</v></c><c r="B1"><f>1</f><v>1</v></c></row>';
    const after =
      '<row r="1"><c r="A1"><f t="array" ref="A1:C1">X()</f><v>5</v></c><c r="B1"><f>1</f><v>1</v></c></row>';
    expect(put(before, { A1: 5, B1: 6, C1: 7 }, ["B1", "C1"])).toEqual({ rows: after, found: 1 });
  });

  test("any text comes back as it went in", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary-ascii", maxLength: 30 }), (value) => {
        const { rows } = put('<row r="1"><c r="A1"><f>B1</f></c></row>', { A1: value });
        const written = /<v[^>]*>([\s\S]*)<\/v>/.exec(rows)![1];
        expect(readCellText(written)).toBe(value);
        expect(written).not.toMatch(/[<>\u0000-\u0008]/);
      }),
    );
  });
});

describe("formulas", () => {
  test("are replaced where they stand", () => {
    const rows =
      '<row r="1"><c r="A1"><f ca="1">B1&amp;C1</f><v>1</v></c><c r="B1"><f t="shared" si="0"/><v>2</v></c></row>';
    const result = mapFormulas(sheet(rows), (formula) => formula.replace("C1", "D1"));
    expect(result).toBe(sheet(rows.replace("C1", "D1")));
  });
});

describe("texts", () => {
  test("escapes and the format's own", () => {
    expect(unescapeXml("a&amp;b&#65;&#x42;<![CDATA[<&amp;>]]>&lt;")).toBe("a&bAB<&amp;><");
    expect(readCellText("a_x000D_b_x005F_x000D_")).toBe("a\rb_x000D_");
    expect(writeCellText("a\rb_x000D_\u0001")).toBe("a_x000D_b_x005F_x000D__x0001_");
    expect(attribute(`<c x=' r="B2"' r='A1'>`, "r")).toBe("A1");
  });

  test("rich text is one text, without its reading aid", () => {
    expect(
      richText('<r><rPr/><t>12</t></r><r><t xml:space="preserve"> H7</t></r><rPh sb="0"><t>x</t></rPh>'),
    ).toBe("12 H7");
  });

  test.each(["&xxe;", "&#xFFFFFFF;", "a & b", "&amp"])("%s is refused", (text) => {
    expect(() => unescapeXml(text)).toThrow(Refusal);
  });

  test("a document type is refused, wherever it stands before the first element", () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    const bomb = '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><x>&b;</x>';
    for (const start of ["", '<?xml version="1.0"?>', "<!-- > -->\n"])
      expect(() => decodePart(bytes(start + bomb), "a part")).toThrow("declares a document type");
    expect(decodePart(bytes('<?xml version="1.0"?><x>ü</x>'), "a part")).toContain("ü");
    expect(() => decodePart(Uint8Array.of(0x3c, 0xff), "a part")).toThrow("not text in UTF-8");
    expect(() => decodePart(Uint8Array.of(0xff, 0xfe, 0x3c, 0), "a part")).toThrow("not in UTF-8");
  });
});
