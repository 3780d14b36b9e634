// taskpane: a formula as the host shows it, where it writes a comma in numbers and so `;` between arguments.

/** Quoted texts and sheet names, array constants, numbers, and the commas between arguments. */
const PIECES = /"[^"]*"|'[^']*'|\{[^}]*\}|[A-Za-z_][\w.]*|\d+\.\d+|\.\d+|,/g;

/** `=REAM.RPM(15,0.5)` as `=REAM.RPM(15;0,5)`. An array constant, whose marks differ from host to host, stays. */
export function inHostForm(formula: string, hasDecimalComma: boolean): string {
  if (!hasDecimalComma) return formula;
  return formula.replace(PIECES, (piece) => {
    if (piece === ",") return ";";
    return /^[\d.]/.test(piece) ? piece.replace(".", ",") : piece;
  });
}
