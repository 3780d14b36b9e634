// functions: measuring reamers and holes, and what the measurements say.

import * as toolStock from "../src/calc/cost/tool-stock.ts";
import * as plugGauges from "../src/calc/fits/plug-gauge.ts";
import * as coolantAndBending from "../src/calc/setup/coolant-and-bending.ts";
import * as holeForms from "../src/calc/setup/hole-form.ts";
import * as inspection from "../src/calc/setup/inspection.ts";
import * as measuring from "../src/calc/setup/measuring.ts";
import { sizeAmongTexts } from "./arguments.ts";
import { list, mapRows, mapToColumns, readAs, repeated } from "./map-rows.ts";

/**
 * Returns the diameter over an odd number of flutes from the height over a V-block.
 *
 * @customfunction VBLOCK
 * @param reading Height of the top of the tool over the apex of the V, mm or in
 * @param flutes Number of flutes, odd and evenly spaced, 3 or more
 * @param [angle] Angle of the V, degrees. Default 180 − 360/flutes, and at most 5 from it.
 * @param [units] "mm" or "in". Default "mm".
 * @returns Diameter, mm or in
 * @cell diameter [mm|in]
 * @remarks Flutes that are unevenly spaced cannot be measured this way: compare them with a setting master.
 * @example =REAM.VBLOCK(15, 3) // 10
 * @example =REAM.VBLOCK(11.219776, 5, 107) // 10
 * @see sources: v-block
 */
export function vBlock(reading: any[][], flutes: any[][], angle?: any[][], units?: any[][]): any[][] {
  return mapRows(measuring.vBlock, { reading, flutes }, { angle, units });
}

/**
 * Returns the root sum of squares of independent contributions to an error.
 *
 * @customfunction STACKUP
 * @param contribution1 Contributions, cells or ranges, all in one unit (mm or in) and at one confidence, such as two standard deviations
 * @returns Root sum of squares, mm or in, as the contributions are
 * @cell stack-up [mm|in]
 * @remarks What drifts one way, such as wear and temperature, is added straight to the result, not here.
 * @example =REAM.STACKUP(3, 4) // 5
 * @see sources: root-sum-square
 */
export function stackUp(contribution1: any[][][]): any[][] {
  return mapRows(measuring.stackUp, { contribution1: repeated(contribution1) });
}

/**
 * Checks a measured size against the limits of its callout.
 *
 * @customfunction INSPECT
 * @param measured Measured size, mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns "ok", or "under by" or "over by" and the amount, mm or in
 * @cell inspection
 * @remarks A size on the limit is ok. The measurement uncertainty is not taken off: ACCEPTLIMITS does that.
 * @example =REAM.INSPECT(12.018, "12 H7") // "ok"
 * @example =REAM.INSPECT(12.021, "12 H7") // "over by 0.003"
 * @see sources: iso-286-1, derived
 */
export function inspect(measured: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapRows(inspection.inspect, { measured, callout }, { units });
}

/**
 * Calculates the capability of a process from measured sizes.
 *
 * @customfunction CAPABILITY
 * @param measured Measured sizes, a range, mm or in. Texts that are no sizes, blanks, and 0 are left out.
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @list measured
 * @returns Cp, Cpk, mean, and sample standard deviation (mm or in)
 * @row Cp, Cpk, mean [mm|in], standard deviation [mm|in]
 * @remarks The deviation is that of the whole sample (n − 1). For parts made over a long run these are Pp and Ppk. They hold for a process that is stable and normal. Below about 30 parts they are a guess.
 * @example =REAM.CAPABILITY({10.0075;10.0105;10.009}, "10 H7") // 1.6667, 1.3333, 10.009, 0.0015
 * @see sources: capability
 */
export function capability(measured: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(
    4,
    inspection.capability,
    { measured: readAs(sizeAmongTexts, list(measured)), callout },
    { units },
  );
}

/**
 * Calculates the share of parts in tolerance for a normal distribution.
 *
 * @customfunction INTOLERANCE
 * @param mean Mean size, mm or in
 * @param deviation Standard deviation, mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Share in tolerance (0.9973 is 99.73 %)
 * @cell share in tolerance
 * @example =REAM.INTOLERANCE(10.0075, 0.0025, "10 H7") // 0.9973
 * @see sources: capability
 */
export function inTolerance(mean: any[][], deviation: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapRows(inspection.inTolerance, { mean, deviation, callout }, { units });
}

/**
 * Calculates how much of a tolerance the gauge takes up.
 *
 * @customfunction GAUGESHARE
 * @param repeatability Standard deviation of one person's repeated measurements (EV), mm or in
 * @param reproducibility Standard deviation between persons (AV), mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns Share of the tolerance (0.1 is 10 %), and "good", "marginal", or "unfit"
 * @row share, gauge
 * @remarks Good to 10 %, marginal to 30 %, unfit above: common practice.
 * @example =REAM.GAUGESHARE(0.0008, 0.0006, "10 H7") // 0.4, "unfit"
 * @see sources: gauge-study
 */
