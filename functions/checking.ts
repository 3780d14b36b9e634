// functions: conversion of units, and hand figures checked.

import { check as checkFigure } from "../src/calc/checking/check.ts";
import { convert as convertValue } from "../src/calc/checking/convert.ts";
import { mapRows } from "./map-rows.ts";

/**
 * Converts a value to another unit of the trade, not rounded.
 *
 * @customfunction CONVERT
 * @param value Value in the unit from; the number alone
 * @param from Unit of the value, any case: mm, um, m, in, thou, tenth, uin, ft; m/min, sfm, m/s; mm/rev, ipr; mm/min, mm/s, ipm, in/s; Nm, Ncm, lbf-in, lbf-ft; kW, hp, PS; C, F; MPa, psi; cm3/min, in3/min
 * @param to Unit of the result, any case, of the same kind as from
 * @returns The value, in the unit to
 * @remarks A tenth is 0.0001 in, a thou 0.001 in, hp 550 ft·lbf/s, PS the metric horsepower. C and F are temperatures, not differences.
 * @example =REAM.CONVERT(0.5, "in", "mm") // 12.7
 * @example =REAM.CONVERT(100, "sfm", "m/min") // 30.48
 * @see sources: si-units
 */
export function convert(value: any[][], from: any[][], to: any[][]): any[][] {
  return mapRows(convertValue, { value, from, to });
}

/**
 * Checks a hand figure against the expected one: ok, or how far off it is and which slip that looks like.
 *
 * @customfunction CHECK
 * @param handFigure The figure to check, in any unit
 * @param expected The expected figure, in the same unit
 * @param [allowedShare] How far off is still ok, as a share of the expected, no unit; 0.01 if omitted
 * @returns ok, or how far off in per cent, and every usual slip with that ratio
 * @remarks A slip is only guessed from the ratio of the two figures: look before you correct.
 * @example =REAM.CHECK(382, 381.972) // "ok"
 * @example =REAM.CHECK(400, 381.972) // "4.72 % high: 4 for 12/π"
 * @see sources: si-units, practice
 */
export function check(handFigure: any[][], expected: any[][], allowedShare?: any[][]): any[][] {
  return mapRows(checkFigure, { handFigure, expected }, { allowedShare });
}
