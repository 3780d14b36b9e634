// tests: the API set of Excel that a member of office.js came with, as Microsoft's types say, and the set that the
// manifest asks for.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { manifestFolder, projectFolder } from "../../src/build/paths.ts";

const types = readFileSync(join(projectFolder, "node_modules", "@types", "office-js", "index.d.ts"), "utf8");
const excel = types.slice(types.indexOf("declare namespace Excel {"));

/** "1.9" for "Range.GetTables", the name as it goes over the wire. */
export function apiSetOf(member: string): string {
  const [type, wire] = member.split(".");
  const name = wire.charAt(0).toLowerCase() + wire.slice(1);
  const start = excel.search(new RegExp(`\\n {4}class ${type}(?:<T>)? extends `));
  const body = excel.slice(start, excel.indexOf("\n    }", start));
  const at = body.search(new RegExp(`\\n {8}(?:readonly )?${name}[(:?]`));
  if (start < 0 || at < 0) throw new Error(`Microsoft's types have no ${type}.${name}`);
  const comment = body.slice(body.lastIndexOf("/**", at), at);
  // A property may have come for reading first.
  const [, set] = /\[Api set: ExcelApi (\d+\.\d+)/.exec(comment) ?? [];
  if (!set) throw new Error(`Microsoft's types give no API set for ${type}.${name}`);
  return /for get, (\d+\.\d+) for set/.exec(comment)?.[1] ?? set;
}

const manifest = readFileSync(join(manifestFolder, "manifest.xml"), "utf8");
export const askedFor = /<Set Name="ExcelApi" MinVersion="([\d.]+)"/.exec(manifest)?.[1] ?? "1.1";
