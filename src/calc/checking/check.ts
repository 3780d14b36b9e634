// calc: which slip a wrong hand figure is. A slip has a fixed ratio and is named if the ratio of the figures, either
// way up, is close to it. All names together cover under 6 % of the ratios from 1/50 to 50.

import {
  MM_PER_FOOT,
  MM_PER_INCH,
  WATTS_PER_HORSEPOWER,
  WATTS_PER_METRIC_HORSEPOWER,
} from "../../data/units.ts";
import { shown, wrong } from "../problem.ts";

/** The slips that hand figures are most often off by are named within half a per cent. */
const OFTEN = 0.005;
/** Slips met less often, and those whose ratio holds for the usual case alone, within 0.15 %. */
const SELDOM = 0.0015;

type Slip = readonly [ratio: number, within: number, name: string];

const METRES_PER_FOOT = MM_PER_FOOT / 1000;

/** Ratios are definitions (NIST SP 811) or arithmetic; which slips people make is common practice, no source. */
const slips: readonly Slip[] = [
  [MM_PER_INCH, OFTEN, "mm for inch"],
  [1 / METRES_PER_FOOT, OFTEN, "m/min for ft/min"],
  [Math.PI, OFTEN, "π forgotten"],
  [Math.PI / 3, OFTEN, "4 for 12/π"],
  [2, OFTEN, "radius for diameter"],
  [2, OFTEN, "per side for on diameter"],
  [2, OFTEN, "TIR for eccentricity"],
  [2, OFTEN, "retract left out"],
  [2, OFTEN, "3 for 6 standard deviations"],
  [12, OFTEN, "12 left out"],
  [12, OFTEN, "lbf·in for lbf·ft"],
  [60, OFTEN, "60 (minutes for seconds or hours)"],
  [1000 / WATTS_PER_HORSEPOWER, OFTEN, "kW for hp"],
  [10, OFTEN, "thou for tenth"],
  [1000, OFTEN, "1000 (mm for µm or m)"],
  [1000, OFTEN, "N·m for N·mm"],
  ...Array.from(
    { length: 15 },
    (_, i): Slip => [i + 2, OFTEN, `per tooth for per revolution with ${i + 2} flutes`],
  ),
  [WATTS_PER_HORSEPOWER / WATTS_PER_METRIC_HORSEPOWER, SELDOM, "PS for hp"],
  [MM_PER_INCH / 10, SELDOM, "tenth for µm"],
  [1000 / MM_PER_INCH, SELDOM, "µin for µm"],
  [1.8, SELDOM, "per °F for per °C"],
  [1 / 0.8 ** 2, SELDOM, "efficiency multiplied for divided (0.8)"],
  [4 / 3, SELDOM, "regrinds for lives (3 for 4)"],
  [4 / 3, SELDOM, "saving on the proposed for on the present cost (33.3 % for 25 %)"],
  [5 / 4, SELDOM, "markup for margin (25 % for 20 %)"],
];

/** A share computed as 0.010000000000000009 is 1 %. */
const HAIR = 1e-9;

/** `ok` within the share, else how far off in per cent and every slip that the two figures' ratio fits. */
export function check(handFigure: number, expected: number, allowedShare = 0.01): string {
  if (expected === 0) {
    if (handFigure === 0) return "ok";
    wrong(`expected is 0 and handFigure ${shown(handFigure)}: a share of nothing is not defined`);
  }
  const off = (handFigure - expected) / Math.abs(expected);
  if (Math.abs(off) <= allowedShare + HAIR) return "ok";
  const difference = `${Number((100 * Math.abs(off)).toPrecision(3))} % ${off > 0 ? "high" : "low"}`;
  const quotient = handFigure / expected;
  const ratio = Math.max(quotient, 1 / quotient);
  const names: string[] = [];
  if (quotient > 0) {
    for (const [slip, within, name] of slips) {
      if (Math.abs(ratio / slip - 1) <= within + HAIR) names.push(name);
    }
  }
  return names.length === 0 ? difference : `${difference}: ${names.join(" or ")}`;
}
