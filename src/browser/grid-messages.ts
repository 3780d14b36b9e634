// browser: what the grid says of itself, where it does not say what to do instead.

const instead: Readonly<Record<string, string>> = {
  "Cannot sort a zone with array formulas.":
    "A formula among these cells fills several of them, so they cannot be sorted together. Select only the columns that were typed, and sort those: the results follow.",
  "Cannot sort. To sort, select only cells or only merges that have the same size.":
    "Merged cells of several sizes are among these cells, so they cannot be sorted. Select only rows without merged cells, and sort those.",
};

export const messages: readonly string[] = Object.keys(instead);

/** The message with what to do, if it is one that leaves that out. */
export const withAdvice = (message: string): string => instead[message] ?? message;
