// workbook: functions of ours that take whole ranges, in the spreadsheet's own functions. They work without array formulas.
// Where a range has texts, or zeros that we would pass over, the formula shows #N/A.

const RANGE = /^(?:(?:'[^']+'|[A-Za-z_][\w.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/i;
const NUMBER = /^\d+(?:\.\d+)?$/;

/** Formulas for the cells of a function from its arguments as they are written; undefined if they cannot be. */
type ListFunction = (args: readonly string[]) => string[] | undefined;

/** What stands in the cells unless the range is empty, or has what is no number over 0. */
const checked = (ranges: readonly string[], refused: string, texts: readonly string[]): string[] => {
  const each = ranges.map((range) => `COUNT(${range})<>COUNTA(${range}),COUNTIF(${range},"<=0")>0`);
  const empty = ranges.map((range) => `COUNTA(${range})=0`);
  return texts.map(
    (text) => `IF(AND(${empty.join(",")}),"",IF(OR(${[...each, refused].join(",")}),NA(),${text}))`,
  );
};

/** `n`, `C`, `r²`: least squares of ln T on ln v over the pairs that are whole. */
const taylorFit: ListFunction = ([speeds, lives, ...more]) => {
  if (more.length > 0 || ![speeds, lives].every((range) => RANGE.test(range ?? ""))) return undefined;
  const whole = `(${speeds}<>"")*(${lives}<>"")`;
  // A blank is an empty factor: ln 1 is 0.
  const log = (range: string) => `LN(${range}+1-${whole})`;
  const sum = (...factors: string[]) => `SUMPRODUCT(${[whole, ...factors].join("*")})`;
  const [x, y, count] = [log(speeds), log(lives), `SUMPRODUCT(${whole})`];
  const [meanX, meanY] = [`(${sum(x)}/${count})`, `(${sum(y)}/${count})`];
  const squares = (a: string, meanA: string, b: string, meanB: string) =>
    `SUMPRODUCT(${whole}*(${a}-${meanA})*(${b}-${meanB}))`;
  const xx = squares(x, meanX, x, meanX);
  const xy = squares(x, meanX, y, meanY);
  const yy = squares(y, meanY, y, meanY);
  const n = `(0-${xx}/${xy})`;
  const refused = `${count}<2,${n}<=0,${n}>=1`;
  return checked([speeds, lives], refused, [
    n,
    `EXP(${meanX}+${n}*${meanY})`,
    `MIN(1,${xy}^2/(${xx}*${yy}))`,
  ]);
};

/** Mean, low and high: the range of a mean life by Student's t. */
const lifeRange: ListFunction = ([lives, confidence = "", ...more]) => {
  if (more.length > 0 || !RANGE.test(lives ?? "")) return undefined;
  if (confidence !== "" && !NUMBER.test(confidence)) return undefined;
  const share = confidence === "" || Number(confidence) === 0 ? 0.95 : Number(confidence);
  if (!(share > 0 && share < 1)) return undefined;
  const half = `TINV(1-${share},COUNT(${lives})-1)*STDEV(${lives})/SQRT(COUNT(${lives}))`;
  const mean = `AVERAGE(${lives})`;
  return checked([lives], `COUNT(${lives})<2,${mean}-${half}<=0`, [
    mean,
    `${mean}-${half}`,
    `${mean}+${half}`,
  ]);
};

/** Mean of trial holes less the reamer, and their spread; the unit matters only for the longest size. */
const cutsOver: ListFunction = ([measured, reamer = "", units = "", ...more]) => {
  const isReamer = (RANGE.test(reamer) && !reamer.includes(":")) || NUMBER.test(reamer);
  if (more.length > 0 || !RANGE.test(measured ?? "") || !isReamer) return undefined;
  if (!/^(?:"(?:mm|in)")?$/i.test(units)) return undefined;
  const longest = /in/i.test(units) ? 124 : 3150;
  const refused = `COUNTIF(${measured},">${longest}")>0,NOT(ISNUMBER(${reamer})),N(${reamer})<=0,N(${reamer})>${longest}`;
  return checked([measured], refused, [
    `ROUND(AVERAGE(${measured})-${reamer},7)`,
    `ROUND(MAX(${measured})-MIN(${measured}),7)`,
  ]);
};

/** Root of the sum of squares; readings may be 0 or negative. */
const stackUp: ListFunction = (args) => {
  if (args.length === 0 || !args.every((text) => RANGE.test(text) || NUMBER.test(text))) return undefined;
  const all = args.join(",");
  return [`IF(COUNTA(${all})=0,"",IF(COUNT(${all})<>COUNTA(${all}),NA(),ROUND(SQRT(SUMSQ(${all})),7)))`];
};

export const listFunctions: ReadonlyMap<string, ListFunction> = new Map([
  ["CUTSOVER", cutsOver],
  ["TAYLORFIT", taylorFit],
  ["LIFERANGE", lifeRange],
  ["STACKUP", stackUp],
]);
