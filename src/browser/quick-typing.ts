// browser: keys that come faster than the page is drawn. What the first key typed into a cell replaces, and what a suggestion
// adds that was taken, the grid shows only with the next frame: a second key before it went among the old letters, and 257
// typed over 12 became 25712.

interface Composer {
  readonly props: {
    readonly composerStore: {
      readonly editionMode: string;
      readonly currentContent: string;
      readonly composerSelection: { readonly start: number; readonly end: number };
    };
  };
  readonly contentHelper: { getText(): string; selectRange(start: number, end: number): void };
  onInput(event: Event): void;
  onKeydown(event: Event): void;
  onKeyup(event: Event): void;
  processContent(): void;
}

type Components = { readonly Composer: { readonly prototype: unknown } };

/** Must run before the grid is shown. */
export function keepUpWithKeys({ Composer }: Components): void {
  const composer = Composer.prototype as Composer;
  const { onInput, onKeydown, onKeyup } = composer;
  /** Whether no cell was being edited when the last key was pressed. */
  let isFirstKey = false;
  composer.onInput = function (event) {
    onInput.call(this, event);
    if (isBehind(this)) showNow(this);
  };
  composer.onKeydown = function (event) {
    isFirstKey = this.props.composerStore.editionMode === "inactive";
    onKeydown.call(this, event);
    if (isBehind(this)) showNow(this);
  };
  // A key that is let go asks the page where the caret is: before the first key was drawn, that is before the text.
  composer.onKeyup = function (event) {
    if (this.props.composerStore.editionMode !== "inactive" && (isFirstKey || isBehind(this))) showNow(this);
    onKeyup.call(this, event);
  };
}

/** Whether the page does not show yet what the grid has in mind. */
function isBehind({ props, contentHelper }: Composer): boolean {
  const { editionMode, currentContent } = props.composerStore;
  return editionMode !== "inactive" && contentHelper.getText() !== currentContent;
}

function showNow(composer: Composer): void {
  const { start, end } = composer.props.composerStore.composerSelection;
  composer.processContent();
  composer.contentHelper.selectRange(start, end);
}
