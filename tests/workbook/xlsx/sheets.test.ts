// tests: cells found in the text of a sheet, values put into it, and every other sign left as it was.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../../src/workbook/workbook.ts";
import { cellName, readCell } from "../../../src/workbook/xlsx/addresses.ts";
import type { CellValue } from "../../../src/workbook/xlsx/read-sheet.ts";
import { type SheetCell, walkSheet } from "../../../src/workbook/xlsx/walk-sheet.ts";
import { richText } from "../../../src/workbook/xlsx/workbook-parts.ts";
import { type NewCell, placeOf, writeCells } from "../../../src/workbook/xlsx/write-sheet.ts";
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
  walkSheet(text, { cell: (cell) => cells.push(cell) });
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
    expect(() => walkSheet("<html></html>")).toThrow("a sheet is not one");
  });
});

describe("values", () => {
  const put = (rows: string, cells: Readonly<Record<string, NewCell>>): string => {
    const given = Object.entries(cells).map(([name, cell]) => {
      const { row, column } = readCell(name)!;
      return [placeOf(row, column), cell] as const;
    });
    const [before, after] = sheet("|").split("|");
    const written = writeCells(sheet(rows), new Map(given));
    expect(written.startsWith(before) && written.endsWith(after)).toBe(true);
    return written.slice(before.length, -after.length);
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
    const result = put(`<row r="1">${before}<c r="B1"><v>9</v></c></row>`, { A1: { value } });
    expect(result).toBe(`<row r="1">${after}<c r="B1"><v>9</v></c></row>`);
  });

  test("of an array go into cells of their own, and not over another formula", () => {
    const before =
      '<row r="1"><c r="A1"><f t="array" ref="A1:C1">X()</f><v>0</v></c><c r="B1"><f>1</f><v>1</v></c></row>';
    const after =
      '<row r="1"><c r="A1"><f t="array" ref="A1:C1">X()</f><v>5</v></c><c r="B1"><f>1</f><v>1</v></c><c r="C1"><v>7</v></c></row>';
    const spilled = (value: CellValue) => ({ value, isSpilled: true });
    expect(put(before, { A1: { value: 5 }, B1: spilled(6), C1: spilled(7) })).toBe(after);
  });

  test("any text comes back as it went in", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary-ascii", maxLength: 30 }), (value) => {
        const rows = put('<row r="1"><c r="A1"><f>B1</f></c></row>', { A1: { value } });
        const written = /<v[^>]*>([\s\S]*)<\/v>/.exec(rows)![1];
        expect(readCellText(written)).toBe(value);
        expect(written).not.toMatch(/[<>\u0000-\u0008]/);
      }),
    );
  });
});

describe("cells that the file does not have", () => {
  const put = (rows: string, cells: Readonly<Record<string, NewCell>>, around = "") => {
    const text = `<worksheet><dimension ref="B2:C3"/>${around}<sheetData>${rows}</sheetData></worksheet>`;
    const given = Object.entries(cells).map(([name, cell]) => {
      const { row, column } = readCell(name)!;
      return [placeOf(row, column), cell] as const;
    });
    return writeCells(text, new Map(given));
  };

  test("stand in their rows and between the others, in order, with the style of row or column", () => {
    const text = put(
      '<row r="2" spans="2:3"><c r="B2"><v>1</v></c><c r="C2"><v>2</v></c></row><row r="3" s="7" customFormat="1"/>',
      {
        A1: { value: 1 },
        A2: { value: "a" },
        D2: { value: true },
        B3: { value: null },
        C3: { value: 3 },
        B9: { value: 9 },
        A9: { value: 8 },
      },
      '<cols><col min="1" max="1" width="9" style="4"/></cols>',
    );
    expect(text).toBe(
      '<worksheet><dimension ref="A1:D9"/><cols><col min="1" max="1" width="9" style="4"/></cols><sheetData>' +
        '<row r="1"><c r="A1" s="4"><v>1</v></c></row>' +
        '<row r="2"><c r="A2" s="4" t="inlineStr"><is><t>a</t></is></c><c r="B2"><v>1</v></c><c r="C2"><v>2</v></c><c r="D2" t="b"><v>1</v></c></row>' +
        '<row r="3" s="7" customFormat="1"><c r="C3" s="7"><v>3</v></c></row>' +
        '<row r="9"><c r="A9" s="4"><v>8</v></c><c r="B9"><v>9</v></c></row></sheetData></worksheet>',
    );
  });

  test("in a sheet without rows", () => {
    expect(writeCells("<worksheet><sheetData/></worksheet>", new Map([[0, { value: 1 }]]))).toBe(
      '<worksheet><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData></worksheet>',
    );
  });

  test("formulas are put in, replaced and taken out", () => {
    const box = { top: 1, left: 1, bottom: 2, right: 1 };
    const before =
      '<row r="2"><c r="B2" s="3" t="str"><f>A1</f><v>x</v></c><c r="C2"><f>A1</f><v>1</v></c></row>';
    expect(
      put(before, {
        B2: { value: 1, formula: { text: 'A1&"<"', spill: { box, mark: "1" } } },
        C2: { value: "y", formula: null },
        D2: { value: 2, formula: { text: "1+1" } },
      }),
    ).toContain(
      '<row r="2"><c r="B2" s="3" cm="1"><f t="array" ref="B2:B3">A1&amp;"&lt;"</f><v>1</v></c><c r="C2" t="inlineStr"><is><t>y</t></is></c><c r="D2"><f>1+1</f><v>2</v></c></row>',
    );
  });

  test("the cells of an array formula are those that it fills", () => {
    const box = { top: 1, left: 1, bottom: 3, right: 1 };
    const before = '<row r="2"><c r="B2" cm="1"><f t="array" ref="B2:B3">X()</f><v>1</v></c></row>';
    expect(put(before, { B2: { value: 5, fills: box } })).toContain(
      '<c r="B2" cm="1"><f t="array" ref="B2:B4">X()</f><v>5</v></c>',
    );
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
