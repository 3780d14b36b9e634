// tests: lengths of one unit taken for another. Nothing here runs: the compiler has to refuse each line, and where it
// does not, it says that the fault announced above the line is missing.

import { spindleSpeed } from "../../src/calc/cutting/spindle.ts";
import { limitDeviations } from "../../src/calc/fits/iso286.ts";
import { fromTicks, micrometers, roundLength, toTicks } from "../../src/calc/lengths.ts";
import { plus, type Ticks, times } from "../../src/calc/ticks.ts";

export function mixedUp(millimeters: number, length: Ticks): unknown[] {
  // @ts-expect-error millimeters are no ticks
  const stated: Ticks = millimeters;
  // @ts-expect-error ticks are no millimeters
  const left: number = length;
  return [
    stated,
    left,
    // @ts-expect-error millimeters for ticks
    fromTicks(millimeters, "mm"),
    // @ts-expect-error ticks for millimeters
    toTicks(length, "mm"),
    // @ts-expect-error ticks for micrometers
    micrometers(length),
    // @ts-expect-error ticks for millimeters
    roundLength(length),
    // @ts-expect-error a length for a factor
    times(length, length),
    // @ts-expect-error millimeters added to ticks
    plus(length, millimeters),
    // @ts-expect-error millimeters compared with ticks
    length < millimeters,
    // @ts-expect-error ticks compared with a number
    length === 0,
    // @ts-expect-error ticks in a sum of numbers
    millimeters + length,
    // @ts-expect-error ticks in a product of numbers
    length * 2,
    // @ts-expect-error ticks in a calculation with numbers
    Math.abs(length),
    // @ts-expect-error the limit of a hole, in ticks, for a diameter in millimeters
    spindleSpeed(30, length),
    // @ts-expect-error a diameter in millimeters for a nominal size in ticks
    limitDeviations(millimeters, "H7"),
  ];
}
