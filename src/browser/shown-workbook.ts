// browser: the workbook that the page shows. Opening a file puts another one in its place, and who had the interface
// to the first goes on with the new one.

import type { Model } from "@odoo/o-spreadsheet";
import { keepPrintSetup, type PrintSetups } from "../workbook/grid-print.ts";
import { GridWorkbook } from "../workbook/grid-workbook.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { withAdvice } from "./grid-messages.ts";
import { showResults } from "./results.ts";

declare const owl: typeof import("@odoo/owl");
declare const o_spreadsheet: typeof import("@odoo/o-spreadsheet");

export class ShownWorkbook {
  /** The same for every workbook that is shown. */
  readonly workbook: Workbook;
  private app: { destroy(): void } | undefined;
  private current: GridWorkbook | undefined;
  private shownModel: Model | undefined;
  private readonly listeners = new Set<() => void>();

  constructor(
    private readonly templates: string,
    private readonly say: (text: string) => void,
  ) {
    const follow = {
      get: (_: object, name: keyof Workbook) => {
        if (name === "onChange") return (listener: () => void) => this.listen(listener);
        return (...args: never[]) => (this.current![name] as (...args: never[]) => unknown)(...args);
      },
    };
    this.workbook = new Proxy({}, follow as ProxyHandler<object>) as Workbook;
  }

  get model(): Model {
    return this.shownModel!;
  }

  /** @param data what the grid makes its Model of, and keeps */
  async showData(data: object, prints: PrintSetups = []): Promise<void> {
    await this.show(new o_spreadsheet.Model(data as never), prints);
  }

  /** @param prints how sheets are printed, by their ids */
  async show(model: Model, prints: PrintSetups): Promise<void> {
    const { say } = this;
    for (const [sheetId, setup] of prints) keepPrintSetup(model, sheetId, setup);
    this.app?.destroy();
    const app = new owl.App(o_spreadsheet.Spreadsheet as any, {
      props: {
        model,
        colorScheme: window.matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light",
        notifyUser: ({ text }: { text: string }) => say(text),
        raiseError: (text: string, done?: () => void) => {
          say(withAdvice(text));
          done?.();
        },
        askConfirmation: (text: string, yes: () => void, no?: () => void) =>
          window.confirm(text) ? yes() : no?.(),
      },
      templates: this.templates,
    });
    this.app = app;
    this.shownModel = model;
    this.current = new GridWorkbook(model);
    this.current.onChange(() => {
      for (const listener of this.listeners) listener();
    });
    await app.mount(document.getElementById("grid")!);
    showResults(model);
    for (const listener of this.listeners) listener();
  }

  /** Calls back after the selection or a cell of whatever workbook is shown has changed. */
  listen(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
