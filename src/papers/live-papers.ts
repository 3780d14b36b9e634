// papers: the papers whose formulas stay live, known by the title in their first cell, also after a file was opened again.

const TITLES = { card: "Set-up card", comparison: "Before and after", trouble: "Trouble sheet" } as const;
export const titleOf = (paper: keyof typeof TITLES): string => TITLES[paper];
export const isLivePaper = (firstCell: string): boolean =>
  (Object.values(TITLES) as string[]).includes(firstCell);
