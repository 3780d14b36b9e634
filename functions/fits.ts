// functions: callouts, limits and fits.

import * as limitsOfSize from "../src/calc/callouts/limits.ts";
import * as clearances from "../src/calc/fits/clearance.ts";
import { gradeAndProcess } from "../src/calc/fits/grade-for.ts";
import * as iso286 from "../src/calc/fits/iso286-in-words.ts";
import { mapRows, mapToColumns } from "./map-rows.ts";

/**
 * Returns the lower and upper limits of size for a drawing callout.
 *
 * @customfunction LIMITS
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Lower and upper limit of size, mm or in
 * @row lower limit [mm|in], upper limit [mm|in]
 * @remarks The class of a hole is in capitals, of a shaft in small letters. A class on an inch size is worked at the size in mm and its deviations rounded to 0.00001 in. A text that can be read in two ways is not read: the message shows both.
 * @example =REAM.LIMITS("12 H7") // 12, 12.018
 * @example =REAM.LIMITS("4X Ø.500 +.0005/-.0000 THRU", "in") // 0.5, 0.5005
 * @see sources: iso-286-1, iso-286-2, ansi-b4.1
 */
export function limits(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, limitsOfSize.limits, { callout }, { units });
}

/**
 * Returns the lower limit of size for a drawing callout.
 *
 * @customfunction MINSIZE
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Lower limit of size, mm or in
 * @cell lower limit [mm|in]
 * @example =REAM.MINSIZE("20 P7") // 19.965
 * @see sources: iso-286-1, ansi-b4.1
 */
export function minSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(limitsOfSize.minimumSize, { callout }, { units });
}

/**
 * Returns the upper limit of size for a drawing callout.
 *
 * @customfunction MAXSIZE
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Upper limit of size, mm or in
 * @cell upper limit [mm|in]
 * @example =REAM.MAXSIZE("20 P7") // 19.986
 * @see sources: iso-286-1, ansi-b4.1
 */
export function maxSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(limitsOfSize.maximumSize, { callout }, { units });
}

/**
 * Returns the middle between the limits of size of a drawing callout.
 *
 * @customfunction MIDSIZE
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Middle of the limits of size, mm or in
 * @cell middle size [mm|in]
 * @example =REAM.MIDSIZE("12 H7") // 12.009
 * @see sources: iso-286-1, ansi-b4.1
 */
export function midSize(callout: any[][], units?: any[][]): any[][] {
  return mapRows(limitsOfSize.middleSize, { callout }, { units });
}

/**
 * Returns the tolerance of a drawing callout: upper less lower limit of size.
 *
 * @customfunction TOLERANCE
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Tolerance, mm or in
 * @cell tolerance [mm|in]
 * @example =REAM.TOLERANCE("12 H7") // 0.018
 * @see sources: iso-286-1, ansi-b4.1
 */
export function tolerance(callout: any[][], units?: any[][]): any[][] {
  return mapRows(limitsOfSize.toleranceOf, { callout }, { units });
}

/**
 * Returns one part of a drawing callout.
 *
 * @customfunction CALLOUT
 * @param callout Callout as on the drawing, in mm or in
 * @param part "nominal", "lower", "upper" (limit deviations), "class", "count", "depth", "note", "through", or "marks" (size modifiers)
 * @param [units] "mm" or "in". Default "mm".
 * @returns The part: a size or deviation in mm or in, a text, or TRUE or FALSE. Empty text where the callout does not have it.
 * @cell part of the callout
 * @remarks The nominal is the lower limit where limits are written. "through" is TRUE if written, FALSE if a depth is.
 * @example =REAM.CALLOUT("4X Ø12 H7 x 30 DEEP", "count") // 4
 * @example =REAM.CALLOUT("4X Ø12 H7 x 30 DEEP", "class") // "H7"
 * @see sources: iso-286-1, ansi-b4.1
 */
export function callout(callout: any[][], part: any[][], units?: any[][]): any[][] {
  return mapRows(limitsOfSize.calloutPart, { callout, part }, { units });
}

/**
 * Returns the upper limit deviation (ES or es) of a tolerance class.
 *
 * @customfunction UPPERDEV
 * @param size Nominal size, mm or in
 * @param class_ Tolerance class in quotes: "H7" for a hole, "g6" for a shaft
 * @param [units] "mm" or "in". Default "mm".
 * @returns Upper limit deviation, mm or in, to add to the size
 * @cell upper limit deviation [mm|in]
 * @example =REAM.UPPERDEV(20, "P7") // -0.014
 * @see sources: iso-286-1, iso-286-2
 */
export function upperDev(size: any[][], class_: any[][], units?: any[][]): any[][] {
  return mapRows(iso286.upperDeviationInWords, { size, class: class_ }, { units });
}

