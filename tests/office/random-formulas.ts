// tests: random formulas with the spreadsheet's own functions over cells of every kind: numbers, texts, truths, errors,
// empty ones; with array constants where one value belongs, and conditions of every kind.

import fc from "fast-check";

/** Column by column, from row 1: numbers; texts, some of them numbers; a mixture; dates. */
export const cells: readonly (readonly (number | string | boolean | { error: string } | null)[])[] = [
  [3, -2, 7.5, 0, 12, 3],
  ["a", "b", "A", "c", "ab", "12.5"],
  [5, "x", 8, null, { error: "#N/A" }, { error: "#DIV/0!" }],
  [45322, 45352, 44000, 40000, 45000, 46000],
  [1, 2, 3, 4, 5, 6],
  [true, false, true, true, false, true],
];

const LETTERS = "ABCDE";
const pick = <T>(...values: T[]) => fc.constantFrom(...values);
const row = fc.integer({ min: 1, max: 6 });
const cell = fc.tuple(pick(...LETTERS), row).map(([letter, at]) => letter + at);
const numberCell = fc.tuple(pick("A", "D", "E"), row).map(([letter, at]) => letter + at);
const column = (letters: readonly string[]) => pick(...letters).map((letter) => `${letter}1:${letter}6`);
const range = fc.oneof(column([...LETTERS]), pick("A1:B3", "B2:C4", "C1:E6", "A1:A1", "C4:C5"));
const numbers = column(["A", "E"]);

const number = fc.oneof(pick("0", "1", "2", "3", "7.5", "-2", "0.5", "1E3", "10%"), numberCell);
const text = fc.oneof(pick('"a"', '"AB"', '""', '"12.5"', '"x y"'), pick("B1", "B5", "B6"));
const array = pick("{1,2,3}", "{2;4}", "{1,2;3,4}", '{"a","b"}', "{-1,0,5}");
const condition = fc.oneof(
  pick('">2"', '"<>3"', '"=3"', '"<=5"', '"a"', '"<>a"', '"#N/A"', '"<>#N/A"', '""', '"="', '">a"'),
  pick("3", "A1", "B1", "C4", "C5", "C3", "E2"),
  pick('{"a","b"}', '{">2","<0"}', "{3,12}"),
);

const call = (name: string, ...args: fc.Arbitrary<string>[]) =>
  fc.tuple(...args).map((given) => `${name}(${given.join(",")})`);
const named = (names: readonly string[], ...args: fc.Arbitrary<string>[]) =>
  fc.tuple(pick(...names), ...args).map(([name, ...given]) => `${name}(${given.join(",")})`);

const wildcards = pick('"a*"', '"?"', '"<>*b"', '"<>a?"', '{"a*","?b"}');
const any = column(["A", "B", "C", "D", "E"]);

/**
 * Formulas up to some depth. What gives TRUE or FALSE stands only where a condition belongs: LibreOffice has numbers for
 * both.
 */
export const formula: fc.Arbitrary<string> = fc.letrec<{
  value: string;
  truth: string;
  many: string;
}>((tie) => {
  const value = tie("value");
  const truth = tie("truth");
  const many = tie("many");
  /** One value, or several where one belongs. */
  const some = fc.oneof({ weight: 3, arbitrary: value }, { weight: 1, arbitrary: array });
  const operator = pick("+", "-", "*", "/", "^", "&");
  const comparison = pick("=", "<>", "<", ">", "<=", ">=");
  return {
    value: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      fc.oneof(number, cell, text),
      fc.tuple(some, operator, some).map(([a, sign, b]) => `(${a}${sign}${b})`),
      some.map((a) => `(-${a})`),
      named(["SUM", "AVERAGE", "MAX", "MIN", "COUNT", "COUNTA", "PRODUCT", "MEDIAN", "SUMSQ"], many),
      named(["SUM", "MAX", "COUNT"], many, some),
      named(["LARGE", "SMALL"], numbers, pick("1", "3", "E2", "{1,2,3}", "9", "0")),
      named(["QUARTILE"], numbers, pick("0", "1", "2", "{1,3}")),
      named(["COUNTIF"], range, condition),
      named(["COUNTIF"], pick("B1:B6", "B2:B5"), wildcards),
      named(["COUNTIF"], pick("F1:F6"), pick("TRUE", "F2")),
      named(["SUMIF", "AVERAGEIF"], range, condition),
      named(["SUMIF", "AVERAGEIF"], any, condition, numbers),
      named(["SUMIFS", "AVERAGEIFS"], numbers, any, condition),
      named(["SUMIFS", "AVERAGEIFS"], numbers, any, condition, any, condition),
      named(["COUNTIFS"], any, condition, any, condition),
      named(["ROUND", "ROUNDUP", "ROUNDDOWN", "TRUNC"], some, pick("0", "1", "-1", "{0,1}")),
      named(["ABS", "INT", "SIGN", "SQRT", "EVEN", "ODD", "N", "LEN", "UPPER"], some),
      named(["MOD", "POWER", "QUOTIENT"], some, some),
      named(["LEFT", "RIGHT", "REPT"], some, pick("0", "1", "2", "{1,2}")),
      named(["FIND", "SEARCH"], pick('"a"', '"A"', "B1", '"2"'), some),
      named(["SUBSTITUTE"], some, pick('"a"', '"2"', "B5"), text),
      named(["CONCATENATE"], some, some),
      call("IF", truth, value, value),
      call("IF", truth, some, some),
      call("IFERROR", some, some),
      call("CHOOSE", pick("1", "2", "{1,2}", "E2", "3"), value, some),
      call("MATCH", value, any, pick("0")),
      call("MATCH", array, any, pick("0")),
      call("INDEX", range, pick("1", "2", "E3", "{1,2}"), pick("1")),
      call("VLOOKUP", some, pick("A1:C6", "B1:C6", "E1:E6"), pick("1", "2", "{1,2}"), pick("FALSE", "0")),
      call("SUMPRODUCT", numbers, numbers),
      call(
        "SUMPRODUCT",
        fc.tuple(any, comparison, value).map(([a, sign, b]) => `--(${a}${sign}${b})`),
        numbers,
      ),
      call(
        "DATE",
        pick("2024", "1999", "99"),
        pick("1", "12", "14", "A1", "{1,2}"),
        pick("1", "31", "A5", "-3"),
      ),
      named(["EDATE", "EOMONTH"], pick("D1", "D2", "D5"), pick("1", "-1", "13", "A1")),
      named(["YEAR", "MONTH", "DAY", "WEEKDAY"], pick("D1", "D3", "D5", "{44000,45322}", "45000")),
      call("_xlfn.TEXTJOIN", pick('","', '"-"'), pick("TRUE", "FALSE", "0", "1"), range),
      named(["ROWS", "COLUMNS"], fc.oneof(range, array)),
      call("RANK", pick("E1", "E3", "E6"), pick("E1:E6", "E1:E3")),
      call("COUNTBLANK", range),
    ),
    truth: fc.oneof(
      { depthSize: "small" },
      pick("TRUE", "FALSE", "F1", "F2"),
      fc.tuple(value, comparison, value).map(([a, sign, b]) => `(${a}${sign}${b})`),
      named(["ISNUMBER", "ISTEXT", "ISERROR", "ISBLANK"], value),
      named(["AND", "OR"], truth, truth),
      call("NOT", truth),
      call("EXACT", value, value),
    ),
    many: fc.oneof({ depthSize: "small" }, range, array, value),
  };
}).value;
