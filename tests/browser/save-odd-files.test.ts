// tests: files that other programs write in ways seldom seen, changed in the browser workbook and saved: nothing in them
// is silently wrong, and no program takes them for damaged.

import { describe, expect, test } from "vitest";
import { sheetReference } from "../../src/workbook/workbook.ts";
import { isFormula } from "../../src/workbook/xlsx/formula-syntax.ts";
import { withStoredSyntax } from "../../src/workbook/xlsx/stored-syntax.ts";
import { withAttribute } from "../../src/workbook/xlsx/write-sheet.ts";
import { readBook } from "../support/exceljs.ts";
import { partsOf, type SmallWorkbook, smallWorkbook, textsIn, zipped } from "../support/package.ts";
import { type Grid, savedAfter } from "./saving.ts";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const row = (at: number, ...cells: string[]) => `<row r="${at}">${cells.join("")}</row>`;
const n = (cell: string, value: number, more = "") => `<c r="${cell}"${more}><v>${value}</v></c>`;
const f = (cell: string, formula: string, value: string) =>
  `<c r="${cell}"><f>${formula}</f><v>${value}</v></c>`;
/** 1 to 5 below one another in column A, then the formulas of column C. */
const numbered = (...formulas: string[]) =>
  [1, 2, 3, 4, 5]
    .map((at) =>
      row(at, n(`A${at}`, at), formulas[at - 1] === undefined ? "" : f(`C${at}`, formulas[at - 1], "0")),
    )
    .join("");

/** With something behind the cells of the first sheet, and parts that hang on it. */
function fileWith(
  workbook: SmallWorkbook,
  { before = "", behind = "", relations = "" }: { before?: string; behind?: string; relations?: string },
): Uint8Array {
  const parts = partsOf(workbook);
  const sheet = "xl/worksheets/sheet1.xml";
  parts[sheet] = parts[sheet]
    .replace("<sheetData>", `${before}<sheetData>`)
    .replace("</sheetData>", () => `</sheetData>${behind}`);
  if (relations !== "")
    parts["xl/worksheets/_rels/sheet1.xml.rels"] =
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${relations}</Relationships>`;
  return zipped(parts);
}

async function sheetAfter(file: Uint8Array, edit: (grid: Grid) => void, sheet = 1) {
  const saved = await savedAfter(file, edit);
  return saved && textsIn(saved.bytes)[`xl/worksheets/sheet${sheet}.xml`];
}

const cut = ({ model }: Grid, from: { left: number; top: number }, to: { left: number; top: number }) => {
  const zone = { ...from, right: from.left, bottom: from.top };
  model.selection.selectZone({ cell: { col: from.left, row: from.top }, zone });
  model.dispatch("CUT");
  model.dispatch("PASTE", { target: [{ ...to, right: to.left, bottom: to.top }] });
};

describe("names of sheets", () => {
  // As Excel writes them, from memory; quotes are never wrong.
  test.each([
    ["Sheet1", "Sheet1"],
    ["Q1.2_a", "Q1.2_a"],
    ["AB12", "'AB12'"],
    ["R1C1", "'R1C1'"],
    ["r", "'r'"],
    ["RC", "'RC'"],
    ["R2D2", "'R2D2'"],
    ["TRUE", "'TRUE'"],
    ["2024", "'2024'"],
    ["a-b", "'a-b'"],
    ["It's", "'It''s'"],
    ["été", "'été'"],
  ])("%s is %s in a formula", (name, written) => expect(sheetReference(name)).toBe(written));

  test.each(["A1", "R1C1", "C", "TRUE", "2024"])(
    "%s keeps its quotes in a formula that is typed",
    async (name) => {
      const sheets = { Jobs: row(1, n("A1", 1)), Other: row(1, n("A1", 5)) };
      const file = smallWorkbook({ sheets });
      const sheet = await sheetAfter(file, (grid) => {
        grid.rename(name, 1);
        grid.type(1, 1, `='${name}'!A1*2`);
      });
      expect(sheet).toContain(`<f>'${name}'!A1*2</f><v>10</v>`);
    },
  );

  test.each(["Price $1", "US$$", "a$&b", "a$`b", '10" pipe'])(
    "%s is what the sheet is called",
    async (name) => {
      const file = smallWorkbook({
        sheets: { Jobs: row(1, n("A1", 1)), Other: row(1, f("A1", "Jobs!A1*2", "2")) },
      });
      const saved = await savedAfter(file, (grid) => grid.rename(name));
      const texts = textsIn(saved!.bytes);
      const escaped = name.replaceAll("&", "&amp;");
      expect(texts["xl/workbook.xml"]).toContain(` name="${escaped.replaceAll('"', "&quot;")}"`);
      expect(texts["xl/worksheets/sheet2.xml"]).toContain(`<f>'${escaped}'!A1*2</f>`);
    },
  );

  test("an attribute is not looked for within the value of another", () => {
    expect(withAttribute(`<hyperlink tooltip="see ref='A1'" ref="B5"/>`, "ref", "B7")).toBe(
      `<hyperlink tooltip="see ref='A1'" ref="B7"/>`,
    );
  });
});

