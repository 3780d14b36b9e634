// calc: the fewest reamers for a family of holes. Lengths in mm or in.

import type { Callout } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, lengthText, toTicks, type Units } from "../lengths.ts";
import { Problem, resultOrProblem, shown } from "../problem.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, type Ticks } from "../ticks.ts";
import { orderWindow } from "./reamer-limits.ts";

/** A window that holes share is at least this wide, or as wide as the narrowest of them. */
const LEAST_WIDTH = { mm: ticks.times(MICROMETER, 4), in: ticks.times(INCH, 0.00015) } as const;

interface Window extends Limits {
  readonly callout: Callout;
}

interface Group {
  lower: Ticks;
  upper: Ticks;
  readonly members: Window[];
}

/** Rows of minimum, maximum diameter, number of holes, callouts joined by "; ", sorted by the minimum. */
export function sharedReamers(
  callouts: readonly Callout[],
  cutsOver = 0,
  units: Units = "mm",
): (number | string)[][] {
  const windows = callouts.map((callout) => windowOf(callout, cutsOver, units));
  const placeOf = (window: Window) => windows.indexOf(window);
  return fewestGroups(windows, LEAST_WIDTH[units]).map(({ lower, upper, members }) => [
    fromTicks(lower, units),
    fromTicks(upper, units),
    members.reduce((sum, { callout }) => sum + callout.count, 0),
    members
      .sort((a, b) => placeOf(a) - placeOf(b))
      .map(({ callout }) => callout.text.trim())
      .join("; "),
  ]);
}

sharedReamers.formula = {
  source: "reamer-limits",
  steps: () => [],
  lookup: (units: Units, callouts: readonly Callout[], cutsOver = 0) =>
    callouts.map((callout) => {
      const { lower, upper } = windowOf(callout, cutsOver, units);
      return `window for ${callout.text.trim()}: ${lengthText(lower, units)} to ${lengthText(upper, units)} ${units}`;
    }),
  conclusion: (units: Units, callouts: readonly Callout[], cutsOver = 0) =>
    sharedReamers(callouts, cutsOver, units).map(
      ([lower, upper, , texts]) => `one reamer of ${lower} to ${upper} ${units} for ${texts}`,
    ),
} satisfies Formula;

function windowOf(callout: Callout, cutsOver: number, units: Units): Window {
  const window = resultOrProblem(() => orderWindow(callout, toTicks(cutsOver, units), units));
  if (!(window instanceof Problem)) return { ...window, callout };
  const text = shown(callout.text);
  const why = window.message.replace(/^callout\b:? ?/, "").replace(`${text} `, "");
  throw new Problem(window.kind, `callouts ${text} ${why}`);
}

/**
 * Windows narrower than the minimum width can only be shared whole, so each that holds no other of them is a
 * group; the rest are grouped by the point that each has in common, from the lowest upper limit on.
 */
function fewestGroups(windows: readonly Window[], minimumWidth: Ticks): Group[] {
  const groups: Group[] = [];
  const byWidth = [...windows].sort(
    (a, b) => ticks.inOrder(ticks.widthOf(a), ticks.widthOf(b)) || ticks.inOrder(a.lower, b.lower),
  );
  const wide: Window[] = [];
  for (const window of byWidth) {
    const sharing = groups.find((group) => window.lower <= group.lower && window.upper >= group.upper);
    if (sharing) sharing.members.push(window);
    else if (ticks.widthOf(window) < minimumWidth)
      groups.push({ lower: window.lower, upper: window.upper, members: [window] });
    else wide.push(window);
  }
  let open: Group | undefined;
  for (const window of wide.sort((a, b) => ticks.inOrder(a.upper, b.upper))) {
    if (open && window.lower <= ticks.minus(open.upper, minimumWidth)) {
      open.lower = ticks.larger(open.lower, window.lower);
      open.members.push(window);
    } else {
      open = { lower: window.lower, upper: window.upper, members: [window] };
      groups.push(open);
    }
  }
  return groups.sort((a, b) => ticks.inOrder(a.lower, b.lower));
}
