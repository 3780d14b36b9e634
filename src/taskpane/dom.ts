// taskpane: elements of the page, found and made. Texts are set as texts, never as markup.

export function byId<Kind extends HTMLElement = HTMLElement>(id: string): Kind {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the pane has no #${id}`);
  return found as Kind;
}

export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Readonly<Record<string, string | undefined>> = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (value !== undefined) element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}

export const inputById = (id: string) => byId<HTMLInputElement>(id);

/** The value of the radio button that is on. */
export function chosen(name: string): string {
  return document.querySelector<HTMLInputElement>(`input[name="${name}"]:checked`)?.value ?? "";
}

/** Rows of a table, the first cell of each its header. */
export function tableRows(rows: readonly (readonly string[])[]): HTMLTableRowElement[] {
  return rows.map(([first, ...others]) =>
    make("tr", {}, make("th", { scope: "row" }, first), ...others.map((cell) => make("td", {}, cell))),
  );
}

export function listItems(texts: readonly string[]): HTMLLIElement[] {
  return texts.map((text) => make("li", {}, text));
}
