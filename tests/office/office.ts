// tests: LibreOffice, as another program that reads, computes and writes workbooks.

import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const program = process.env.SOFFICE ?? "soffice";

/** The file as LibreOffice writes it after it has read it: `xlsx` or `csv`, of the first sheet. */
export function converted(file: Uint8Array, to: "xlsx" | "csv", from = "xlsx"): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  try {
    const input = join(folder, `book.${from}`);
    writeFileSync(input, file);
    mkdirSync(join(folder, "out"));
    const filter = to === "xlsx" ? "xlsx:Calc MS Excel 2007 XML" : "csv:Text - txt - csv (StarCalc):44,34,76";
    execFileSync(
      program,
      // A profile of its own, so that nobody's settings matter.
      [
        `-env:UserInstallation=file://${join(folder, "profile")}`,
        "--headless",
        "--convert-to",
        filter,
        "--outdir",
        join(folder, "out"),
        input,
      ],
      { stdio: ["ignore", "ignore", "pipe"] },
    );
    return new Uint8Array(readFileSync(join(folder, "out", `book.${to}`)));
  } catch (error) {
    if ((error as { code?: string }).code === "ENOENT" && (error as { path?: string }).path === program)
      throw new Error(
        "LibreOffice is not installed: install libreoffice-calc, or set SOFFICE to its program",
      );
    throw error;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
