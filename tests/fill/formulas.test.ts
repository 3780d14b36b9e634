// tests: formulas as spreadsheets compute them. Expected values by hand, from the rules that Microsoft's documentation
// gives for each function; the same functions are held against another program in tests/office.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Cells, evaluate } from "../../src/fill/formula/evaluate.ts";
import { parseFormula } from "../../src/fill/formula/parse.ts";
import { Area, CellError, type Scalar, Unsupported, type Value } from "../../src/fill/formula/values.ts";
import { Grid } from "../../src/fill/grid.ts";
import { runs } from "../support/share.ts";
import { functions } from "../support/small-functions.ts";

/** A1:C6 of the sheet that formulas read. */
const sheet: (Scalar | undefined)[][] = [
  [1, "a", true],
  [2, "b", undefined],
  [3, "12.5", ""],
  [4, "B", new CellError("#N/A", "none")],
  [5, "c", 0.1],
  [6, "12 H7", -7],
];
const grid = new Grid();
sheet.forEach((line, row) => {
  line.forEach((value, column) => {
    if (value !== undefined) grid.set(row, column, value);
  });
});

const cells: Cells = {
  cell: (_, row, column) => grid.get(row, column),
  matrix: (area) => grid.matrix(area),
  each: (area, visit) => grid.each(area, visit),
  cut: (area) => grid.cut(area),
  mark: () => grid.mark(),
  isChangedSince: (area, mark) => grid.isChangedSince(area, mark),
  hasHiddenRows: () => false,
  spilledArea: () => undefined,
  area: (text) => parse(text).areas[0],
  hasSubtotal: () => false,
  from1904: false,
};

const parse = (formula: string) =>
  parseFormula(formula, {
    sheet: 0,
    sheetCalled: (name) => ({ sheet1: 0, "my sheet": 1, other: 1 })[name.toLowerCase()],
    nameCalled: (name) =>
      ({
        rate: "0.5",
        all: "Sheet1!$A$1:$A$6",
        doubled: "Sheet1!$A$1:$A$6*2",
        constants: "{1,2,3}",
        loop: "loop+1",
        many: "big_a+big_a",
      })[name] ??
      (/^big_a{1,12}$/.test(name) ? `${name}a+${name}a` : name.startsWith("big_") ? "1" : undefined),
    tableArea: (_, inside) => (inside === "A" ? new Area(0, 0, 0, 5, 0) : undefined),
    isVariable: () => false,
    functionCalled: (name) => name.replace(/^_xlfn\./, "").toUpperCase(),
  });

/** In E3 of the sheet, or wherever `row` says. */
function run(formula: string, mode: "plain" | "array" = "plain", row = 2): Value {
  const { node, unknown } = parse(formula);
  if (!node) throw new Unsupported(unknown);
  return evaluate(
    node,
    { cells, sheet: 0, row, column: 4, functions, variables: new Map(), isArrayFormula: mode === "array" },
    mode,
  );
}
const shown = (formula: string, mode: "plain" | "array" = "plain") => {
  const value = run(formula, mode);
  return value instanceof CellError ? value.code : value;
};

const e = (code: string) => code;

