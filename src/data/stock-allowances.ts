// data: stock left for the reamer, on diameter (source key "stock"). The mm rows up to 50 mm are printed in a
// trade-school text (2023); the inch rows are common practice, no source.

export interface StockAllowance {
  /** Up to and including this diameter; null is above the row before. */
  readonly upTo: number | null;
  readonly least: number;
  readonly greatest: number;
}

export const stockAllowances: Readonly<Record<"mm" | "in", readonly StockAllowance[]>> = {
  mm: [
    { upTo: 5, least: 0.1, greatest: 0.2 },
    { upTo: 20, least: 0.2, greatest: 0.3 },
    { upTo: 50, least: 0.3, greatest: 0.5 },
    { upTo: null, least: 0.5, greatest: 1 },
  ],
  in: [
    { upTo: 3 / 16, least: 0.004, greatest: 0.008 },
    { upTo: 0.5, least: 0.008, greatest: 0.016 },
    { upTo: 1, least: 0.01, greatest: 0.02 },
    { upTo: 2, least: 0.015, greatest: 0.03 },
    { upTo: null, least: 0.02, greatest: 0.04 },
  ],
};
