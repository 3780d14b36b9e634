// build: help.json, what the pane knows of the functions: their declarations, what each argument accepts, and the tasks
// of the reference.

import { type ArgumentName, vocabulary } from "../../functions/arguments.ts";
import { tools } from "../calc/tools.ts";
import { materials } from "../data/materials/materials.ts";
import type { Help, HelpArgument } from "../taskpane/help.ts";
import type { Declaration, Parameter } from "./declarations.ts";
import { keywords, otherWords } from "./reference/keywords.ts";
import { tasks, topics } from "./reference/topics.ts";

export function paneHelp(declarations: readonly Declaration[]): Help {
  const titles = new Map(topics);
  return {
    functions: declarations.map((declaration) => {
      const { id, topic, description, remarks, returns, row, examples } = declaration;
      return {
        id,
        topic: titles.get(topic) ?? topic,
        description,
        remarks,
        returns,
        row,
        keywords: (keywords[id] ?? "").split("; ").filter((phrase) => phrase !== ""),
        examples,
        parameters: declaration.parameters.map(argument),
      };
    }),
    otherWords,
    tasks: tasks.map(([task, ids]) => ({ task, ids })),
  };
}

function argument({ name, description, optional, repeating, whole }: Parameter): HelpArgument {
  const accepts = vocabulary[name as ArgumentName]?.accepts ?? "";
  return {
    name,
    description,
    accepts,
    optional,
    repeating,
    whole,
    choices: choicesOf(name, accepts),
  };
}

/** The words of an argument that takes one of a few. */
function choicesOf(name: string, accepts: string): string[] {
  if (name === "material" || name === "gaugeMaterial") return materials.map(({ key }) => key);
  if (name === "tool") return [...tools];
  return /^"[^"]+"(?:(?:,| or|, or) "[^"]+")*$/.test(accepts)
    ? [...accepts.matchAll(/"([^"]+)"/g)].map(([, word]) => word)
    : [];
}
