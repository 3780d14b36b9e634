// browser: opening a workbook from a file, by button or by drop, and saving it to one.

import type { Model } from "@odoo/o-spreadsheet";
import type { Metadata } from "../build/metadata.ts";
import type { Functions } from "../fill/formula/evaluate.ts";
import { withWorksheetFunctions } from "../fill/worksheet-functions.ts";
import { Refusal } from "../workbook/workbook.ts";
import { openPackage } from "../workbook/xlsx/package.ts";
import { refuseSheetNames } from "../workbook/xlsx/sheet-names.ts";
import { type StoredNames, storedNames } from "../workbook/xlsx/stored-names.ts";
import { readWorkbookParts } from "../workbook/xlsx/workbook-parts.ts";
import { ExportedTables, tablesLeftOut } from "../workbook/xlsx-grid/exported-tables.ts";
import type { GridLibrary } from "../workbook/xlsx-grid/library.ts";
import { LARGEST_FILE, type OpenedWorkbook, openWorkbook } from "../workbook/xlsx-grid/open-file.ts";
import { saveWorkbook } from "../workbook/xlsx-grid/save-file.ts";
import { keepTables, type Snapshot, snapshotOf } from "../workbook/xlsx-grid/snapshot.ts";
import { uncomputedFormulas } from "../workbook/xlsx-grid/uncomputed.ts";
import { clearDraft, type Draft, keepDraft, offerDraft, readDraft, shownAs } from "./draft.ts";
import { startDrop } from "./drop.ts";
import { asValuesTold, confirmLosses, hideFileNotes, hintOf, showFileNotes, toldOf } from "./file-notes.ts";
import { type FileValues, fileValues, ShownFileValues, valuesIn } from "./file-values.ts";
import type { Call } from "./register-functions.ts";
import { type SavedChanges, saveChanges } from "./save-changes.ts";
import type { ShownWorkbook } from "./shown-workbook.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Two frames, so that what was said is seen before the page is busy. */
const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));

/** A file, and the workbook that it was shown as. */
interface Origin {
  readonly opened: OpenedWorkbook;
  readonly before: Snapshot;
}

/** The workbook that is shown, as a file: where it came from, and how far it has come since. */
class WorkbookFile {
  private opened: OpenedWorkbook | undefined;
  /** The workbook as it came from its file. */
  private before: Snapshot | undefined;
  /** The file as it was before it was saved for the first time: what is undone past a save is written into this one. */
  private first: Origin | undefined;
  private name = "quote.xlsx";
  /** How far the workbook had come when it was last opened or saved. */
  private saved: string;
  private readonly names: StoredNames;
  private readonly functions: Functions;
  private readonly fileValues: ShownFileValues;

  constructor(
    private readonly shown: ShownWorkbook,
    private readonly library: GridLibrary,
    metadata: Metadata,
    calls: ReadonlyMap<string, Call>,
    private readonly say: (text: string) => void,
  ) {
    this.names = storedNames(metadata.functions.map(({ name }) => name));
    this.functions = withWorksheetFunctions(metadata, calls);
    this.fileValues = new ShownFileValues(library, this.functions);
    this.saved = this.revision;
  }

  private get revision(): string {
    return String((this.shown.model as any).session.getRevisionId());
  }

  get isChanged(): boolean {
    return this.revision !== this.saved;
  }

  async open(file: File): Promise<void> {
    const why = await this.whyNotOpened(file);
    this.say(why === undefined ? `${file.name} is open` : `${file.name} was not opened: ${why}.`);
    if (why === undefined) this.showNotes();
  }

  /** Shows the values of the file and what there is to know of it; `pristine` has its cells, if they were changed. */
  private showNotes(values?: FileValues, pristine?: Model): void {
    const { model } = this.shown;
    const opened = this.opened!;
    const own = values ?? fileValues(opened, this.functions);
    const differing = this.fileValues.show(model, opened, this.before!, own, pristine);
    showFileNotes(this.name, opened, uncomputedFormulas(model), differing);
  }

  /** Opens the file, or leaves everything as it is and tells why. */
  private async whyNotOpened(file: File): Promise<string | undefined> {
    if (file.size > LARGEST_FILE) return "it is too large for a browser: fill it with npm run fill instead";
    this.say(`Opening ${file.name}…`);
    await drawn();
    try {
      const read = openWorkbook(new Uint8Array(await file.arrayBuffer()), this.library, this.names);
      if (!this.mayGo(`Open ${file.name}?`)) return "this workbook stays";
      await this.shown.show(read.model, read.prints);
      keepTables(this.shown.model);
      const name = /\.xls[xm]$/i.test(file.name) ? file.name : file.name.replace(/(?:\.\w{2,5})?$/, ".xlsx");
      this.begin(name, read, snapshotOf(this.shown.model));
      return undefined;
    } catch (error) {
      if (error instanceof Refusal) return error.message.replace(/\.$/, "");
      console.error(error);
      return "it holds something that the browser workbook cannot show";
    }
  }

  private mayGo(question: string): boolean {
    return (
      !this.isChanged || window.confirm(`${question} Changes of this workbook that are not saved are lost.`)
    );
  }

  private begin(name: string, opened: OpenedWorkbook | undefined, before: Snapshot | undefined): void {
    this.name = name;
    this.opened = opened;
    this.before = before;
    this.first = opened && before && { opened, before };
    this.saved = this.revision;
    void clearDraft();
  }

  async startNew(): Promise<void> {
    if (!this.mayGo("Start an empty workbook?")) return;
    await this.shown.showData({ sheets: [{ id: "sheet-1", name: "Sheet1", colNumber: 26, rowNumber: 100 }] });
    this.begin("workbook.xlsx", undefined, undefined);
    hideFileNotes();
    this.say("An empty workbook");
  }

