// functions: callouts, limits and fits.

import {
  acceptanceLimits,
  calloutPart,
  limits as limitsOfSize,
  maximumSize,
  middleSize,
  minimumSize,
  toleranceOf,
} from "../src/calc/callouts/limits.ts";
import { clearance as clearanceOf, fitType } from "../src/calc/fits/clearance.ts";
import { gradeAndProcess } from "../src/calc/fits/grade-for.ts";
import { lowerDeviation, standardToleranceWidth, upperDeviation } from "../src/calc/fits/iso286.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Gives the lower and upper limit of size that a drawing callout means.
 *
 * @customfunction LIMITS
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Lower and upper limit of size, mm or in
 * @row lower limit, upper limit
 * @remarks The class of a hole is in capitals, of a shaft in small letters. A class on an inch size is worked at the size in mm and its deviations rounded to 0.00001 in. A text that has no tolerance, names a thread or contradicts itself is refused with the reason.
 * @example =REAM.LIMITS("12 H7") // 12, 12.018
 * @example =REAM.LIMITS("4X Ø.500 +.0005/-.0000 THRU", "in") // 0.5, 0.5005
 * @see sources: iso-286-1, iso-286-2, ansi-b4.1
 */
export function limits(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, limitsOfSize, { callout }, { units });
}

/**
 * Gives the least size that a drawing callout allows.
 *
 * @customfunction MINSIZE
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Lower limit of size, mm or in
 * @example =REAM.MINSIZE("20 P7") // 19.965
 * @see sources: iso-286-1, ansi-b4.1
 */
export function minSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(minimumSize, { callout }, { units });
}

/**
 * Gives the greatest size that a drawing callout allows.
 *
 * @customfunction MAXSIZE
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Upper limit of size, mm or in
 * @example =REAM.MAXSIZE("20 P7") // 19.986
 * @see sources: iso-286-1, ansi-b4.1
 */
export function maxSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(maximumSize, { callout }, { units });
}

/**
 * Gives the middle between the limits of a drawing callout.
 *
 * @customfunction MIDSIZE
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Middle of the limits of size, mm or in
 * @example =REAM.MIDSIZE("12 H7") // 12.009
 * @see sources: iso-286-1, ansi-b4.1
 */
export function midSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(middleSize, { callout }, { units });
}

/**
 * Gives the width of the tolerance of a drawing callout.
 *
 * @customfunction TOLERANCE
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Upper less lower limit of size, mm or in
 * @example =REAM.TOLERANCE("12 H7") // 0.018
 * @see sources: iso-286-1, ansi-b4.1
 */
export function tolerance(callout: any[][], units?: any[][]): any[][] {
  return mapRows(toleranceOf, { callout }, { units });
}

/**
 * Gives one part of what a drawing callout says.
 *
 * @customfunction CALLOUT
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param part "nominal", "lower", "upper" (deviations), "class", "count", "depth", "note", "through", or "marks" (size modifiers)
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns The part: a size or deviation in mm or in, a text, or TRUE or FALSE; "" where the callout does not say
 * @remarks The nominal is the lower limit where limits are written. through is TRUE if written, FALSE if a depth is.
 * @example =REAM.CALLOUT("4X Ø12 H7 x 30 DEEP", "count") // 4
 * @example =REAM.CALLOUT("4X Ø12 H7 x 30 DEEP", "class") // "H7"
 * @see sources: iso-286-1, ansi-b4.1
 */
export function callout(callout: any[][], part: any[][], units?: any[][]): any[][] {
  return mapRows(calloutPart, { callout, part }, { units });
}

/**
 * Gives the upper limit deviation (ES or es) of a tolerance class.
 *
 * @customfunction UPPERDEV
 * @param size Nominal size, mm or in
 * @param class_ Tolerance class in quotes such as "H7" for a hole or "g6" for a shaft, no unit
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Upper limit deviation, mm or in, to be added to the size
 * @example =REAM.UPPERDEV(20, "P7") // -0.014
 * @see sources: iso-286-1, iso-286-2
 */
export function upperDev(size: any[][], class_: any[][], units?: any[][]): any[][] {
  return mapRows(upperDeviation, { size, class: class_ }, { units });
}

