// tests: archives that mean harm, made by changing sound ones byte by byte.

import { constants, deflateRawSync } from "node:zlib";
import { strToU8, zipSync } from "fflate";
import { partsOf, smallWorkbook } from "./package.ts";

export const sound = (): Uint8Array =>
  smallWorkbook({ sheets: { Sheet1: '<row r="1"><c r="A1"><f>REAM.RPM(15,10)</f><v>0</v></c></row>' } });

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Where the records of the table of contents start. */
function recordsOf(bytes: Uint8Array): number[] {
  const view = viewOf(bytes);
  const records: number[] = [];
  for (let at = view.getUint32(bytes.length - 6, true); view.getUint32(at, true) === 0x02014b50; ) {
    records.push(at);
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return records;
}

/** A copy in which `change` has set some bytes. */
function changed(
  bytes: Uint8Array,
  change: (view: DataView, records: number[], bytes: Uint8Array) => void,
): Uint8Array {
  const copy = bytes.slice();
  change(viewOf(copy), recordsOf(copy), copy);
  return copy;
}

/** A workbook with one part more, of so many zero bytes, packed a thousandfold. The same packed block is written over
 * and over, and no sum is taken: to pack them all would take many seconds, and none of these is ever unpacked whole. */
function withZeros(name: string, megabytes: number): Uint8Array {
  const zeros = new Uint8Array(2 ** 20);
  const block = deflateRawSync(zeros, { level: 9, finishFlush: constants.Z_FULL_FLUSH });
  const packed = Buffer.concat([...new Array(megabytes).fill(block), deflateRawSync(new Uint8Array())]);
  const archive = zipSync({ ...asBytes(), [name]: [packed, { level: 0 }] });
  return changed(archive, (view, records) => {
    const record = records.find((at) => nameAt(archive, at) === name)!;
    const local = view.getUint32(record + 42, true);
    for (const [at, method, size] of [
      [record, 10, 24],
      [local, 8, 22],
    ]) {
      view.setUint16(at + method, 8, true);
      view.setUint32(at + size, megabytes * 2 ** 20, true);
    }
  });
}

/** With a part of so many zero bytes that says what it is. */
const honestBomb = (megabytes: number): Uint8Array => withZeros("xl/media/image1.png", megabytes);

/** The first sheet unpacks to far more than the archive says. */
export function lyingBomb(megabytes: number): Uint8Array {
  const sheet = "xl/worksheets/sheet1.xml";
  return changed(withZeros(sheet, megabytes), (view, records, bytes) => {
    const record = records.find((at) => nameAt(bytes, at) === sheet)!;
    view.setUint32(record + 24, 1000, true);
  });
}

/** Parts that lie over one another, so that few bytes are many. */
const overlapping = (): Uint8Array =>
  changed(zipSync({ ...asBytes(), "b.bin": [strToU8("b"), { level: 0 }] }), (view, records) => {
    // The packed bytes of the first part are said to reach over the second.
    const first = records[0];
    view.setUint32(first + 20, view.getUint32(first + 20, true) + 40, true);
  });

const asBytes = () =>
  Object.fromEntries(
    Object.entries(partsOf({ sheets: { Sheet1: "" } })).map(([name, text]) => [name, strToU8(text)]),
  );

const nameAt = (bytes: Uint8Array, record: number): string =>
  new TextDecoder().decode(
    bytes.subarray(record + 46, record + 46 + viewOf(bytes).getUint16(record + 28, true)),
  );

/** A compound file with a stream of that name, as a workbook behind a password is one. */
export function compoundFile(stream: string): Uint8Array {
  const bytes = new Uint8Array(4096);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...stream].forEach((letter, i) => {
    bytes[1024 + 2 * i] = letter.charCodeAt(0);
  });
  return bytes;
}

/** Every hostile file, with a part of the sentence that refuses it. */
export const hostileWorkbooks = (): Record<string, { bytes: Uint8Array; says: string }> => ({
  "a zip bomb of 600 MiB": { bytes: honestBomb(600), says: "would unpack to" },
  "a part packed too well": { bytes: honestBomb(8), says: "packed like no workbook" },
  "a zip bomb that lies": { bytes: lyingBomb(100), says: "unpacks to more than it says" },
  "parts over one another": { bytes: overlapping(), says: "lies over another part" },
  "a path out of the file": {
    bytes: zipSync({ ...asBytes(), "../../evil.txt": strToU8("x") }),
    says: "points outside it",
  },
  "a path from the root": {
    bytes: zipSync({ ...asBytes(), "/etc/evil": strToU8("x") }),
    says: "points outside it",
  },
  "a path out of the file with backslashes": {
    bytes: zipSync({ ...asBytes(), "xl\\..\\..\\evil": strToU8("x") }),
    says: "points outside it",
  },
  "a part that is there twice": {
    bytes: zipSync({ ...asBytes(), "XL/Workbook.xml": strToU8("x") }),
    says: "twice",
  },
  "XML with entities": {
    bytes: smallWorkbook({
      sheets: { Sheet1: "" },
      more: {
        "xl/worksheets/sheet1.xml":
          '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]><worksheet><sheetData><row r="1"><c r="A1"><f>&b;</f></c></row></sheetData></worksheet>',
      },
    }),
    says: "declares a document type",
  },
  "XML with an entity that nobody declared": {
    bytes: smallWorkbook({ sheets: { Sheet1: '<row r="1"><c r="A1"><f>&file;</f></c></row>' } }),
    says: "an entity of its own",
  },
  "a file cut off": { bytes: sound().slice(0, -300), says: "damaged or cut off" },
  "a file cut in the middle of a part": {
    bytes: changed(sound(), (view, records, bytes) => {
      const start = view.getUint32(records.at(-1)! + 42, true);
      bytes.fill(0, start + 80, start + 110);
    }),
    says: "damaged",
  },
  "an encrypted archive": {
    bytes: changed(sound(), (view, records) => {
      for (const record of records) view.setUint16(record + 8, 1, true);
    }),
    says: "encrypted",
  },
  "a workbook behind a password": { bytes: compoundFile("EncryptedPackage"), says: "locked with a password" },
  "an old workbook": { bytes: compoundFile("Workbook"), says: "an older kind" },
  "a picture": { bytes: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2, 3), says: "no .xlsx workbook" },
  "a text": { bytes: strToU8("part,speed\n1,2\n"), says: "no .xlsx workbook" },
  "an empty file": { bytes: new Uint8Array(), says: "empty" },
  "another archive": { bytes: zipSync({ "a.txt": strToU8("a") }), says: "another archive" },
  "an OpenDocument file": {
    bytes: zipSync({ mimetype: strToU8("application/vnd.oasis.opendocument.spreadsheet") }),
    says: "OpenDocument",
  },
  "a binary workbook": { bytes: zipSync({ "xl/workbook.bin": strToU8("x") }), says: ".xlsb" },
  "a text document": {
    bytes: smallWorkbook({ sheets: { A: "" }, more: { "xl/workbook.xml": "<document/>" } }),
    says: "no workbook but another document",
  },
});
