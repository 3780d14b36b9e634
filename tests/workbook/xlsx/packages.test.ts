// tests: archives: what is refused before it is unpacked, and that a new part changes no other byte.

import { randomBytes } from "node:crypto";
import { crc32, deflateRawSync } from "node:zlib";
import { strToU8, Zip, ZipDeflate, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { Refusal } from "../../../src/workbook/workbook.ts";
import { openPackage } from "../../../src/workbook/xlsx/package.ts";
import { readSharedStrings, readWorkbookParts } from "../../../src/workbook/xlsx/workbook-parts.ts";
import { readDirectory, type ZipEntry, zipLimits } from "../../../src/workbook/xlsx/zip-directory.ts";
import { unpack } from "../../../src/workbook/xlsx/zip-parts.ts";
import { hostileWorkbooks, sound } from "../../support/hostile.ts";
import {
  joined,
  packedEntries,
  partsOf,
  smallWorkbook,
  textsIn,
  unzipped,
  zipped,
} from "../../support/package.ts";

/** All that is read of a workbook. */
function readAll(bytes: Uint8Array): void {
  const file = openPackage(bytes);
  const { sheets } = readWorkbookParts(file);
  for (const { part } of sheets) file.read(part);
}

describe("hostile files are refused in one sentence", () => {
  // The entities inside a cell are met where its formula is read.
  const whole = Object.entries(hostileWorkbooks()).filter(([, { says }]) => says !== "an entity of its own");
  test.each(whole)("%s", (_, { bytes, says }) => {
    let message = "";
    try {
      readAll(bytes);
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      message = (error as Refusal).message;
    }
    expect(message).toContain(says);
    expect(message).not.toMatch(/[\n]|\. /);
  });

  test("more parts than any workbook has, told by a small limit", () => {
    const limits = { ...zipLimits, entries: 3 };
    expect(() => readDirectory(sound(), limits)).toThrow("no workbook needs more than 3");
  });

  test("more than the limit unpacked, told before anything is", () => {
    const size = Object.values(partsOf({ sheets: { A: "" } })).join("").length;
    const file = smallWorkbook({ sheets: { A: "" } });
    expect(() => readDirectory(file, { ...zipLimits, unpacked: size })).not.toThrow();
    expect(() => readDirectory(file, { ...zipLimits, unpacked: size - 1 })).toThrow("would unpack to");
  });

  test.each([0, 1, 100, 20_000, 90_000])(
    "a part of %i bytes that unpacks to more or to less than it says",
    (size) => {
      for (const bytes of [randomBytes(size), Buffer.alloc(size, "cell")])
        for (const level of [0, 1, 9]) {
          const packed = new Uint8Array(deflateRawSync(bytes, { level }));
          const place = { dataStart: 0, packedSize: packed.length, size, crc: crc32(bytes) };
          const entry = { name: "a.xml", method: 8, ...place } as ZipEntry;
          expect(Buffer.compare(unpack(packed, entry), bytes)).toBe(0);
          for (const said of [0, size >> 1, size - 1].filter((said) => said >= 0 && said < size))
            expect(() => unpack(packed, { ...entry, size: said })).toThrow("unpacks to more than it says");
          for (const said of [size + 1, 2 * size + 1])
            expect(() => unpack(packed, { ...entry, size: said })).toThrow(
              "does not unpack to what was packed",
            );
          expect(() => unpack(packed.subarray(0, -1), { ...entry, packedSize: packed.length - 1 })).toThrow(
            "cannot be unpacked",
          );
        }
    },
  );

  test("any cut of a file", () => {
    const file = sound();
    for (let length = 0; length < file.length; length += 7)
      expect(() => readAll(file.slice(0, length)), String(length)).toThrow(Refusal);
  });

  test("any changed byte is noticed, or changes no text", () => {
    const file = sound();
    const texts = textsIn(file);
    for (let at = 0; at < file.length; at += 3) {
      const other = file.slice();
      other[at] = other[at] ^ 0x15;
      try {
        const read = openPackage(other);
        for (const name of read.names) expect(read.read(name), String(at)).toBe(texts[name]);
      } catch (error) {
        expect(error, String(at)).toBeInstanceOf(Refusal);
      }
    }
  });
});

describe("a new part", () => {
  const parts: Record<string, string> = {
    ...partsOf({ sheets: { A: "<row/>", B: "<row/>" } }),
    "docProps/é.xml": "<x/>",
  };
  const wanted = "xl/worksheets/sheet1.xml";
  const now = `<worksheet><sheetData>${"x".repeat(5000)}</sheetData></worksheet>`;

  const kinds: Record<string, Uint8Array> = {
    packed: zipped(parts),
    "streamed, with the sizes behind the data": streamed(parts),
    stored: zipSync(
      Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, [strToU8(text), { level: 0 }]])),
    ),
    "with times and attributes": zipSync(
      Object.fromEntries(
        Object.entries(parts).map(([name, text]) => [
          name,
          [
            strToU8(text),
            { mtime: "2001-02-03", os: 3, attrs: 0o644 << 16, comment: "c", extra: { 17185: strToU8("ab") } },
          ],
        ]),
      ),
      { comment: "the archive" } as object,
    ),
  };

  test.each(Object.entries(kinds))("changes no other byte of an archive that is %s", (_, file) => {
    const result = joined(openPackage(file).with(new Map([[wanted, now]])));
    const before = packedEntries(file);
    const after = packedEntries(result);
    expect(after.map(([name]) => name)).toEqual(before.map(([name]) => name));
    before.forEach(([name, bytes], i) => {
      if (name !== wanted) expect(Buffer.compare(after[i][1], bytes), name).toBe(0);
    });
    const texts = Object.fromEntries(
      Object.entries(unzipped(result)).map(([name, bytes]) => [name, Buffer.from(bytes).toString()]),
    );
    expect(texts).toEqual({ ...parts, [wanted]: now });
    expect(openPackage(result).read(wanted)).toBe(now);
  });
});