export function gaugeShare(
  repeatability: any[][],
  reproducibility: any[][],
  callout: any[][],
  units?: any[][],
): any[][] {
  return mapToColumns(2, inspection.gaugeShare, { repeatability, reproducibility, callout }, { units });
}

/**
 * Returns the size at 20 °C (68 °F) of a part measured at another temperature.
 *
 * @customfunction SIZEAT20
 * @param measured Measured size, mm or in
 * @param temperature Temperature of the part, °C or °F
 * @param material Material, a key or name as in MATERIALS()
 * @param [gaugeTemperature] Temperature of the gauge, °C or °F. Default 20 °C or 68 °F.
 * @param [gaugeMaterial] Material of the gauge as in MATERIALS(). Default steel of 11.5 µm/(m·K).
 * @param [units] "mm" or "in". Default "mm".
 * @returns Size at 20 °C, mm or in
 * @cell size at 20 °C [mm|in]
 * @example =REAM.SIZEAT20(50, 30, "aluminum") // 49.988203
 * @example =REAM.SIZEAT20(50, 30, "aluminum", 30) // 49.993951
 * @see sources: reference-temperature, expansion
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
    measuring.sizeAt20,
    { measured, temperature, material },
    { gaugeTemperature, gaugeMaterial, units },
  );
}

/**
 * Returns the limits of the plain plug gauges for a hole.
 *
 * @customfunction PLUGGAUGE
 * @param callout Callout of the hole as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns GO minimum and maximum, GO worn, NOT GO minimum and maximum, mm or in
 * @row GO minimum [mm|in], GO maximum [mm|in], GO worn [mm|in], NOT GO minimum [mm|in], NOT GO maximum [mm|in]
 * @remarks Tabulated for holes with an ISO class of grade 6 or 7 in mm, to 180 mm. All other holes: the 10 % rule, common practice. GO worn is the size down to which the GO gauge may wear.
 * @example =REAM.PLUGGAUGE("25 H7") // 25.001, 25.005, 24.997, 25.019, 25.023
 * @example =REAM.PLUGGAUGE("12 +0.020/0") // 12, 12.001, 12, 12.019, 12.02
 * @see sources: plug-gauges, plug-gauge-rule, iso-286-1
 */
export function plugGauge(callout: any[][], units?: any[][]): any[][] {
  return mapToColumns(5, plugGauges.plugGauge, { callout }, { units });
}

/**
 * Calculates the form of a hole from diameters at several depths.
 *
 * @customfunction HOLEFORM
 * @param diameters Measured diameters, a range, mm or in
 * @param positions Distance of each from the entry, a range of the same length, mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @list diameters, positions
 * @returns Taper, bell-mouth, and barrel, mm or in, and the form: "ok", "taper", "bell-mouth", "tight entry", "barrel", or "waist"
 * @row taper [mm|in], bell-mouth [mm|in], barrel [mm|in], form
 * @remarks Taper is over the measured length, plus toward the bottom. Bell-mouth is the entry less the mean of the others. Barrel is the middle less the mean of the ends. Two-point gauges miss odd lobes: check roundness with three points.
 * @example =REAM.HOLEFORM({12.016;12.012;12.01}, {3;15;27}) // -0.006, 0.005, -0.001, "taper"
 * @example =REAM.HOLEFORM({12.02;12.01;12.01}, {3;15;27}) // -0.01, 0.01, -0.005, "bell-mouth"
 * @see sources: hole-form, hole-form-limit
 */
export function holeForm(diameters: any[][], positions: any[][], units?: any[][]): any[][] {
  return mapToColumns(
    4,
    holeForms.holeForm,
    { diameters: list(diameters), positions: list(positions) },
    { units },
  );
}

/**
 * Calculates the lower confidence bound of a Cpk.
 *
 * @customfunction CPKBOUND
 * @param cpk Cpk from your measurements (CAPABILITY), a number
 * @param count Number of parts measured
 * @param [confidence] One-sided confidence, a share (0.95 is 95 %). Default 0.95.
 * @returns Lower bound of the Cpk, a number
 * @remarks A Cpk from few parts says little: quote it with the number of parts.
 * @example =REAM.CPKBOUND(1.33, 30) // 1.025804
 * @see sources: cpk-bound
 */
export function cpkBound(cpk: any[][], count: any[][], confidence?: any[][]): any[][] {
  return mapRows(toolStock.cpkBound, { cpk, count }, { confidence });
}

/**
 * Returns the size that a part has at a temperature, from its size at 20 °C (68 °F).
 *
 * @customfunction HOTSIZE
 * @param size Size at 20 °C (68 °F), mm or in
 * @param temperature Temperature of the part, °C or °F
 * @param material Material, a key or name as in MATERIALS()
 * @param [units] "mm" or "in". Default "mm".
 * @returns Size at the temperature, mm or in
 * @example =REAM.HOTSIZE(50, 35, "aluminum") // 50.0177
 * @see sources: reference-temperature, expansion
 */
export function hotSize(size: any[][], temperature: any[][], material: any[][], units?: any[][]): any[][] {
  return mapRows(coolantAndBending.hotSize, { size, temperature, material }, { units });
}
