// build: help.json, what the pane knows of the functions: their declarations, what each argument accepts, and the tasks
// of the reference.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type ArgumentName, vocabulary } from "../../functions/arguments.ts";
import { materials } from "../data/materials/materials.ts";
import type { Help, HelpArgument } from "../taskpane/help.ts";
import type { Declaration, Parameter } from "./declarations.ts";
import { projectFolder } from "./paths.ts";
import { tasks, topics } from "./reference/topics.ts";

export function paneHelp(declarations: readonly Declaration[]): Help {
  const titles = new Map(topics);
  return {
    functions: declarations.map((declaration) => {
      const lists = listArguments(declaration);
      const { id, topic, description, remarks, returns, row, examples } = declaration;
      return {
        id,
        topic: titles.get(topic) ?? topic,
        description,
        remarks,
        returns,
        row,
        examples,
        parameters: declaration.parameters.map((parameter) => argument(parameter, lists)),
      };
    }),
    tasks: tasks.map(([task, ids]) => ({ task, ids })),
  };
}

function argument(parameter: Parameter, lists: ReadonlySet<string>): HelpArgument {
  const { name, description, optional, repeating } = parameter;
  const accepts = vocabulary[name as ArgumentName]?.accepts ?? "";
  return {
    name,
    description,
    accepts,
    optional,
    repeating,
    whole: repeating || lists.has(name),
    choices: choicesOf(name, accepts),
  };
}

/** The words of an argument that takes one of a few. */
function choicesOf(name: string, accepts: string): string[] {
  if (name === "material" || name === "gaugeMaterial") return materials.map(({ key }) => key);
  if (name === "tool") return ["HSS", "carbide"];
  return /^"[^"]+"(?:(?:,| or|, or) "[^"]+")*$/.test(accepts)
    ? [...accepts.matchAll(/"([^"]+)"/g)].map(([, word]) => word)
    : [];
}

/** The arguments that a function passes to `list(…)`, as its own text says. */
function listArguments({ file, exportName }: Declaration): Set<string> {
  const text = readFileSync(join(projectFolder, file), "utf8");
  const [body] = text.slice(text.indexOf(`export function ${exportName}(`)).split("\n}\n");
  return new Set([...body.matchAll(/\blist\((?:\w+\()?(\w+)/g)].map(([, name]) => name.replace(/_$/, "")));
}