/** As programs write that do not know the sizes beforehand. */
function streamed(parts: Readonly<Record<string, string>>): Uint8Array {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((_, piece) => pieces.push(piece));
  for (const [name, text] of Object.entries(parts)) {
    const part = new ZipDeflate(name);
    zip.add(part);
    part.push(strToU8(text), true);
  }
  zip.end();
  return joined(pieces);
}

describe("what a workbook says of itself", () => {
  test("sheets in their order, names with their sheet, tables, dates, strings", () => {
    const table =
      '<table xmlns="urn:x" name="T" displayName="Holes" ref="B2:C5" totalsRowCount="1"><tableColumns count="2"><tableColumn id="1" name="Callout"/><tableColumn id="2" name="a_x000a_b &amp; c"/></tableColumns></table>';
    const file = openPackage(
      smallWorkbook({
        sheets: { "Quote &amp; more": "", B: "" },
        sharedStrings: ["a", "b &lt; c"],
        definedNames:
          '<definedName name="rate">B!$A$1</definedName><definedName name="rate" localSheetId="1">2</definedName>',
        workbookPr: '<workbookPr date1904="1"/>',
        tables: [table],
      }),
    );
    const parts = readWorkbookParts(file);
    expect(parts.sheets).toEqual([
      { name: "Quote & more", id: "1", part: "xl/worksheets/sheet1.xml" },
      { name: "B", id: "2", part: "xl/worksheets/sheet2.xml" },
    ]);
    expect(parts.names).toEqual([
      { name: "rate", sheet: undefined, formula: "B!$A$1" },
      { name: "rate", sheet: 1, formula: "2" },
    ]);
    expect(parts.tables).toEqual([
      {
        name: "Holes",
        part: "xl/tables/table1.xml",
        sheet: 0,
        box: { top: 1, left: 1, bottom: 4, right: 2 },
        headerRows: 1,
        totalsRows: 1,
        columns: ["Callout", "a\nb & c"],
      },
    ]);
    expect(parts.from1904).toBe(true);
    expect(readSharedStrings(file.read(parts.sharedStrings!))).toEqual(["a", "b < c"]);
  });
});
