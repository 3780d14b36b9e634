// build: files of other packages that go into dist/ as they come, each with its license beside it.

import { join } from "node:path";
import { projectFolder, sourceFolder } from "./paths.ts";

const modules = join(projectFolder, "node_modules");

/** Where each file comes from and where in dist/ it goes. They are not minified: they are minified already. */
export const vendored = [
  ["@odoo/owl/dist/owl.iife.min.js", "vendor/owl/owl.iife.min.js"],
  ["@odoo/owl/LICENSE", "vendor/owl/LICENSE.txt"],
  ["@odoo/o-spreadsheet/dist/o_spreadsheet.min.iife.js", "vendor/o-spreadsheet/o_spreadsheet.min.iife.js"],
  ["@odoo/o-spreadsheet/dist/o_spreadsheet.xml", "vendor/o-spreadsheet/o_spreadsheet.xml"],
  ["@odoo/o-spreadsheet/dist/o_spreadsheet.css", "vendor/o-spreadsheet/o_spreadsheet.css"],
  ["@odoo/o-spreadsheet/LICENSE", "vendor/o-spreadsheet/LICENSE.txt"],
  ["bootstrap/dist/css/bootstrap.min.css", "vendor/bootstrap/bootstrap.min.css"],
  ["bootstrap/LICENSE", "vendor/bootstrap/LICENSE.txt"],
  ["font-awesome/css/font-awesome.min.css", "vendor/font-awesome/css/font-awesome.min.css"],
  ["font-awesome/fonts/fontawesome-webfont.woff2", "vendor/font-awesome/fonts/fontawesome-webfont.woff2"],
].map(([from, to]) => ({ from: join(modules, from), to: to, info: { minimized: true } }));

/** Packages that are inside a file above, by the package that the file is of. */
export const embedded: Readonly<Record<string, readonly string[]>> = {
  "@odoo/o-spreadsheet": ["rbush", "quickselect"],
};

/** Texts of licenses that packages do not carry. */
export const licensesHere: Readonly<Record<string, string>> = {
  "font-awesome": join(sourceFolder, "browser", "font-awesome-license.txt"),
  saxes: join(sourceFolder, "browser", "saxes-license.txt"),
};