  /** Into the file that was opened, if it can take what was changed; else as a new file. */
  private async bytes(valuesOnly: boolean): Promise<{ bytes: Bytes; told: string } | undefined> {
    const { opened, library, names } = this;
    const { model } = this.shown;
    refuseSheetNames(model.getters.getSheetIds().map((id) => model.getters.getSheetName(id)));
    const into = await this.saveInto(valuesOnly);
    if (opened && into) {
      if (!(await confirmLosses(into.losses))) return undefined;
      const { bytes, report, changed, asValues, kept, places, valuesInFile } = into;
      if (!valuesOnly) {
        const file = openPackage(bytes);
        this.opened = { ...opened, file, bytes, parts: readWorkbookParts(file), places, valuesInFile };
        this.before = snapshotOf(model);
        this.showNotes(valuesIn(this.opened, kept));
      }
      return { bytes, told: toldOf(changed, into.added, asValues, report) };
    }
    const losses = [...(opened?.losses ?? []), ...tablesLeftOut(new ExportedTables(model).leftOut)];
    if (!(await confirmLosses(losses))) return undefined;
    // A new file has no macros.
    this.name = this.name.replace(/m$/i, "x");
    const saved = await saveWorkbook(model, library, names, { valuesOnly, opened });
    const own = saved.asValues === 0 ? "" : `, ${asValuesTold(saved.asValues)}`;
    return { bytes: saved.bytes, told: `formulas ${saved.formulas}${own}` };
  }

  private async saveInto(valuesOnly: boolean): Promise<SavedChanges | undefined> {
    const { opened, before, first, library, names, functions } = this;
    const { model } = this.shown;
    if (!opened || !before) return undefined;
    const saving = { model, library, names, functions, valuesOnly };
    const saved = await saveChanges(opened, before, saving);
    if (saved || !first || first.opened === opened) return saved;
    return saveChanges(first.opened, first.before, saving);
  }

  async save(valuesOnly: boolean): Promise<void> {
    this.say("Saving…");
    await drawn();
    try {
      const saved = await this.bytes(valuesOnly);
      if (!saved) return this.say("Not saved.");
      const name = valuesOnly ? this.name.replace(/\.(?=\w+$)/, " (values).") : this.name;
      download(name, saved.bytes);
      if (!valuesOnly) {
        this.saved = this.revision;
        void clearDraft();
      }
      this.say(`Saved ${name}: ${saved.told}${valuesOnly ? "" : hintOf(this.shown.model)}`);
    } catch (error) {
      console.error(error);
      this.say(
        `The workbook was not saved: ${error instanceof Refusal ? error.message : "an internal error stopped it"}`,
      );
    }
  }

  keepDraft(): void {
    if (!this.isChanged) return;
    const { opened, before, name } = this;
    const { model } = this.shown;
    const origin = opened &&
      before && {
        bytes: opened.bytes,
        before,
        valuesInFile: [...opened.valuesInFile],
      };
    void keepDraft({ name, time: Date.now(), ...shownAs(model), opened: origin });
  }

  async restore({ name, data, prints, opened: origin }: Draft): Promise<void> {
    const read = origin && openWorkbook(origin.bytes, this.library, this.names);
    await this.shown.showData(data, prints);
    this.name = name;
    this.opened = read && { ...read, model: this.shown.model, valuesInFile: new Map(origin.valuesInFile) };
    if (read) keepTables(this.shown.model);
    this.before = origin?.before;
    this.first = this.opened && this.before && { opened: this.opened, before: this.before };
    this.saved = "a draft";
    if (read) this.showNotes(undefined, read.model);
    this.say(`${name} is as you left it`);
  }
}

const DRAFT_AFTER = 1000;

export async function startFiles(
  shown: ShownWorkbook,
  library: GridLibrary,
  metadata: Metadata,
  calls: ReadonlyMap<string, Call>,
  say: (text: string) => void,
): Promise<void> {
  const file = new WorkbookFile(shown, library, metadata, calls, say);
  const input = document.getElementById("file-input") as HTMLInputElement;
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
  const actions: Readonly<Record<string, () => unknown>> = {
    "new-file": () => alone(() => file.startNew()),
    "open-file": () => input.click(),
    "save-file": () => alone(() => file.save(false)),
    "save-values": () => alone(() => file.save(true)),
  };
  input.addEventListener("change", () => {
    const [chosen] = Array.from(input.files ?? []);
    input.value = "";
    if (chosen) void alone(() => file.open(chosen));
  });
  startDrop((files) => {
    if (files.length > 1) say("Drop one file at a time.");
    else if (files.length === 1) void alone(() => file.open(files[0]));
  });
  window.addEventListener("beforeunload", (event) => {
    if (file.isChanged) event.preventDefault();
  });
  const draft = await readDraft();
  const keepSoon = later(() => file.keepDraft(), DRAFT_AFTER);
  shown.listen(() => file.isChanged && keepSoon());
  if (draft)
    offerDraft(draft, (isWanted) => void (isWanted ? alone(() => file.restore(draft)) : clearDraft()));
  for (const [id, action] of Object.entries(actions)) {
    const button = document.getElementById(id) as HTMLButtonElement;
    button.addEventListener("click", action);
    button.disabled = false;
  }
}

/** Once, a while after the last of many calls. */
function later(work: () => void, wait: number): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(work, wait);
  };
}

type Bytes = Uint8Array<ArrayBuffer>;

function download(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