describe("formulas that a file can hold", () => {
  test.each([
    "-A1%",
    "SUM(A1:B2 B1:C3,(A1,B2),,2)",
    'IF(A1<>"",{1,-2;"a",TRUE},)',
    "'a b'!1:3+[1]Sheet1!A1+[1]!Rate+2024!A1",
    "Table1[[#This Row],[Col]]*[@Col]",
    "LAMBDA(x,x)(1)+@A1:A3+SUM(A1#)",
    "Sheet1!#REF!+#N/A",
    'A1 &\n"a ""b"""',
  ])("%s", (formula) => expect(isFormula(formula)).toBe(true));

  test.each([
    "1+*2",
    "A1 2",
    "SUM(1",
    "A1,B2",
    "{1,A2}",
    "SUM(1;2)",
    "A1:",
    "A1==2",
    '"a" "b"',
    "$",
    "1#",
    `"${"x".repeat(256)}"`,
  ])("not %s, which is saved as what the cell shows", async (formula) => {
    expect(isFormula(formula)).toBe(false);
  });

  test("a typed one that is none is saved as its error, and told", async () => {
    const saved = await savedAfter(smallWorkbook({ sheets: { Jobs: numbered() } }), (grid) =>
      grid.type(0, 1, "=1+*2"),
    );
    expect(saved!.asValues).toBe(1);
    expect(textsIn(saved!.bytes)["xl/worksheets/sheet1.xml"]).toContain('<c r="B1" t="e"><v>#NAME?</v></c>');
  });

  test.each([
    ["SUM(Jobs!B1#)", "SUM(_xlfn.ANCHORARRAY(Jobs!B1))"],
    ["-@SUM(A1:A3)+@A1:A3", "-_xlfn.SINGLE(SUM(A1:A3))+_xlfn.SINGLE(A1:A3)"],
    ["LET(x,A1,y,X+1,x*y)", "LET(_xlpm.x,A1,_xlpm.y,_xlpm.X+1,_xlpm.x*_xlpm.y)"],
    ["LET(x,1,LAMBDA(a,a+x)(2))", "LET(_xlpm.x,1,LAMBDA(_xlpm.a,_xlpm.a+_xlpm.x)(2))"],
    ['"A1#"&#REF!', '"A1#"&#REF!'],
  ])("%s is stored as %s", (typed, stored) => expect(withStoredSyntax(typed)).toBe(stored));
});

describe("rows taken out", () => {
  test("make a range whose end is computed another, and its value is not taken for right", async () => {
    const file = smallWorkbook({ sheets: { Jobs: numbered("SUM(A1:CHOOSE(1,A5,A4))") } });
    const saved = await savedAfter(file, (grid) => grid.remove("ROW", [2]));
    expect(saved!.report.sheets[0]).toMatchObject({ kept: 1 });
    const texts = textsIn(saved!.bytes);
    expect(texts["xl/worksheets/sheet1.xml"]).toContain("SUM(A1:CHOOSE(1,A4,A3))");
    expect(texts["xl/workbook.xml"]).toContain('fullCalcOnLoad="1"');
  });

  test.each(["SUM(A1 : A5)", "SUM(Jobs!A1:Jobs!A5)", "SUM(A1:A2:A5)"])(
    "%s is not written",
    async (formula) => {
      const file = smallWorkbook({ sheets: { Jobs: numbered(formula) } });
      expect(await savedAfter(file, (grid) => grid.remove("ROW", [2]))).toBeUndefined();
    },
  );

  test("take nothing from ranges that are written as whole columns", async () => {
    const behind =
      '<dataValidations count="1"><dataValidation type="list" sqref="A:A"><formula1>"a,b"</formula1></dataValidation></dataValidations>';
    const file = fileWith({ sheets: { Jobs: numbered() } }, { behind });
    expect(await savedAfter(file, (grid) => grid.remove("ROW", [2]))).toBeUndefined();
  });
});

