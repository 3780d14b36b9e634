// taskpane: what the pane knows of the functions: help.json, which the build writes from their declarations.

export interface HelpArgument {
  readonly name: string;
  /** What it is, with its unit. */
  readonly description: string;
  /** What a cell may hold. */
  readonly accepts: string;
  readonly optional: boolean;
  readonly repeating: boolean;
  /** A list is taken whole: it does not spread down a column. */
  readonly whole: boolean;
  /** Words that it may be, if they are few. */
  readonly choices: readonly string[];
}

export interface HelpFunction {
  readonly id: string;
  readonly topic: string;
  readonly description: string;
  readonly remarks: string;
  readonly returns: string;
  readonly parameters: readonly HelpArgument[];
  /** Names of the cells that a row function gives per input row; empty for the others. */
  readonly row: readonly string[];
  readonly examples: readonly { readonly formula: string; readonly result: string }[];
}

export interface Help {
  readonly functions: readonly HelpFunction[];
  /** What a person wants, with the functions for it. */
  readonly tasks: readonly { readonly task: string; readonly ids: readonly string[] }[];
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
  return (await response.json()) as Help;
}

/** `REAM.RPM(surfaceSpeed, diameter, [maxRpm], [units])` */
export function signature({ id, parameters }: HelpFunction): string {
  const words = parameters.map(({ name, optional, repeating }) =>
    repeating ? `${name}…` : optional ? `[${name}]` : name,
  );
  return `REAM.${id}(${words.join(", ")})`;
}
