// workbook: parts that a sheet of another package leads to (drawings, charts, pictures, tables), taken into a file under
// names that it does not have yet.

import { mapTags } from "./map-elements.ts";
import { CONTENT_TYPES, type PackageParts } from "./package.ts";
import { relationsOf, relationsPart } from "./workbook-parts.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, elements } from "./xml-text.ts";

/** A package from which parts are taken. */
export interface OtherPackage extends PackageParts {
  /** The bytes of a picture; undefined for a part that is text. */
  picture(name: string): Uint8Array | undefined;
}

export class Adopted {
  readonly parts = new Map<string, string>();
  readonly pictures = new Map<string, Uint8Array>();
  private readonly names = new Map<string, string>();

  /**
   * @param change what becomes of the text of a part, by its name in the other package
   * @param isShared whether a part of this very package is not to be taken again
   */
  constructor(
    private readonly file: PackageParts,
    private readonly from: OtherPackage,
    private readonly change: (name: string, text: string) => string,
    private readonly isShared: (name: string) => boolean = () => false,
  ) {}

  /** The relations of a part of the other package as they are here, with all that they lead to; undefined for none. */
  relations(part: string): string | undefined {
    const list = relationsPart(part);
    if (!this.from.has(list)) return undefined;
    const targets = new Map(relationsOf(this.from, part).map(({ id, part: target }) => [id, target]));
    return mapTags(this.from.read(list), "Relationship", (tag) => {
      const target = targets.get(attribute(tag, "Id") ?? "");
      if (target === undefined || this.isShared(target)) return tag;
      // It stays in its folder.
      const folder = (attribute(tag, "Target") ?? "").replace(/[^/]*$/, "");
      return withAttribute(tag, "Target", folder + this.part(target).replace(/^.*\//, ""));
    });
  }

  /** What the list of types has to know of them. */
  types(own: string): string[] {
    const given = this.from.read(CONTENT_TYPES);
    const kinds = new Map(
      [...elements(given, "Override")].map(({ tag }) => [
        (attribute(tag, "PartName") ?? "").slice(1),
        attribute(tag, "ContentType") ?? "",
      ]),
    );
    const overrides = [...this.names].flatMap(([name, now]) =>
      kinds.has(name) ? `<Override PartName="/${now}" ContentType="${kinds.get(name)}"/>` : [],
    );
    const known = new Set([...elements(own, "Default")].map(({ tag }) => extensionIn(tag)));
    const used = new Set([...this.pictures.keys()].map((name) => name.slice(name.lastIndexOf(".") + 1)));
    const defaults = [...elements(given, "Default")].flatMap(({ tag }) => {
      const extension = extensionIn(tag);
      if (!used.has(extension) || known.has(extension)) return [];
      return `<Default Extension="${extension}" ContentType="${attribute(tag, "ContentType")}"/>`;
    });
    return [...new Set(defaults), ...overrides];
  }

  private part(name: string): string {
    const there = this.names.get(name);
    if (there !== undefined) return there;
    const now = this.freeName(name);
    this.names.set(name, now);
    const picture = this.from.picture(name);
    if (picture) {
      this.pictures.set(now, picture);
      return now;
    }
    this.parts.set(now, this.change(name, this.from.read(name)));
    const relations = this.relations(name);
    if (relations !== undefined) this.parts.set(relationsPart(now), relations);
    return now;
  }

  private freeName(name: string): string {
    const [, stem, ending] = /^(.*?)\d*(\.\w+)$/.exec(name)!;
    const taken = new Set([...this.file.names, ...this.names.values()].map((one) => one.toLowerCase()));
    for (let number = 1; ; number++) {
      const free = `${stem}${number}${ending}`;
      if (!taken.has(free.toLowerCase())) return free;
    }
  }
}

const extensionIn = (tag: string): string => (attribute(tag, "Extension") ?? "").toLowerCase();