/**
 * Returns the lower limit deviation (EI or ei) of a tolerance class.
 *
 * @customfunction LOWERDEV
 * @param size Nominal size, mm or in
 * @param class_ Tolerance class in quotes: "H7" for a hole, "g6" for a shaft
 * @param [units] "mm" or "in". Default "mm".
 * @returns Lower limit deviation, mm or in, to add to the size
 * @cell lower limit deviation [mm|in]
 * @example =REAM.LOWERDEV(20, "P7") // -0.035
 * @see sources: iso-286-1, iso-286-2
 */
export function lowerDev(size: any[][], class_: any[][], units?: any[][]): any[][] {
  return mapRows(iso286.lowerDeviationInWords, { size, class: class_ }, { units });
}

/**
 * Returns the standard tolerance of a grade at a size.
 *
 * @customfunction ITWIDTH
 * @param size Nominal size, mm or in
 * @param grade Standard tolerance grade from IT01 to IT18, such as 7 or "IT7"
 * @param [units] "mm" or "in". Default "mm".
 * @returns Standard tolerance, mm or in
 * @cell standard tolerance [mm|in]
 * @example =REAM.ITWIDTH(20, 7) // 0.021
 * @see sources: iso-286-1
 */
export function itWidth(size: any[][], grade: any[][], units?: any[][]): any[][] {
  return mapRows(iso286.standardToleranceInWords, { size, grade }, { units });
}

/**
 * Returns the minimum and maximum clearance of a hole and a shaft.
 *
 * @customfunction CLEARANCE
 * @param hole Callout of the hole, or of hole and shaft such as "12 H7/g6" or ".5000 RC4", in mm or in
 * @param [shaft] Callout of the shaft, in mm or in. Leave it empty if the hole carries it.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Minimum and maximum clearance, mm or in. Negative is interference.
 * @row minimum clearance [mm|in], maximum clearance [mm|in]
 * @example =REAM.CLEARANCE("12 H7/g6") // 0.006, 0.035
 * @example =REAM.CLEARANCE("20 H7", "20 s6") // -0.048, -0.014
 * @see sources: iso-286-1, ansi-b4.1
 */
export function clearance(hole: any[][], shaft?: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, clearances.clearance, { hole }, { shaft, units });
}

/**
 * Returns the type of a fit: clearance, transition, or interference.
 *
 * @customfunction FITTYPE
 * @param hole Callout of the hole, or of hole and shaft such as "12 H7/g6" or ".5000 RC4", in mm or in
 * @param [shaft] Callout of the shaft, in mm or in. Leave it empty if the hole carries it.
 * @param [units] "mm" or "in". Default "mm".
 * @returns "clearance" if the minimum clearance is 0 or more, "interference" if the maximum is 0 or less, else "transition"
 * @cell fit
 * @example =REAM.FITTYPE("12 H7/g6") // "clearance"
 * @example =REAM.FITTYPE("3 H7/p6") // "transition"
 * @see sources: iso-286-1, ansi-b4.1
 */
export function fitKind(hole: any[][], shaft?: any[][], units?: any[][]): any[][] {
  return mapRows(clearances.fitType, { hole }, { shaft, units });
}

/**
 * Returns the standard tolerance grade of a callout, and what usually reaches it.
 *
 * @customfunction GRADEFOR
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Coarsest standard tolerance grade no wider than the tolerance, such as "IT7", and the usual process
 * @row standard tolerance grade, usual process
 * @remarks Drilling reaches IT11 and wider, one reaming pass IT8 to IT10, and IT7 with a reamer ground to the window. IT6 takes a finely adjusted or guided reamer, or a second pass. Common practice.
 * @example =REAM.GRADEFOR("12 +0.020/0") // "IT7", "one reaming pass, with a reamer ground to the window and runout within RUNOUTCHECK's limit"
 * @see sources: iso-286-1, practice
 */
export function gradeFor(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, gradeAndProcess, { callout }, { units });
}

/**
 * Returns the limits for accepting a measured part, less the measurement uncertainty on each side.
 *
 * @customfunction ACCEPTLIMITS
 * @param callout Callout as on the drawing, in mm or in
 * @param uncertainty Expanded uncertainty of the measurement, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Lower and upper measured size to accept, mm or in
 * @row lower acceptance limit [mm|in], upper acceptance limit [mm|in]
 * @example =REAM.ACCEPTLIMITS("10 H7", 0.002) // 10.002, 10.013
 * @see sources: iso-14253-1
 */
export function acceptLimits(callout: any[][], uncertainty: any[][], units?: any[][]): any[][] {
  return mapToColumns(2, limitsOfSize.acceptanceLimits, { callout, uncertainty }, { units });
}
