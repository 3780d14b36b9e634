// functions: conversion of units, and checks of hand figures.

import * as checks from "../src/calc/checking/check.ts";
import * as limitChecks from "../src/calc/checking/check-limits.ts";
import * as conversions from "../src/calc/checking/convert.ts";
import { wholeCell } from "./arguments.ts";
import { isBlank } from "./cells.ts";
import { checkOf as checkedAgainst } from "./check-of.ts";
import { cellsOf } from "./columns.ts";
import { mapRows, readAs } from "./map-rows.ts";
import type { Matrix } from "./register.ts";

/**
 * Converts a value to another unit of the same kind, not rounded.
 *
 * @customfunction CONVERT
 * @param value Value in the unit from, the number alone
 * @param from Unit of the value, any case: mm, um, m, in, thou, tenth, uin, ft; m/min, sfm, m/s; mm/rev, ipr; mm/tooth, ipt; mm/min, mm/s, ipm, in/s; Nm, Ncm, lbf-in, lbf-ft; N, kN, lbf; kW, hp, PS; C, F; MPa, bar, kPa, psi; L/min, gpm; cm3/min, in3/min
 * @param to Unit of the result, any case, of the same kind as from
 * @returns The value, in the unit to
 * @cell converted value
 * @remarks A tenth is 0.0001 in, a thou 0.001 in. An hp is 550 ft·lbf/s, PS the metric horsepower, gpm the US gallon per minute. C and F are temperatures, not differences.
 * @example =REAM.CONVERT(0.5, "in", "mm") // 12.7
 * @example =REAM.CONVERT(100, "sfm", "m/min") // 30.48
 * @see sources: si-units
 */
export function convert(value: any[][], from: any[][], to: any[][]): any[][] {
  return mapRows(conversions.convert, { value, from, to });
}

/**
 * Checks a hand figure against the expected one and names likely mistakes.
 *
 * @customfunction CHECK
 * @param handFigure Hand figure to check, in any unit
 * @param expected Expected figure, in the same unit
 * @param [allowedShare] Share that still counts as close (0.01 is 1 %). Default 0.01.
 * @returns "ok", how far off within the share, or how far off with the likely mistakes
 * @cell check
 * @remarks A mistake is guessed from the ratio of the two figures alone. CHECKOF tries the mistakes on your inputs, CHECKLIMITS on limits of size.
 * @example =REAM.CHECK(382, 381.972) // "ok"
 * @example =REAM.CHECK(400, 381.972) // "4.72 % high: 4 for 12/π"
 * @see sources: si-units, practice
 */
export function check(handFigure: any[][], expected: any[][], allowedShare?: any[][]): any[][] {
  return mapRows(checks.check, { handFigure, expected }, { allowedShare });
}

/**
 * Checks hand figures for limits of size and names the mistake.
 *
 * @customfunction CHECKLIMITS
 * @param lower Hand figure for the lower limit of size, mm or in
 * @param upper Hand figure for the upper limit of size, mm or in
 * @param callout Callout as on the drawing, in mm or in
 * @param [units] "mm" or "in". Default "mm".
 * @returns "ok", the mistake, or how far off each limit is (mm or in)
 * @cell limits check
 * @remarks Every usual mistake is made on the callout and compared with your figures. Among them are another grade or size range, shaft for hole, a sign, and a decimal point.
 * @example =REAM.CHECKLIMITS(12, 12.018, "12 H7") // "ok"
 * @example =REAM.CHECKLIMITS(12, 12.027, "12 H7") // "H8 for H7"
 * @see sources: iso-286-1, ansi-b4.1, practice
 */
export function checkLimits(lower: any[][], upper: any[][], callout: any[][], units?: any[][]): any[][] {
  return mapRows(limitChecks.checkLimits, { lower, upper, callout }, { units });
}

/**
 * Checks a hand figure against a function and names the mistake.
 *
 * @customfunction CHECKOF
 * @param functionName Name of the function in quotes, such as "RPM"
 * @param handFigure Hand figure to check, in the unit of the function's result
 * @param inputs The function's own arguments in order, each with its own unit. Leave one empty between commas as in the function.
 * @returns "ok", the one mistake that gives the hand figure, or how far off it is
 * @cell check
 * @remarks Every usual mistake is made on your inputs. Among them are a unit, radius for diameter, an input left out, a constant forgotten, and digits swapped. Look before you correct.
 * @example =REAM.CHECKOF("RPM", 477, 15, 10) // "ok"
 * @example =REAM.CHECKOF("RPM", 955, 15, 10) // "radius for diameter"
 * @see sources: practice
 */
export function checkOf(functionName: any[][], handFigure: any[][], inputs: any[][][]): any[][] {
  return mapRows(checkedAgainst, {
    functionName,
    handFigure,
    inputs: readAs(
      wholeCell,
      byRow(Math.max(cellsOf(functionName).length, cellsOf(handFigure).length), inputs ?? []),
    ),
  });
}

/** The inputs of each row as one cell: a column as long as the hand figures gives a cell to each row. */
function byRow(rows: number, inputs: readonly Matrix[]): Matrix {
  return Array.from({ length: rows }, (_, row) => {
    const own = inputs.map((input) => {
      const cells = cellsOf(input);
      return rows > 1 && cells.length === rows ? [cells[row]] : cells;
    });
    return [own.every((cells) => cells.flat().every(isBlank)) ? null : own];
  });
}