describe("rows inserted", () => {
  test("are followed by names of sheets with Japanese dots, and by a list of ranges with one that is gone", async () => {
    const behind =
      '<conditionalFormatting sqref="A3 #REF!"><cfRule type="expression" priority="1"><formula>A3&gt;1</formula></cfRule></conditionalFormatting>';
    const sheets = { "価格・1": numbered(), Other: row(1, f("A1", "SUM(価格・1!A3:A5)", "12")) };
    const saved = await savedAfter(fileWith({ sheets }, { behind }), (grid) => grid.insert("ROW", 1, 2));
    const texts = textsIn(saved!.bytes);
    expect(texts["xl/worksheets/sheet1.xml"]).toContain('sqref="A5 #REF!"');
    expect(texts["xl/worksheets/sheet2.xml"]).toContain("<f>SUM(価格・1!A5:A7)</f><v>12</v>");
  });

  test("are not written where a formula has signs that nobody knows", async () => {
    const file = smallWorkbook({ sheets: { Jobs: numbered("A3\u2212A2") } });
    expect(await savedAfter(file, (grid) => grid.insert("ROW", 1))).toBeUndefined();
  });

  const inserted = (file: Uint8Array) => savedAfter(file, (grid) => grid.insert("ROW", 1, 2));

  test("move what shapes and pictures show of their own sheet", async () => {
    const drawing =
      '<xdr:wsDr xmlns:xdr="x" xmlns:a14="y"><xdr:sp textlink="$A$3"/><xdr:pic><a14:cameraTool cellRange="$A$3:$B$4" spid="_x0000_s1"/></xdr:pic></xdr:wsDr>';
    const relations = `<Relationship Id="rId1" Type="${OFFICE}/drawing" Target="../drawings/drawing1.xml"/>`;
    const file = fileWith(
      { sheets: { Jobs: numbered() }, more: { "xl/drawings/drawing1.xml": drawing } },
      { behind: '<drawing r:id="rId1"/>', relations },
    );
    const now = textsIn((await inserted(file))!.bytes)["xl/drawings/drawing1.xml"];
    expect(now).toContain('textlink="$A$5"');
    expect(now).toContain('cellRange="$A$5:$B$6"');
  });

  test("move lines of charts that are filtered out, ranges of pivot tables, and dates of small charts", async () => {
    const chart = "<c:chart><c:f>Jobs!$A$3</c:f><c15:sqref>Jobs!$A$3:$A$4</c15:sqref></c:chart>";
    const ext =
      '<extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="x"><x14:sparklineGroups xmlns:xm="y"><x14:sparklineGroup dateAxis="1"><xm:f>Jobs!A3:A5</xm:f><x14:sparklines><x14:sparkline><xm:f>Jobs!A3:A5</xm:f><xm:sqref>D3</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>';
    const parts = partsOf({ sheets: { Jobs: numbered() }, more: { "xl/charts/chart1.xml": chart } });
    parts["xl/worksheets/sheet1.xml"] = parts["xl/worksheets/sheet1.xml"].replace(
      "</sheetData>",
      `</sheetData>${ext}`,
    );
    parts["xl/pivotCache/pivotCacheDefinition1.xml"] =
      '<pivotCacheDefinition><cacheSource type="consolidation"><consolidation><rangeSets count="1"><rangeSet i1="0" ref="A3:B5" sheet="Jobs"/></rangeSets></consolidation></cacheSource></pivotCacheDefinition>';
    parts["xl/_rels/workbook.xml.rels"] = parts["xl/_rels/workbook.xml.rels"].replace(
      "</Relationships>",
      `<Relationship Id="rIdP" Type="${OFFICE}/pivotCacheDefinition" Target="pivotCache/pivotCacheDefinition1.xml"/></Relationships>`,
    );
    const now = textsIn((await inserted(zipped(parts)))!.bytes);
    expect(now["xl/charts/chart1.xml"]).toContain("<c15:sqref>Jobs!$A$5:$A$6</c15:sqref>");
    expect(now["xl/pivotCache/pivotCacheDefinition1.xml"]).toContain('ref="A5:B7"');
    expect(now["xl/worksheets/sheet1.xml"].match(/<xm:f>Jobs!A5:A7<\/xm:f>/g)).toHaveLength(2);
    expect(now["xl/worksheets/sheet1.xml"]).toContain("<xm:sqref>D5</xm:sqref>");
  });

  test("move the cells that a scale of icons goes by, and formulas in CDATA", async () => {
    const behind =
      '<conditionalFormatting sqref="A1:A5"><cfRule type="iconSet" priority="1"><iconSet><cfvo type="percent" val="0"/><cfvo type="num" val="$A$3"/></iconSet></cfRule><cfRule type="expression" priority="2"><formula><![CDATA[$A$3>1]]></formula></cfRule></conditionalFormatting>';
    const sheet = await sheetAfter(fileWith({ sheets: { Jobs: numbered() } }, { behind }), (grid) =>
      grid.insert("ROW", 1, 2),
    );
    expect(sheet).toMatch(/<cfvo (?=[^>]*type="num")[^>]*val="\$A\$5"/);
    expect(sheet).toContain("<formula>$A$5&gt;1</formula>");
  });

  test("leave cells of a result that is cut in two their looks", async () => {
    const cells =
      row(1, n("A1", 3), '<c r="B1" cm="1"><f t="array" ref="B1:B3">_xldudf_REAM_DOWN(A1)</f><v>1</v></c>') +
      row(2, n("B2", 2, ' s="0"')) +
      row(3, n("B3", 3, ' s="0"'));
    const sheet = await sheetAfter(smallWorkbook({ sheets: { Jobs: cells } }), (grid) =>
      grid.insert("ROW", 1),
    );
    expect(sheet).toContain('<c r="B2"><v>2</v></c>');
    expect(sheet).toMatch(
      /<row r="3"><c s="0" r="B3"><v>3<\/v><\/c><\/row><row r="4"><c s="0" r="B4"\/><\/row>/,
    );
  });
});

