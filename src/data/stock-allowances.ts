// data: stock left for the reamer, on diameter and counted on the drill's nominal diameter. The mm rows from 2 to
// 50 mm are printed in a trade-school text (2023), source key "stock-metric"; all other rows are common practice, no
// source, key "stock-practice".

export interface StockAllowance {
  /** Up to and including this diameter; null is above the row before. */
  readonly upTo: number | null;
  readonly minimum: number;
  readonly maximum: number;
}

export const stockAllowances: Readonly<Record<"mm" | "in", readonly StockAllowance[]>> = {
  mm: [
    { upTo: 1, minimum: 0.02, maximum: 0.05 },
    { upTo: 2, minimum: 0.05, maximum: 0.1 },
    { upTo: 5, minimum: 0.1, maximum: 0.2 },
    { upTo: 20, minimum: 0.2, maximum: 0.3 },
    { upTo: 50, minimum: 0.3, maximum: 0.5 },
    { upTo: null, minimum: 0.5, maximum: 1 },
  ],
  in: [
    { upTo: 0.04, minimum: 0.001, maximum: 0.002 },
    { upTo: 0.08, minimum: 0.002, maximum: 0.004 },
    { upTo: 3 / 16, minimum: 0.004, maximum: 0.008 },
    { upTo: 0.5, minimum: 0.008, maximum: 0.016 },
    { upTo: 1, minimum: 0.01, maximum: 0.02 },
    { upTo: 2, minimum: 0.015, maximum: 0.032 },
    { upTo: null, minimum: 0.02, maximum: 0.063 },
  ],
};

/**
 * What a material makes of the range, common practice, no source: tough and soft materials up to half as much again,
 * hardened steel half.
 */
export const stockShares: Readonly<Record<number, { readonly minimum: number; readonly maximum: number }>> = {
  0.5: { minimum: 0.5, maximum: 0.5 },
  1: { minimum: 1, maximum: 1 },
  1.5: { minimum: 1, maximum: 1.5 },
};
