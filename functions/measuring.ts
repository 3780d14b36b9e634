// functions: measuring reamers and holes, and what the measurements say.

import { plugGauge as gaugesFor } from "../src/calc/fits/plug-gauge.ts";
import {
  capability as capabilityOf,
  inTolerance as shareInTolerance,
  gaugeShare as shareOfGauge,
  inspect as verdictOn,
} from "../src/calc/setup/inspection.ts";
import {
  vBlock as diameterInV,
  stackUp as rootSumSquare,
  sizeAt20 as sizeAtReference,
} from "../src/calc/setup/measuring.ts";
import { sizeAmongTexts } from "./arguments.ts";
import { list, mapRows, mapToColumns, readAs, repeated } from "./map-rows.ts";

/**
 * Gives the diameter over an odd number of flutes from the height over the apex of a V-block.
 *
 * @customfunction VBLOCK
 * @param reading Height of the top of the tool over the apex of the V, mm or in
 * @param flutes Number of flutes, odd and evenly spaced, 3 or more, no unit
 * @param [angle] Angle of the V, degrees; 180 − 360/flutes if omitted, and at most 5 off that
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Diameter, mm or in
 * @remarks Flutes that are unevenly spaced cannot be measured so: compare them with a setting master.
 * @example =REAM.VBLOCK(15, 3) // 10
 * @example =REAM.VBLOCK(11.219776, 5, 107) // 10
 * @see sources: v-block
 */
export function vBlock(reading: any[][], flutes: any[][], angle?: any[][], units?: any[][]): any[][] {
  return mapRows(diameterInV, { reading, flutes }, { angle, units });
}

/**
 * Gives the root sum of squares of independent random contributions to an error.
 *
 * @customfunction STACKUP
 * @param contribution1 Contributions, single cells or ranges, all in one unit (mm or in) and at one confidence, such as two standard deviations
 * @returns Root sum of squares, mm or in, as the contributions are
 * @remarks What drifts one way, such as wear and temperature, is added straight to the result, not here.
 * @example =REAM.STACKUP(3, 4) // 5
 * @see sources: root-sum-square
 */
export function stackUp(contribution1: any[][][]): any[][] {
  return mapRows(rootSumSquare, { contribution1: repeated(contribution1) });
}

/**
 * Tells whether a measured size is within the limits of its callout; the limit itself is in.
 *
 * @customfunction INSPECT
 * @param measured Measured size, mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit; "mm" if omitted
 * @returns in, or under or over by so much, mm or in
 * @remarks The uncertainty of the measurement is not taken off: ACCEPTLIMITS does that.
 * @example =REAM.INSPECT(12.018, "12 H7") // "in"
 * @example =REAM.INSPECT(12.021, "12 H7") // "over by 0.003"
 * @see sources: iso-286-1, derived
 */
export function inspect(measured: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapRows(verdictOn, { measured, callout }, { units });
}

/**
 * Gives the capability of a process from measured sizes: Cp, Cpk, mean and standard deviation.
 *
 * @customfunction CAPABILITY
 * @param measured Measured sizes, a range, mm or in; texts that are no sizes, blanks and 0 are passed over
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns Cp and Cpk (no unit), mean and sample standard deviation (mm or in)
 * @row Cp, Cpk, mean, standard deviation
 * @remarks The deviation is that of the whole sample (n − 1): of parts made over a long run, these are Pp and Ppk. They hold for a process that is stable and normal; below 30 parts or so they are a guess.
 * @example =REAM.CAPABILITY({10.0075;10.0105;10.009}, "10 H7") // 1.6667, 1.3333, 10.009, 0.0015
 * @see sources: capability
 */
export function capability(measured: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(
    4,
    capabilityOf,
    { measured: readAs(sizeAmongTexts, list(measured)), callout },
    { units },
  );
}

/**
 * Gives the share of parts to expect in tolerance, if their sizes are normally distributed.
 *
 * @customfunction INTOLERANCE
 * @param mean Mean size, mm or in
 * @param deviation Standard deviation, mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit; "mm" if omitted
 * @returns Share in tolerance, no unit (0.9973 is 99.73 %)
 * @example =REAM.INTOLERANCE(10.0075, 0.0025, "10 H7") // 0.9973
 * @see sources: capability
 */
export function inTolerance(mean: any[][], deviation: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapRows(shareInTolerance, { mean, deviation, callout }, { units });
}

/**
 * Gives the share of a tolerance that the scatter of a gauge takes up, and what that makes it.
 *
 * @customfunction GAUGESHARE
 * @param repeatability Standard deviation of one person's repeated measurements (EV), mm or in
 * @param reproducibility Standard deviation between persons (AV), mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit; "mm" if omitted
 * @returns Share of the tolerance (no unit, 0.1 is 10 %), and good, marginal or unfit
 * @row share, verdict
 * @remarks Good to 10 %, marginal to 30 %, unfit above: common practice, no source.
 * @example =REAM.GAUGESHARE(0.0008, 0.0006, "10 H7") // 0.4, "unfit"
 * @see sources: gauge-study
 */
export function gaugeShare(
  repeatability: any[][],
  reproducibility: any[][],
  callout: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(2, shareOfGauge, { repeatability, reproducibility, callout }, { units });
}

/**
 * Gives the size at 20 °C (68 °F) of a part that was measured at another temperature.
 *
 * @customfunction SIZEAT20
 * @param measured Measured size, mm or in
 * @param temperature Temperature of the part, °C or °F
 * @param material Material key or name as in MATERIALS(), no unit
 * @param [gaugeTemperature] Temperature of the gauge, °C or °F; 20 °C or 68 °F if omitted
 * @param [gaugeMaterial] Material of the gauge as in MATERIALS(), no unit; steel of 11.5 µm/(m·K) if omitted
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Size at 20 °C, mm or in
 * @example =REAM.SIZEAT20(50, 30, "aluminum") // 49.988203
 * @example =REAM.SIZEAT20(50, 30, "aluminum", 30) // 49.993951
 * @see sources: reference-temperature
 */
export function sizeAt20(
  measured: any[][],
  temperature: any[][],
  material: any[][],
  gaugeTemperature?: any[][],
  gaugeMaterial?: any[][],
  units?: any[][],
): any[][] {
  return mapRows(
    sizeAtReference,
    { measured, temperature, material },
    { gaugeTemperature, gaugeMaterial, units },
  );
}

/**
 * Gives the limits of the plain plug gauges for a hole of IT6 or IT7 to 180 mm.
 *
 * @customfunction PLUGGAUGE
 * @param callout Callout of the hole with its tolerance class, in mm or in
 * @param [units] "mm" or "in", for sizes without a unit and for the result; "mm" if omitted
 * @returns GO least and greatest, GO worn, NOT GO least and greatest, mm or in
 * @row GO least, GO greatest, GO worn, NOT GO least, NOT GO greatest
 * @remarks GO worn is the size down to which the GO gauge may wear. In inches each deviation from the nominal size is rounded to 0.00001 in.
 * @example =REAM.PLUGGAUGE("25 H7") // 25.001, 25.005, 24.997, 25.019, 25.023
 * @see sources: plug-gauges, iso-286-1
 */
export function plugGauge(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(5, gaugesFor, { callout }, { units });
}