describe("a cell that is typed over", () => {
  test("has no picture or reason of an error any more", async () => {
    const file = smallWorkbook({ sheets: { Jobs: row(1, '<c r="A1" t="e" vm="1"><v>#VALUE!</v></c>') } });
    expect(await sheetAfter(file, (grid) => grid.type(0, 0, "5"))).toContain('<c r="A1"><v>5</v></c>');
  });

  const array = (mark: string) =>
    row(1, n("A1", 1), `<c r="B1"${mark}><f t="array" ref="B1:B3">A1:A3*2</f><v>2</v></c>`) +
    row(2, n("A2", 2), n("B2", 4)) +
    row(3, n("A3", 3), n("B3", 6), f("C3", "SUM(B1:B3)", "12"));

  test("stands in the way of a result, which is not taken for what it was", async () => {
    const file = smallWorkbook({ sheets: { Jobs: array(' cm="1"') } });
    const saved = await savedAfter(file, (grid) => grid.type(1, 1, "100"));
    expect(saved!.report.sheets[0]).toMatchObject({ computed: 0, kept: 2 });
    const texts = textsIn(saved!.bytes);
    expect(texts["xl/worksheets/sheet1.xml"]).toContain('<c r="B3"></c>');
    expect(texts["xl/workbook.xml"]).toContain('fullCalcOnLoad="1"');
  });

  test("is no part of a fixed array or of a what-if table", async () => {
    const whatIf =
      row(1, n("A1", 5), f("B1", "A1*2", "10")) +
      row(2, n("A2", 1), '<c r="B2"><f t="dataTable" ref="B2:B3" r1="A1"/><v>2</v></c>') +
      row(3, n("A3", 2), n("B3", 4));
    for (const [cells, at] of [
      [array(""), 1],
      [whatIf, 2],
      [whatIf, 1],
    ] as const)
      expect(
        await savedAfter(smallWorkbook({ sheets: { Jobs: cells } }), (grid) => grid.type(at, 1, "100")),
      ).toBeUndefined();
  });

  test("gets a link, which a file has beside its cells", async () => {
    const file = smallWorkbook({ sheets: { Jobs: numbered() } });
    const { bytes } = (await savedAfter(file, (grid) => {
      grid.type(0, 1, "[a page](https://example.com)");
      grid.run("CREATE_SHEET", { sheetId: "more", name: "Own list", position: 1, rows: 4, cols: 4 });
      grid.type(1, 1, "[there](o-spreadsheet://more)");
    }))!;
    const jobs = (await readBook(bytes)).worksheets[0];
    expect(jobs.getCell("B1").value).toEqual({ text: "a page", hyperlink: "https://example.com" });
    expect(jobs.getCell("B2").text).toBe("there");
    expect(textsIn(bytes)["xl/worksheets/sheet1.xml"]).toContain(`location="'Own list'!A1"`);
  });
});