describe("operators", () => {
  test.each<[string, Scalar | string]>([
    ["1+2*3", 7],
    ["(1+2)*3", 9],
    // A minus binds closer than a power, and powers go from the left.
    ["-2^2", 4],
    ["2^3^2", 64],
    ["2^-1", 0.5],
    ["1-2-3", -4],
    ["8/4/2", 1],
    ["50%", 0.5],
    ["2*-3", -6],
    ["--3", 3],
    ["+A1", 1],
    ["-5%", -0.05],
    ["1=1", true],
    ['"a"="A"', true],
    ["1<2=TRUE", true],
    ['1<"a"', true],
    ['"z"<FALSE', true],
    ["2>=2", true],
    ["1<>2", true],
    ['"a"&1&TRUE', "a1TRUE"],
    ['"1"+1', 2],
    ["TRUE+1", 2],
    ["C2+1", 1],
    ['C2=""', true],
    ["C2=0", true],
    ["0.1+0.2=0.3", true],
    ["0.1+0.2-0.3", 0],
    ['1/3&""', "0.333333333333333"],
    ["1/0", e("#DIV/0!")],
    ['"x"+1', e("#VALUE!")],
    ["0^0", e("#NUM!")],
    ["0^-1", e("#DIV/0!")],
    ["C4+1", e("#N/A")],
    ["1E308*10", e("#NUM!")],
    // Microsoft: numbers below 2.2250738585072E-308 are 0.
    ["2.3E-308-1E-308", 0],
    ["1E-300/1E200", 0],
    ["#REF!+1", e("#REF!")],
    ["A2", 2],
    ["$A$2*Sheet1!A3", 6],
    ["sheet1!A6", 6],
    ["rate*2", 1],
    ["SUM(all)", 21],
    ["SUM(T[A])", 21],
    ['"say ""a"""', 'say "a"'],
    // A backslash is a sign like any other.
    ['"a\\b"', "a\\b"],
    [" 1 + 1 ", 2],
    // In row 3.
    ["A1:A6*10", 30],
    ["A:A+0", 3],
    ["A1:C1*2", e("#VALUE!")],
  ])("%s is %s", (formula, value) => {
    expect(shown(formula)).toBe(value);
  });

  test("go over all cells in an array formula", () => {
    expect(run("A1:A3*10", "array")).toEqual([[10], [20], [30]]);
    expect(run("A1:A2+{10,20}", "array")).toEqual([
      [11, 21],
      [12, 22],
    ]);
    expect(run("{1,2;3,4}*2", "array")).toEqual([
      [2, 4],
      [6, 8],
    ]);
    const [[, , none]] = run("A1:C1+{1,2}", "array") as Scalar[][];
    expect(none).toEqual(new CellError("#N/A"));
  });
});

