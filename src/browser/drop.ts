// browser: the whole page as a place to drop a file on, with a hint while one is over it.

const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;

export function startDrop(take: (files: readonly File[]) => void): void {
  const hint = document.getElementById("drop-hint")!;
  // The grid has drags of its own; a file is for the page before it is for the grid.
  const on = (name: "dragenter" | "dragover" | "dragleave" | "drop", handle: (event: DragEvent) => void) =>
    window.addEventListener(
      name,
      (event) => {
        if (!hasFiles(event)) return;
        event.preventDefault();
        event.stopPropagation();
        handle(event);
      },
      true,
    );
  on("dragenter", () => {
    hint.hidden = false;
  });
  on("dragover", (event) => {
    event.dataTransfer!.dropEffect = "copy";
    hint.hidden = false;
  });
  on("dragleave", (event) => {
    // Out of the window, not from one element to the next.
    if (event.relatedTarget === null) hint.hidden = true;
  });
  on("drop", (event) => {
    hint.hidden = true;
    take(Array.from(event.dataTransfer!.files));
  });
}
