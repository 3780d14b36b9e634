// taskpane: what every view of the pane is given: the workbook, the help, and one way to run an action and to tell what
// came of it.

import { Problem } from "../calc/problem.ts";
import { Refusal, type Workbook } from "../workbook/workbook.ts";
import { byId } from "./dom.ts";
import type { Help } from "./help.ts";

export interface PaneContext {
  readonly workbook: Workbook;
  /** What is known of the functions; rejects where it could not be loaded, and may be asked again. */
  readonly help: () => Promise<Help>;
  /** Tells the person something, in the line that a screen reader reads out. */
  say(text: string): void;
  /** Runs an action, one at a time. What it returns is told; so is why it was refused. */
  run(action: () => Promise<string | undefined>): Promise<void>;
  /** Shows the cautions before the first use of speeds; false if the person leaves it. */
  readCautions(): Promise<boolean>;
}

export function paneContext(
  workbook: Workbook,
  help: () => Promise<Help>,
  readCautions: () => Promise<boolean>,
): PaneContext {
  const pane = byId("pane");
  let isBusy = false;
  const tell = (text: string, tone: "done" | "refused") => {
    const status = byId("pane-status");
    // The same words twice are told twice only if the line was empty between.
    status.textContent = "";
    status.dataset.tone = tone;
    requestAnimationFrame(() => {
      status.textContent = text;
    });
  };
  return {
    workbook,
    help,
    readCautions,
    say: (text) => tell(text, "done"),
    async run(action) {
      if (isBusy) return;
      isBusy = true;
      pane.setAttribute("aria-busy", "true");
      try {
        const told = await action();
        if (told !== undefined) tell(told, "done");
      } catch (thrown) {
        tell(reasonOf(thrown), "refused");
      } finally {
        isBusy = false;
        pane.removeAttribute("aria-busy");
      }
    },
  };
}

/** Why something was not done, as a sentence. */
export function reasonOf(thrown: unknown): string {
  if (thrown instanceof Refusal) return thrown.message;
  if (thrown instanceof Problem) return sentence(thrown.message);
  console.error(thrown);
  return `This stopped with an internal error (${thrown instanceof Error ? thrown.message : thrown}). Please report it.`;
}

function sentence(message: string): string {
  const capital = message.charAt(0).toUpperCase() + message.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
