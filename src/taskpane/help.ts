// taskpane: what the pane knows of the functions: help.json, which the build writes from their declarations.

import * as z from "zod/mini";

const text = z.string();
const flag = z.boolean();

const argument = z.object({
  name: text,
  /** What it is, with its unit. */
  description: text,
  /** What a cell may hold. */
  accepts: text,
  optional: flag,
  repeating: flag,
  /** A list is taken whole: it does not spread down a column. */
  whole: flag,
  /** Words that it may be, if they are few. */
  choices: z.readonly(z.array(text)),
});

const described = z.object({
  id: text,
  topic: text,
  description: text,
  remarks: text,
  returns: text,
  parameters: z.readonly(z.array(argument)),
  /** Names of the cells that a row function gives per input row; empty for the others. */
  row: z.readonly(z.array(text)),
  /** What people call it, phrase by phrase. */
  keywords: z.readonly(z.array(text)),
  examples: z.readonly(z.array(z.object({ formula: text, result: text }))),
});

const help = z.object({
  functions: z.array(described),
  /** Words of the shop floor, and the word of the help that is meant. */
  otherWords: z.record(text, text),
  /** What people ask, with the functions for it. */
  tasks: z.array(z.object({ task: text, ids: z.readonly(z.array(text)) })),
});

export type HelpArgument = Readonly<z.infer<typeof argument>>;
export type HelpFunction = Readonly<z.infer<typeof described>>;
export type Help = Readonly<z.infer<typeof help>>;

/** help.json as it came from the server. @throws an error where it is not what the build writes */
export const readHelp = (json: unknown): Help => help.parse(json);

/** The function that a formula calls by this id, whose dots some files hold as "_". */
export function functionCalled({ functions }: Help, called: string): HelpFunction | undefined {
  const written = (id: string) => id.replaceAll(".", "_");
  return functions.find(({ id }) => written(id) === written(called));
}

let loaded: Promise<Help> | undefined;

/** The help, asked for once; after a failure it is asked for anew. */
export function loadHelp(): Promise<Help> {
  loaded ??= fetchHelp().catch((error) => {
    loaded = undefined;
    throw error;
  });
  return loaded;
}

async function fetchHelp(): Promise<Help> {
  const response = await fetch("help.json");
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return readHelp(await response.json());
}

/** `REAM.RPM(surfaceSpeed, diameter, [maxRpm], [units])` */
export function signature({ id, parameters }: HelpFunction): string {
  const words = parameters.map(({ name, optional, repeating }) =>
    repeating ? `${name}…` : optional ? `[${name}]` : name,
  );
  return `REAM.${id}(${words.join(", ")})`;
}
