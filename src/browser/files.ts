// browser: opening a workbook from a file, by button or by drop, and saving it to one.

import type { Metadata } from "../build/metadata.ts";
import { Refusal } from "../workbook/workbook.ts";
import { storedNames } from "../workbook/xlsx/stored-names.ts";
import {
  type GridLibrary,
  LARGEST_FILE,
  type OpenedWorkbook,
  openWorkbook,
} from "../workbook/xlsx-grid/open-file.ts";
import { saveWorkbook } from "../workbook/xlsx-grid/save-file.ts";
import { uncomputedFormulas } from "../workbook/xlsx-grid/uncomputed.ts";
import { startDrop } from "./drop.ts";
import { confirmLosses, showFileNotes } from "./file-notes.ts";
import type { ShownWorkbook } from "./shown-workbook.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

const button = (id: string) => document.getElementById(id) as HTMLButtonElement;

/** Two frames, so that what was said is seen before the page is busy. */
const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));

export function startFiles(
  shown: ShownWorkbook,
  library: GridLibrary,
  { functions }: Metadata,
  say: (text: string) => void,
): void {
  const names = storedNames(functions.map(({ name }) => name));
  const input = document.getElementById("file-input") as HTMLInputElement;
  const buttons = ["open-file", "save-file", "save-values"].map(button);
  let opened: OpenedWorkbook | undefined;
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
      name = file.name.replace(/(?:\.\w{2,5})?$/, ".xlsx");
      kept = revision(shown);
      return undefined;
    } catch (error) {
      if (error instanceof Refusal) return error.message.replace(/\.$/, "");
      console.error(error);
      return "it holds something that the browser workbook cannot show";
    }
  };

  const save = async (valuesOnly: boolean): Promise<void> => {
    if (opened && !(await confirmLosses(opened.losses))) return say("Not saved.");
    say("Saving…");
    await drawn();
    try {
      const saved = await saveWorkbook(shown.model, library, names, { valuesOnly, opened });
      const savedName = valuesOnly ? name.replace(/\.xlsx$/, " (values).xlsx") : name;
      download(savedName, saved.bytes);
      if (!valuesOnly) kept = revision(shown);
      const own = saved.asValues === 0 ? "" : `; ${saved.asValues} that no other program reads, as values`;
      say(`Saved ${savedName}: formulas ${saved.formulas}${own}`);
    } catch (error) {
      console.error(error);
      say(`The workbook was not saved: ${error instanceof Error ? error.message : error}`);
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

const revision = ({ model }: ShownWorkbook): string => String((model as any).session.getRevisionId());

function download(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
