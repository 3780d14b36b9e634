// calc: the one way a calculation says that it has no result.
// `wrong`: the input is wrong (#VALUE! in a sheet). `none`: the input is right and there is no answer (#N/A).

export type ProblemKind = "wrong" | "none";

export class Problem extends Error {
  constructor(
    readonly kind: ProblemKind,
    message: string,
  ) {
    super(message);
    this.name = "Problem";
  }
}

/** An error cell inside a table that is taken whole: the result is that error. */
export class CellError extends Problem {
  constructor(readonly cell: { readonly code: string }) {
    super("wrong", `a cell holds the error ${cell.code}`);
  }
}

/** The input is wrong; the message is one sentence that names the argument, what came and what is accepted. */
export function wrong(message: string): never {
  throw new Problem("wrong", message);
}

/** The input is right and has no answer; the message is one sentence that says why. */
export function none(message: string): never {
  throw new Problem("none", message);
}

/** What a calculation gives, or the Problem that it has instead. Anything else that is thrown is a fault, and goes on. */
export function resultOrProblem<Result>(calculate: () => Result): Result | Problem {
  try {
    return calculate();
  } catch (thrown) {
    if (thrown instanceof Problem) return thrown;
    throw thrown;
  }
}

/** A received value as a message quotes it: texts in quotes, control characters shown as a space, shortened. */
export function shown(value: unknown): string {
  if (typeof value === "number" || typeof value === "boolean") return String(value).toUpperCase();
  if (typeof value === "object" && value !== null) return "a cell of another kind";
  const text = String(value)
    .slice(0, 60)
    .replace(/[\s\u0000-\u001f\u007f]+/g, " ")
    .trim();
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}