/**
 * Gives the lower limit deviation (EI or ei) of a tolerance class.
 *
 * @customfunction LOWERDEV
 * @param size Nominal size, mm or in
 * @param class_ Tolerance class in quotes such as "H7" for a hole or "g6" for a shaft, no unit
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Lower limit deviation, mm or in, to be added to the size
 * @example =REAM.LOWERDEV(20, "P7") // -0.035
 * @see sources: iso-286-1, iso-286-2
 */
export function lowerDev(size: any[][], class_: any[][], units?: any[][]): any[][] {
  return mapRows(lowerDeviation, { size, class: class_ }, { units });
}

/**
 * Gives the standard tolerance of a grade at a size.
 *
 * @customfunction ITWIDTH
 * @param size Nominal size, mm or in
 * @param grade Standard tolerance grade from IT01 to IT18, as 7 or "IT7", no unit
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Width of the tolerance, mm or in
 * @example =REAM.ITWIDTH(20, 7) // 0.021
 * @see sources: iso-286-1
 */
export function itWidth(size: any[][], grade: any[][], units?: any[][]): any[][] {
  return mapRows(standardToleranceWidth, { size, grade }, { units });
}

/**
 * Gives the least and greatest clearance of a hole and a shaft; negative is interference.
 *
 * @customfunction CLEARANCE
 * @param hole Callout of the hole, or of both such as "12 H7/g6" or ".5000 RC4", in mm or in
 * @param [shaft] Callout of the shaft, in mm or in, if the hole does not carry it
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Least and greatest clearance, mm or in
 * @row least clearance, greatest clearance
 * @example =REAM.CLEARANCE("12 H7/g6") // 0.006, 0.035
 * @example =REAM.CLEARANCE("20 H7", "20 s6") // -0.048, -0.014
 * @see sources: iso-286-1, ansi-b4.1
 */
export function clearance(hole: any[][], shaft?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, clearanceOf, { hole }, { shaft, units });
}

/**
 * Gives the kind of a fit: clearance, interference or transition.
 *
 * @customfunction FITTYPE
 * @param hole Callout of the hole, or of both such as "12 H7/g6" or ".5000 RC4", in mm or in
 * @param [shaft] Callout of the shaft, in mm or in, if the hole does not carry it
 * @param [units] "mm" or "in", for sizes without a unit; "mm" if omitted
 * @returns "clearance" if the minimum is 0 or more, "interference" if the maximum is 0 or less, else "transition"
 * @example =REAM.FITTYPE("12 H7/g6") // "clearance"
 * @example =REAM.FITTYPE("3 H7/p6") // "transition"
 * @see sources: iso-286-1, ansi-b4.1
 */
export function fitKind(hole: any[][], shaft?: any[][], units?: any[][]): any[][] {
  return mapRows(fitType, { hole }, { shaft, units });
}

/**
 * Gives the coarsest standard tolerance grade no wider than a tolerance, and what usually reaches it.
 *
 * @customfunction GRADEFOR
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit; "mm" if omitted
 * @returns Standard tolerance grade, a text such as "IT7", and the usual process (common practice, no source)
 * @row standard tolerance grade, usual process
 * @remarks Drilling reaches IT11 and wider, one reaming pass IT8 to IT10, a guided or second pass IT6 and IT7, honing finer: common practice, no source.
 * @example =REAM.GRADEFOR("12 +0.020/0") // "IT7", "a guided or a second reaming pass"
 * @see sources: iso-286-1, practice
 */
export function gradeFor(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, gradeAndProcess, { callout }, { units });
}

/**
 * Gives the limits to accept a measured part by: those of the callout, drawn in by the uncertainty of the measurement on each side.
 *
 * @customfunction ACCEPTLIMITS
 * @param callout Callout as on the drawing: a size with a class, deviations or limits, in mm or in
 * @param uncertainty Expanded uncertainty of the measurement, mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Least and greatest measured size to accept, mm or in
 * @row least accepted, greatest accepted
 * @example =REAM.ACCEPTLIMITS("10 H7", 0.002) // 10.002, 10.013
 * @see sources: iso-14253-1
 */
export function acceptLimits(callout: any[][], uncertainty: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, acceptanceLimits, { callout, uncertainty }, { units });
}