describe("cells that are cut and pasted", () => {
  test.each([
    ["a name of one sheet", "Rate*2", '<definedName name="Rate" localSheetId="0">Jobs!$A$3</definedName>'],
    [
      "a name that is a formula",
      "SUM(Dyn)",
      '<definedName name="Dyn">OFFSET(Jobs!$A$3,0,0,1,1)</definedName>',
    ],
    ["a union", "SUM((A3,A4))", ""],
    ["several sheets", "SUM(Jobs:Other!A3)", ""],
  ])("are not written where %s would have to follow", async (_, formula, definedNames) => {
    const file = smallWorkbook({ sheets: { Jobs: numbered(formula), Other: "" }, definedNames });
    expect(
      await savedAfter(file, (grid) => cut(grid, { left: 0, top: 2 }, { left: 4, top: 8 })),
    ).toBeUndefined();
  });

  test("are written where nothing else names them", async () => {
    const definedNames = '<definedName name="Rate" localSheetId="0">Jobs!$A$4</definedName>';
    const file = smallWorkbook({ sheets: { Jobs: numbered("A3*2", "Rate*2") }, definedNames });
    const sheet = await sheetAfter(file, (grid) => cut(grid, { left: 0, top: 2 }, { left: 4, top: 8 }));
    expect(sheet).toContain("<f>E9*2</f><v>6</v>");
  });
});

describe("a formula that takes the cells it needs", () => {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const rich =
    '<metadataTypes count="1"><metadataType name="XLRICHVALUE"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk/></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata>';

  test("is marked in a file that has marks of other kinds", async () => {
    const more = { "xl/metadata.xml": `<metadata xmlns="${main}">${rich}</metadata>` };
    const saved = await savedAfter(smallWorkbook({ sheets: { Jobs: numbered() }, more }), (grid) =>
      grid.type(0, 1, "=A1:A3*2"),
    );
    const texts = textsIn(saved!.bytes);
    expect(texts["xl/worksheets/sheet1.xml"]).toContain('cm="1"><f t="array" ref="B1:B3">A1:A3*2</f>');
    expect(texts["xl/metadata.xml"]).toMatch(
      /^<metadata [^>]*><metadataTypes count="2">.*name="XLRICHVALUE"\/>.*name="XLDAPR".*<\/metadataTypes><futureMetadata name="XLRICHVALUE".*<futureMetadata name="XLDAPR".*<\/futureMetadata><cellMetadata count="1"><bk><rc t="2" v="0"\/><\/bk><\/cellMetadata><valueMetadata count="1">.*<\/metadata>$/,
    );
  });

  test("is not written where it cannot be marked", async () => {
    const prefixed = rich.replaceAll("<", "<x:").replaceAll("<x:/", "</x:");
    const more = { "xl/metadata.xml": `<x:metadata xmlns:x="${main}">${prefixed}</x:metadata>` };
    const file = smallWorkbook({ sheets: { Jobs: numbered() }, more });
    expect(await savedAfter(file, (grid) => grid.type(0, 1, "=A1:A3*2"))).toBeUndefined();
  });
});

describe("rows that stay in sight", () => {
  test("are the first ones, however far the sheet was scrolled", async () => {
    const before = '<sheetViews><sheetView topLeftCell="A40" workbookViewId="0"/></sheetViews>';
    const file = fileWith({ sheets: { Jobs: numbered() } }, { before });
    const sheet = await sheetAfter(file, (grid) => grid.run("FREEZE_ROWS", { quantity: 2 }));
    expect(sheet).toContain('<sheetView workbookViewId="0"><pane ySplit="2" topLeftCell="A3"');
  });
});