describe("functions", () => {
  test.each<[string, Scalar | string]>([
    ["SUM(A1:A6)", 21],
    ["SUM(A1:B6)", 21],
    ['SUM(1,"2",TRUE)', 4],
    ["SUM(C1:C4)", e("#N/A")],
    ["SUM(A1:A3*2)", 6],
    ["SUMPRODUCT(A1:A3*2)", 12],
    ["SUMPRODUCT(A1:A3,A4:A6)", 32],
    ["SUMPRODUCT((A1:A6>2)*A1:A6)", 18],
    ['SUMPRODUCT(--(B1:B6="b"))', 2],
    ["AVERAGE(A1:A6)", 3.5],
    ["AVERAGE(B1:B2)", e("#DIV/0!")],
    ["MAX(A1:A6,9)", 9],
    ["MIN(B1:B2)", 0],
    ["COUNT(A1:C3)", 3],
    ["COUNTA(A1:C3)", 8],
    ["COUNTBLANK(C1:C3)", 2],
    ["MEDIAN(A1:A6)", 3.5],
    ["STDEV(A1:A3)", 1],
    ["VAR.P(A1:A3)", 2 / 3],
    ["LARGE(A1:A6,2)", 5],
    ["SMALL(A1:A6,7)", e("#NUM!")],
    ["PERCENTILE(A1:A6,0.5)", 3.5],
    ["QUARTILE(A1:A5,1)", 2],
    ["RANK(5,A1:A6)", 2],
    ["RANK(5,A1:A6,1)", 5],
    ["SUBTOTAL(9,A1:A6)", 21],
    ["SUBTOTAL(101,A1:A6)", 3.5],
    ["PRODUCT(A1:A4)", 24],
    ["SUMSQ(A1:A3)", 14],
    ["ROUND(1.005,2)", 1.01],
    ["ROUND(2.5,0)", 3],
    ["ROUND(-2.5,0)", -3],
    ["ROUND(1234,-2)", 1200],
    ["ROUNDUP(1.21,1)", 1.3],
    ["ROUNDUP(3*0.1,1)", 0.3],
    ["ROUNDDOWN(-1.29,1)", -1.2],
    ["TRUNC(-1.9)", -1],
    ["INT(-1.1)", -2],
    ["INT(0.3/0.1)", 3],
    ["MROUND(1.3,0.2)", 1.4],
    ["CEILING(1.21,0.1)", 1.3],
    ["CEILING(2,-1)", e("#NUM!")],
    ["FLOOR(1.29,0.1)", 1.2],
    ["FLOOR.MATH(-1.5)", -2],
    ["CEILING.MATH(-1.5)", -1],
    ["CEILING.MATH(-1.5,1,1)", -2],
    ["MOD(-1,3)", 2],
    ["MOD(5,0)", e("#DIV/0!")],
    ["QUOTIENT(-7,2)", -3],
    ["EVEN(1.5)", 2],
    ["ODD(2)", 3],
    ["SIGN(-3)", -1],
    ["SQRT(-1)", e("#NUM!")],
    ["LN(0)", e("#NUM!")],
    ["LOG(8,2)", 3],
    ["LOG10(1000)", 3],
    ["DEGREES(PI())", 180],
    ["ATAN2(1,1)*4", Math.PI],
    ['IF(A1=1,"y",1/0)', "y"],
    ["IF(FALSE,1)", false],
    ["IF(TRUE,,2)", 0],
    ["IF(B1,1,2)", e("#VALUE!")],
    ['IFERROR(1/0,"none")', "none"],
    ["IFNA(C4,7)", 7],
    ["IFNA(1/0,7)", e("#DIV/0!")],
    ["IFS(A1=2,1,A1=1,5)", 5],
    ["IFS(A1=2,1)", e("#N/A")],
    ['SWITCH(A2,1,"a",2,"b")', "b"],
    ['SWITCH(A3,1,"a","else")', "else"],
    ['CHOOSE(2,1/0,"b")', "b"],
    ["AND(A1:A6,C1)", true],
    ["OR(A1>5,A2>5)", false],
    ["XOR(TRUE,TRUE)", false],
    ["NOT(0)", true],
    ["ISBLANK(C2)", true],
    ["ISBLANK(C3)", false],
    ["ISERROR(C4)", true],
    ["ISNA(C4)", true],
    ["ISERR(C4)", false],
    ["ISNUMBER(B3)", false],
    ["ISTEXT(B3)", true],
    ["N(TRUE)", 1],
    ["LEN(B6)", 5],
    ["LEFT(B6,2)", "12"],
    ["RIGHT(B6,2)", "H7"],
    ["MID(B6,4,1)", "H"],
    ['UPPER("h7")', "H7"],
    ['PROPER("two words")', "Two Words"],
    ['TRIM("  a   b ")', "a b"],
    ['EXACT("a","A")', false],
    ['FIND("H",B6)', 4],
    ['FIND("x",B6)', e("#VALUE!")],
    ['SEARCH("h",B6)', 4],
    ['SUBSTITUTE("a-b-c","-","+",2)', "a-b+c"],
    ['REPLACE("abcd",2,2,"x")', "axd"],
    ['REPT("ab",3)', "ababab"],
    ['CONCATENATE(A1,"/",A2)', "1/2"],
    ["CONCAT(A1:B2)", "1a2b"],
    ['TEXTJOIN(",",TRUE,B1:C3)', "a,TRUE,b,12.5"],
    ['VALUE("12.5")', 12.5],
    ['TEXT(1234.565,"#,##0.00")', "1,234.57"],
    ['TEXT(0.256,"0.0%")', "25.6%"],
    ['TEXT(-0.4,"0")', "0"],
    ['TEXT(7,"000")', "007"],
    ["FIXED(1234.567,1)", "1,234.6"],
    ["MATCH(3,A1:A6,0)", 3],
    ["MATCH(3.5,A1:A6)", 3],
    ['MATCH("B",B1:B6,0)', 2],
    ["MATCH(9,A1:A6,0)", e("#N/A")],
    ["VLOOKUP(3,A1:B6,2,FALSE)", "12.5"],
    ["VLOOKUP(3.9,A1:B6,2)", "12.5"],
    ["VLOOKUP(3,A1:B6,3,FALSE)", e("#REF!")],
    ['HLOOKUP("a",A1:C2,2,FALSE)', "b"],
    ["LOOKUP(4.5,A1:A6,B1:B6)", "B"],
    ["XLOOKUP(5,A1:A6,B1:B6)", "c"],
    ['XLOOKUP(9,A1:A6,B1:B6,"none")', "none"],
    ["INDEX(A1:B6,2,2)", "b"],
    ["INDEX(A1:A6,4)", 4],
    ["INDEX(A1:C1,2)", "a"],
    ["INDEX(A1:A6,7)", e("#REF!")],
    ["SUM(INDEX(A1:B6,0,1))", 21],
    ["SUM(OFFSET(A1,1,0,2,1))", 5],
    ["OFFSET(A1,-1,0)", e("#REF!")],
    ['INDIRECT("A"&2)', 2],
    ["ROW()", 3],
    ["ROW(A5)", 5],
    ["COLUMN(C1)", 3],
    ["ROWS(A1:A6)", 6],
    ["COLUMNS(A1:C1)", 3],
    ['COUNTIF(A1:A6,">2")', 4],
    ['COUNTIF(B1:B6,"b")', 2],
    ["COUNTIF(B1:B6,12.5)", 1],
    ['COUNTIF(A1:A6,"<>3")', 5],
    ['COUNTIFS(A1:A6,">1",B1:B6,"b")', 2],
    ['SUMIF(A1:A6,">4")', 11],
    ['SUMIF(B1:B6,"b",A1:A6)', 6],
    ['SUMIFS(A1:A6,A1:A6,">1",A1:A6,"<=3")', 5],
    ['AVERAGEIF(A1:A6,">9")', e("#DIV/0!")],
    ['MAXIFS(A1:A6,B1:B6,"b")', 4],
    ["DATE(2024,2,30)", 45352],
    ["YEAR(45352)", 2024],
    ["MONTH(45352)", 3],
    ["DAY(45352)", 1],
    ["EDATE(45322,1)", 45351],
    ["EOMONTH(45322,1)", 45351],
    ["WEEKDAY(45352)", 6],
    ["LET(a,2,b,a*3,a+b)", 8],
    ["_xlfn.CONCAT(1,2)", "12"],
    ["REAM.TWICE(A2)", 4],
    ["REAM.TWICE(A2)+1", 5],
    ['REAM.TWICE("x")', e("#VALUE!")],
    ["REAM.TWICE(C4)", e("#N/A")],
    ["SUM(REAM.TWICE(A1:A3))", 12],
    ["REAM.PAIR(A2)", 2],
    ["INDEX(REAM.PAIR(A2),1,2)", 3],
    ["REAM.TOTAL(A1:A3,10)", 16],
  ])("%s is %s", (formula, value) => {
    expect(shown(formula)).toEqual(value);
  });

  // A1:A6 is 1 to 6, B1:B6 is a, b, "12.5", B, c, "12 H7", C4 is #N/A.
  test.each<[string, Scalar | string]>([
    ["SUM(LARGE(A1:A6,{1,2,3}))", 15],
    ["SUM(LARGE(A1:A6,{1,2,3})*2)", 30],
    ["SUM(SMALL(A1:A6,{1;2}))", 3],
    ['SUM(SUMIF(B1:B6,{"a","b"},A1:A6))', 7],
    ['SUM(COUNTIFS(B1:B6,{"a","c"},A1:A6,">1"))', 1],
    ["SUM(INDEX(A1:A6,{2,4}))", 6],
    ["SUM(MATCH({1,3},A1:A6,0))", 4],
    ["SUM(VLOOKUP({2,5},A1:A6,1,FALSE))", 7],
    ["SUM(QUARTILE(A1:A5,{1,3}))", 6],
    ["SUM(RANK({1,6},A1:A6))", 7],
    ["SUM(ROUND({1.4,2.6},0))", 4],
    ['TEXTJOIN("-",TRUE,LEFT({"ab","cd"},1))', "a-c"],
    ["INDEX(A1:A6*10,3)", 30],
    ["INDEX((A1:A6>2)*A1:A6,0)", 0],
    ['VLOOKUP("c",CHOOSE({1,2},B1:B6,A1:A6),2,FALSE)', 5],
    // The shape of a condition is its own.
    ["SUMIFS(A1:A6,B1:B6,B2)", 6],
    ["COUNTIFS(B1:B6,B2)", 2],
    ["AVERAGEIFS(A1:A6,B1:B6,B2)", 3],
    ['SUMIFS(A1:A6,B1:B5,"a")', e("#VALUE!")],
    // Errors and wildcards in conditions.
    ['COUNTIF(C1:C6,"#N/A")', 1],
    ["COUNTIF(C1:C6,C4)", 1],
    ['COUNTIF(C1:C6,"#DIV/0!")', 0],
    ['SUMIF(C1:C6,"<>#N/A")', -6.9],
    ['COUNTIF(B1:B6,"12*")', 2],
    ['COUNTIF(B1:B6,"?")', 4],
    ['COUNTIF(B1:B6,"<>?")', 2],
    ['COUNTIF(A1:A6,"?")', 0],
    ['MATCH("*h7",B1:B6,0)', 6],
    ['SEARCH("?7",B6)', 4],
    ['SEARCH("~?","a?b")', 2],
    // Dates at both ends of the calendar.
    ["DATE(1900,1,1)", 1],
    ["DATE(1900,2,28)", 59],
    ["DATE(1900,2,29)", 60],
    ["DATE(1900,3,1)", 61],
    ["DATE(9999,12,31)", 2_958_465],
    ["DATE(9999,12,32)", e("#NUM!")],
    ["DATE(1900,1,-1)", e("#NUM!")],
    ["DATE(10000,1,1)", e("#NUM!")],
    ["DATE(1E300,1,1)", e("#NUM!")],
    ["EDATE(45322,1E9)", e("#NUM!")],
    ["EDATE(45322,-2000)", e("#NUM!")],
    ["EOMONTH(45322,1E300)", e("#NUM!")],
    ["YEAR(60)", 1900],
    ["DAY(60)", 29],
    ["MONTH(59)", 2],
    ["DAY(1)", 1],
    ["WEEKDAY(1)", 1],
    ["SUM(YEAR({45352,44000}))", 4044],
    // What is no number.
    ["VALUE(TRUE)", e("#VALUE!")],
    ['VALUE("12 H7")', e("#VALUE!")],
    ['VALUE("H7")', e("#VALUE!")],
    ['VALUE("E7")', e("#VALUE!")],
    ["MOD(123456789012.9996,1)>=0", true],
    ["MOD(2.9999999999999996,1)>=0", true],
    ['LEN(REPT("a",32767)&"")', 32_767],
    ['REPT("a",32767)&"b"', e("#VALUE!")],
    ['TEXTJOIN(",",0,B1,"",B2)', "a,,b"],
    ['TEXTJOIN(",",1,B1,"",B2)', "a,b"],
    ["SUMPRODUCT(B1,A1)", 0],
    ["SUMPRODUCT(B3,A1)", 0],
    ['MAXIFS(A1:A6,B1:B6,"none")', 0],
    ["SUM(doubled)", 42],
    ["INDEX(doubled,2)", 4],
    ["SUM(constants)", 6],
    ["SUM(Sheet1:Sheet1!A1:A2)", 3],
    ["SUM(sheet1:other!A1:A2,10)", 16],
  ])("%s is %s", (formula, value) => {
    const result = shown(formula);
    if (typeof value === "number" && !Number.isInteger(value)) expect(result).toBeCloseTo(value, 12);
    else expect(result).toEqual(value);
  });

  test("go over more cells than a call has arguments", () => {
    const long = new Grid();
    for (let row = 0; row < 300_000; row++) long.set(row, 0, row % 7);
    const over: Cells = {
      ...cells,
      each: (area, visit) => long.each(area, visit),
      matrix: (area) => long.matrix(area),
    };
    const give = (formula: string) =>
      evaluate(
        parse(formula).node!,
        { cells: over, sheet: 0, row: 0, column: 4, functions, variables: new Map(), isArrayFormula: false },
        "plain",
      );
    expect(give('MAXIFS(A1:A300000,A1:A300000,">2")')).toBe(6);
    expect(give('MINIFS(A1:A300000,A1:A300000,">2")')).toBe(3);
  });

  test("give arrays in array formulas", () => {
    expect(run("REAM.PAIR(A1:A2)", "array")).toEqual([
      [1, 2],
      [2, 3],
    ]);
    expect(run("TRANSPOSE(A1:A3)", "array")).toEqual([[1, 2, 3]]);
    expect(run('IF(A1:A3>1,"y","n")', "array")).toEqual([["n"], ["y"], ["y"]]);
    expect(run("ROUND(A1:A2/3,1)", "array")).toEqual([[0.3], [0.7]]);
    expect(run("INDEX(A1:C2,0,1)", "array")).toEqual([[1], [2]]);
  });
});

