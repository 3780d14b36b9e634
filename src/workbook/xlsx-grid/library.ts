// workbook: what of the grid's library is used to open and to save files.

export type GridLibrary = Pick<
  typeof import("@odoo/o-spreadsheet"),
  "Model" | "CompiledFormula" | "registries" | "helpers" | "links" | "constants"
>;
