// browser: opening a workbook from a file, by button or by drop, and saving it to one.

import type { Metadata } from "../build/metadata.ts";
import type { WorkbookReport } from "../fill/report.ts";
import { withWorksheetFunctions } from "../fill/worksheet-functions.ts";
import { Refusal } from "../workbook/workbook.ts";
import { openPackage } from "../workbook/xlsx/package.ts";
import { storedNames } from "../workbook/xlsx/stored-names.ts";
import { changesSince, type Snapshot, snapshotOf } from "../workbook/xlsx-grid/changes.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import { LARGEST_FILE, type OpenedWorkbook, openWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { saveWorkbook } from "../workbook/xlsx-grid/save-file.ts";
import { TypedCells } from "../workbook/xlsx-grid/typed-cells.ts";
import { uncomputedFormulas } from "../workbook/xlsx-grid/uncomputed.ts";
import { startDrop } from "./drop.ts";
import { confirmLosses, showFileNotes } from "./file-notes.ts";
import type { Call } from "./register-functions.ts";
import { saveIntoFile } from "./save-into-file.ts";
import type { ShownWorkbook } from "./shown-workbook.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

const button = (id: string) => document.getElementById(id) as HTMLButtonElement;

/** Two frames, so that what was said is seen before the page is busy. */
const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));

export function startFiles(
  shown: ShownWorkbook,
  library: GridLibrary,
  metadata: Metadata,
  calls: ReadonlyMap<string, Call>,
  say: (text: string) => void,
): void {
  const names = storedNames(metadata.functions.map(({ name }) => name));
  const functions = withWorksheetFunctions(metadata, calls);
  const input = document.getElementById("file-input") as HTMLInputElement;
  const buttons = ["open-file", "save-file", "save-values"].map(button);
  let opened: OpenedWorkbook | undefined;
  /** The workbook as it came from its file. */
  let before: Snapshot | undefined;
  let name = "quote.xlsx";
  /** How far the workbook had come when it was last opened or saved. */
  let kept = revision(shown);

  const open = async (file: File): Promise<void> => {
    const why = await whyNotOpened(file);
    say(why === undefined ? `${file.name} is open` : `${file.name} was not opened: ${why}.`);
    if (why !== undefined) return;
    const uncomputed = uncomputedFormulas(shown.model);
    showFileNotes(file.name, opened!, uncomputed);
  };

  /** Opens the file, or leaves everything as it is and tells why. */
  const whyNotOpened = async (file: File): Promise<string | undefined> => {
    if (file.size > LARGEST_FILE) return "it is too large for a browser: fill it with npm run fill instead";
    say(`Opening ${file.name}…`);
    await drawn();
    try {
      const read = openWorkbook(new Uint8Array(await file.arrayBuffer()), library, names);
      const question = `Open ${file.name}? Changes of this workbook that are not saved are lost.`;
      if (revision(shown) !== kept && !window.confirm(question)) return "this workbook stays";
      await shown.show(read.data);
      opened = read;
      before = snapshotOf(shown.model);
      name = /\.xls[xm]$/i.test(file.name) ? file.name : file.name.replace(/(?:\.\w{2,5})?$/, ".xlsx");
      kept = revision(shown);
      return undefined;
    } catch (error) {
      if (error instanceof Refusal) return error.message.replace(/\.$/, "");
      console.error(error);
      return "it holds something that the browser workbook cannot show";
    }
  };

  /** Into the file that was opened, if its cells alone were changed; else as a new file. */
  const savedBytes = async (valuesOnly: boolean): Promise<{ bytes: Bytes; told: string } | undefined> => {
    const changes = opened && before && changesSince(before, shown.model);
    if (opened && changes && !changes.isMore) {
      const typed = new TypedCells(shown.model, library, names, opened.parts.from1904);
      const { bytes, report, changed } = saveIntoFile(opened, changes, typed, functions, valuesOnly);
      if (!valuesOnly) {
        opened = { ...opened, file: openPackage(bytes) };
        before = snapshotOf(shown.model);
      }
      return { bytes, told: toldOf(changed, report) };
    }
    if (opened && !(await confirmLosses(opened.losses))) return undefined;
    // A new file has no macros.
    name = name.replace(/m$/i, "x");
    const saved = await saveWorkbook(shown.model, library, names, { valuesOnly, opened });
    const own = saved.asValues === 0 ? "" : `, ${saved.asValues} as values that no other program reads`;
    return { bytes: saved.bytes, told: `formulas ${saved.formulas}${own}` };
  };

  const save = async (valuesOnly: boolean): Promise<void> => {
    say("Saving…");
    await drawn();
    try {
      const saved = await savedBytes(valuesOnly);
      if (!saved) return say("Not saved.");
      const savedName = valuesOnly ? name.replace(/\.(?=\w+$)/, " (values).") : name;
      download(savedName, saved.bytes);
      if (!valuesOnly) kept = revision(shown);
      say(`Saved ${savedName}: ${saved.told}${valuesOnly ? "" : hintOf(shown)}`);
    } catch (error) {
      console.error(error);
      say(`The workbook was not saved: ${error instanceof Refusal ? error.message : "there is a fault"}`);
    }
  };

  let isBusy = false;
  const alone = async (work: () => Promise<void>): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    try {
      await work();
    } finally {
      isBusy = false;
    }
  };
  button("open-file").addEventListener("click", () => input.click());
  input.addEventListener("change", () => {
    const [file] = Array.from(input.files ?? []);
    input.value = "";
    if (file) void alone(() => open(file));
  });
  button("save-file").addEventListener("click", () => void alone(() => save(false)));
  button("save-values").addEventListener("click", () => void alone(() => save(true)));
  startDrop((files) => {
    if (files.length > 1) say("Drop one file at a time.");
    else if (files.length === 1) void alone(() => open(files[0]));
  });
  for (const one of buttons) one.disabled = false;
}

type Bytes = Uint8Array<ArrayBuffer>;

const count = (number: number, one: string) =>
  `${number.toLocaleString("en-US")} ${one}${number === 1 ? "" : "s"}`;

function toldOf(changed: number, { sheets }: WorkbookReport): string {
  const sum = (key: "computed" | "kept") => sheets.reduce((total, sheet) => total + sheet[key], 0);
  const told = [`${count(changed, "cell")} changed`, `${count(sum("computed"), "formula")} computed`];
  if (sum("kept") > 0) told.push(`${count(sum("kept"), "formula")} left for Excel to compute`);
  return told.join(", ");
}

/** What a program without the add-in shows. */
function hintOf({ model }: ShownWorkbook): string {
  const hasOurs = model.getters
    .getSheetIds()
    .some((sheetId) =>
      model.getters
        .getEvaluatedCellsPositions(sheetId)
        .some((position) => /\bREAM\./i.test(model.getters.getCellText(position, { showFormula: true }))),
    );
  return hasOurs
    ? '. A program without the add-in shows #NAME? for REAM formulas: "Save values only" is for that.'
    : "";
}

const revision = ({ model }: ShownWorkbook): string => String((model as any).session.getRevisionId());

function download(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