describe("what is not known for certain is said to be so", () => {
  test.each([
    ["NOW()", "the function NOW"],
    ["RAND()", "the function RAND"],
    ["FOO(1)", "the function FOO"],
    ["REAM.NEVER(1)", "the function REAM.NEVER"],
    ["[1]Sheet1!A1", "another workbook"],
    ["'[1]Sheet 1'!A1", "another workbook"],
    ["Sheet1:'My Sheet'!A1", "several sheets"],
    ["Sheet1:Sheet9!A1", 'made with ":"'],
    ["'Sheet1:Sheet9'!A1", "another workbook"],
    ["A1:INDEX(A:A,2)", 'made with ":"'],
    ["SUM(A1:A3 A2:B2)", "an intersection"],
    ["SUM((A1,A2))", "a union"],
    ["A1#", 'made with "#"'],
    ["nothing*2", "the name nothing"],
    ["loop", "name one another"],
    ["SUM(A1", "breaks off"],
    ["1 2", "not read"],
    ["", "breaks off"],
    ['"1/2"+1', '"1/2"'],
    ['VALUE("(5)")', '"(5)"'],
    ['VALUE("１２")', '"１２"'],
    ['COUNTIF(C1:C6,">#N/A")', "an error"],
    ['SUMPRODUCT("3")', "a text"],
    ["MOD(1E15,7)", "so much larger"],
    ["INDEX(A1:B6,{1,2},0)", "array of arrays"],
    ['COUNTIF(B1:B6,">a*")', "wildcards"],
    ['TEXT(1,"d mmm")', "d mmm"],
    ["MATCH(2,{3,1,2})", "not sorted"],
    ["SUM(1,2", "breaks off"],
    ["UNKNOWN.TABLE[x]", "a table"],
    [`${"(".repeat(300)}1${")".repeat(300)}`, "nested"],
    ["many", "too long"],
    ["SUMPRODUCT(IF(A1:A3>2,A1:A3,0))", "outside of an array formula"],
    ["SUM(A1:A3*{1;2;3})", "a range beside an array"],
    ["LARGE(A1:A3,1.5)", "between two numbers"],
    ['SEARCH("~a","~a")', "no wildcard"],
    ["COUNTIF(A1:C6,)", "an empty condition"],
    ["XLOOKUP(Z9,A1:A6,A1:A6)", "an empty cell"],
    ["SUM(IF({1,0},{1,2,3},4))", "different sizes"],
    ["SUM(CHOOSE({1,2},{1,2,3},4))", "different sizes"],
    ["SUM(IFERROR({1;2},{1,2}))", "different sizes"],
    ["SUM(IFERROR(3,{1,2}))", "in place of an error"],
    ["SUM(TRANSPOSE(A1:A3)*2)", "an array where a value belongs"],
  ] as const)("%s", (formula, why, mode: "plain" | "array" = "plain") => {
    expect(() => run(formula, mode)).toThrow(Unsupported);
    expect(() => run(formula, mode)).toThrow(why);
  });

  test("and the cells it names are told all the same", () => {
    expect(parse("FOO(A1)+[1]X!B2+C3 D4").areas.map(({ top, left }) => [top, left])).toEqual([
      [0, 0],
      [2, 2],
      [3, 3],
    ]);
  });

  test("no formula brings the reader down", () => {
    const word = fc.constantFrom(
      ..."A1 B$2 SUM( ) ( , ; { } + - * ^ % & = < : ! # @ [ ] 'a' \"t\" 1 2.5 rate loop T[A] LET( x".split(
        " ",
      ),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 14 }), (words) => {
        try {
          run(words.join(""));
        } catch (error) {
          expect(error).toBeInstanceOf(Unsupported);
        }
      }),
      { numRuns: runs(2000) },
    );
  });
});
