// calc: what a callout on a drawing says, once it is read.

import { deviationIn } from "../fits/iso286.ts";
import type { Units } from "../lengths.ts";

/** Limit deviations in ticks, from the nominal size. */
export interface Deviations {
  readonly lower: number;
  readonly upper: number;
}

export interface Callout extends Deviations {
  /** As it was given. */
  readonly text: string;
  /** Nominal size in ticks; the lower limit where limits are written. */
  readonly nominal: number;
  /** The unit the callout is written in. */
  readonly units: Units;
  readonly kind: "hole" | "shaft";
  /** Tolerance class as written (`H7`, `RC4`), "" if none. */
  readonly className: string;
  /** True for a class of ISO 286, whose deviations are whole 0.1 µm and rounded for a result in inches. */
  readonly iso: boolean;
  /** The shaft of a fit (`H7/g6`, `RC4`). */
  readonly shaft: (Deviations & { readonly className: string }) | undefined;
  /** How many such holes. */
  readonly count: number;
  /** Depth in ticks, if written. */
  readonly depth: number | undefined;
  readonly through: boolean;
  /** The limits hold after plating, anodizing and the like. */
  readonly coated: boolean;
  /** Size modifiers as written, apart by a space. */
  readonly marks: string;
  /** Words that are no part of the size, as written. */
  readonly note: string;
}

/** Deviations in ticks as they hold for a result in `units`: those of an ISO class to 0.00001 in. */
export function deviationsOf(callout: Callout, deviations: Deviations, units: Units): Deviations {
  if (units === "mm" || !callout.iso) return deviations;
  return {
    lower: deviationIn(deviations.lower, units),
    upper: deviationIn(deviations.upper, units),
  };
}

/** Limits of size in ticks for a result in `units`. */
export function limitsOf(callout: Callout, units: Units): Deviations {
  const { lower, upper } = deviationsOf(callout, callout, units);
  return { lower: callout.nominal + lower, upper: callout.nominal + upper };
}
