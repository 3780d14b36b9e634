// workbook: unpacks single parts of a zip archive, and writes an archive in which some parts are new and all else is
// the same bytes in the same order.

import { deflateSync, Inflate, inflateSync } from "fflate";
import { Refusal } from "../workbook.ts";
import { SIZES_FOLLOW, shortened, type ZipDirectory, type ZipEntry } from "./zip-directory.ts";

const STORED = 0;
const DEFLATED = 8;
/** How much is unpacked at a time: at most a thousandfold of it is made before its size is looked at. */
const STEP = 16 * 1024;

const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  return crc;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) crc = crcTable[(crc ^ bytes[i]) & 0xff] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** The bytes of a part, never more than its entry says. */
export function unpack(archive: Uint8Array, entry: ZipEntry): Uint8Array {
  const packed = archive.subarray(entry.dataStart, entry.dataStart + entry.packedSize);
  const bytes = entry.method === STORED ? packed : inflated(packed, entry);
  if (bytes.length !== entry.size || crc32(bytes) !== entry.crc)
    throw new Refusal(`the file is damaged: ${shortened(entry.name)} does not unpack to what was packed`);
  return bytes;
}

function inflated(packed: Uint8Array, entry: ZipEntry): Uint8Array {
  if (entry.method !== DEFLATED)
    throw new Refusal(`${shortened(entry.name)} is packed in a way that no workbook is`);
  try {
    // Nearly every part.
    if (packed.length > 0 && packed.length <= STEP) {
      const bytes = inflateSync(packed, { out: new Uint8Array(entry.size + 1) });
      if (bytes.length > entry.size) throw new TooMuch();
      return bytes;
    }
    return inflatedInSteps(packed, entry.size);
  } catch (error) {
    const why =
      error instanceof TooMuch || error instanceof RangeError
        ? "unpacks to more than it says"
        : "cannot be unpacked";
    throw new Refusal(`the file is damaged: ${shortened(entry.name)} ${why}`);
  }
}

/** More was unpacked than an entry says. */
class TooMuch extends Error {}

function inflatedInSteps(packed: Uint8Array, size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let length = 0;
  const inflate = new Inflate((piece) => {
    if (length + piece.length > size) throw new TooMuch();
    bytes.set(piece, length);
    length += piece.length;
  });
  for (let at = 0; at < packed.length; at += STEP)
    inflate.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  return bytes.subarray(0, length);
}

/**
 * The archive with new bytes for some parts, by name, and with parts that it does not have yet, in pieces to be written
 * one after the other.
 */
export function rewrittenArchive(
  archive: Uint8Array,
  directory: ZipDirectory,
  parts: ReadonlyMap<string, Uint8Array>,
  gone: ReadonlySet<ZipEntry>,
): Uint8Array[] {
  const pieces: Uint8Array[] = [];
  const moved = new Map<ZipEntry, { start: number; packed?: Uint8Array; bytes?: Uint8Array }>();
  let written = 0;
  let copied = 0;
  const put = (piece: Uint8Array) => {
    pieces.push(piece);
    written += piece.length;
  };
  for (const entry of [...directory.entries].sort((a, b) => a.start - b.start)) {
    put(archive.subarray(copied, entry.start));
    copied = entry.start;
    if (gone.has(entry)) {
      copied = endOfEntry(archive, entry);
      continue;
    }
    const bytes = parts.get(entry.name);
    if (!bytes) {
      moved.set(entry, { start: written });
      continue;
    }
    const packed = entry.method === STORED ? bytes : deflateSync(bytes);
    moved.set(entry, { start: written, packed, bytes });
    put(localHeader(archive.slice(entry.start, entry.dataStart), packed, bytes));
    put(packed);
    copied = endOfEntry(archive, entry);
  }
  put(archive.subarray(copied, directory.start));
  const known = new Set(directory.entries.map(({ name }) => name));
  const added = [...parts].filter(([name]) => !known.has(name));
  const records = added.map(([name, bytes]) => {
    const packed = deflateSync(bytes);
    const record = newRecord(name, packed, bytes, written);
    put(newHeader(record, name));
    put(packed);
    return record;
  });
  const start = written;
  let after = directory.start;
  for (const entry of directory.entries) {
    after = entry.record.end;
    if (gone.has(entry)) continue;
    const record = archive.slice(entry.record.start, entry.record.end);
    const { packed, bytes, start: place } = moved.get(entry)!;
    const view = new DataView(record.buffer);
    view.setUint32(42, place, true);
    if (packed && bytes) {
      view.setUint16(8, entry.flags & ~SIZES_FOLLOW, true);
      setSizes(view, 16, packed, bytes);
    }
    put(record);
  }
  for (const record of records) put(record);
  const length = written - start;
  const end = archive.slice(after);
  const view = new DataView(end.buffer);
  const at = directory.endRecord - after;
  view.setUint32(at + 16, start, true);
  if (added.length + gone.size > 0) {
    const count = directory.entries.length + added.length - gone.size;
    view.setUint16(at + 8, count, true);
    view.setUint16(at + 10, count, true);
    view.setUint32(at + 12, length, true);
  }
  put(end);
  return pieces;
}

const RECORD_SIZE = 46;
const HEADER_SIZE = 30;
const VERSION = 20;
/** Names are in UTF-8. */
const UTF8 = 0x800;

/** The record of a new part in the table of contents. */
function newRecord(name: string, packed: Uint8Array, bytes: Uint8Array, start: number): Uint8Array {
  const encoded = new TextEncoder().encode(name);
  const record = new Uint8Array(RECORD_SIZE + encoded.length);
  const view = new DataView(record.buffer);
  view.setUint32(0, 0x02014b50, true);
  view.setUint16(4, VERSION, true);
  view.setUint16(6, VERSION, true);
  view.setUint16(8, UTF8, true);
  view.setUint16(10, DEFLATED, true);
  // The first of January 1980, as of no other day.
  view.setUint16(14, 0x21, true);
  setSizes(view, 16, packed, bytes);
  view.setUint16(28, encoded.length, true);
  view.setUint32(42, start, true);
  record.set(encoded, RECORD_SIZE);
  return record;
}

/** What stands before its bytes: of the record, the same from its second version on. */
function newHeader(record: Uint8Array, name: string): Uint8Array {
  const length = new TextEncoder().encode(name).length;
  const header = new Uint8Array(HEADER_SIZE + length);
  new DataView(header.buffer).setUint32(0, 0x04034b50, true);
  header.set(record.subarray(6, 32), 4);
  header.set(record.subarray(RECORD_SIZE), HEADER_SIZE);
  return header;
}

function localHeader(header: Uint8Array, packed: Uint8Array, bytes: Uint8Array): Uint8Array {
  const view = new DataView(header.buffer);
  view.setUint16(6, view.getUint16(6, true) & ~SIZES_FOLLOW, true);
  setSizes(view, 14, packed, bytes);
  return header;
}

function setSizes(view: DataView, at: number, packed: Uint8Array, bytes: Uint8Array): void {
  view.setUint32(at, crc32(bytes), true);
  view.setUint32(at + 4, packed.length, true);
  view.setUint32(at + 8, bytes.length, true);
}

/** After its data, and after the sizes that follow them if they do. */
function endOfEntry(archive: Uint8Array, entry: ZipEntry): number {
  const end = entry.dataStart + entry.packedSize;
  if (!(entry.flags & SIZES_FOLLOW)) return end;
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const marked = end + 4 <= archive.length && view.getUint32(end, true) === 0x08074b50;
  return end + (marked ? 16 : 12);
}
