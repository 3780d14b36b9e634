// calc: what a callout on a drawing says, once it is read.

import { deviationIn } from "../fits/iso286.ts";
import type { Units } from "../lengths.ts";
import type { Limits, Ticks } from "../ticks.ts";
import * as ticks from "../ticks.ts";

/** With its limit deviations from the nominal size. */
export interface Callout extends Limits {
  /** As it was given. */
  readonly text: string;
  /** Nominal size; the lower limit where limits are written. */
  readonly nominal: Ticks;
  /** The unit the callout is written in. */
  readonly units: Units;
  readonly kind: "hole" | "shaft";
  /** Tolerance class as written (`H7`, `RC4`), "" if none. */
  readonly className: string;
  /** True for a class of ISO 286, whose deviations are whole 0.1 µm and rounded for a result in inches. */
  readonly iso: boolean;
  /** The shaft of a fit (`H7/g6`, `RC4`). */
  readonly shaft: (Limits & { readonly className: string }) | undefined;
  /** How many such holes. */
  readonly count: number;
  /** Depth, if written. */
  readonly depth: Ticks | undefined;
  readonly through: boolean;
  /** The limits hold after plating, anodizing and the like; "perhaps" after something that may be a coating. */
  readonly coated: boolean | "perhaps";
  /** Size modifiers as written, apart by a space. */
  readonly marks: string;
  /** Words that are no part of the size, as written. */
  readonly note: string;
}

/** Deviations as they hold for a result in `units`: those of an ISO class to 0.00001 in. */
export function deviationsOf(callout: Callout, deviations: Limits, units: Units): Limits {
  if (!callout.iso) return deviations;
  return {
    lower: deviationIn(deviations.lower, units),
    upper: deviationIn(deviations.upper, units),
  };
}

/** Limits of size for a result in `units`. */
export function limitsOf(callout: Callout, units: Units): Limits {
  return ticks.moved(deviationsOf(callout, callout, units), callout.nominal);
}
