// browser: what the grid says of itself, where it does not say what to do instead: short, for the header has two lines.

const instead: Readonly<Record<string, string>> = {
  "Cannot sort a zone with array formulas.":
    "A formula fills several of these cells. Select only the columns that were typed and sort those: the results follow.",
  "Cannot sort. To sort, select only cells or only merges that have the same size.":
    "Some of these cells are merged. Select only rows without merged cells and sort those.",
};

export const messages: readonly string[] = Object.keys(instead);

/** The message with what to do, if it is one that leaves that out. */
export const withAdvice = (message: string): string => instead[message] ?? message;
