// build: what is bundled and what is copied into dist/. `npm run build` runs it through src/build/build.ts.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import MinimizerPlugin from "minimizer-webpack-plugin";
import type { Configuration } from "webpack";
import packageJson from "./package.json" with { type: "json" };
import { entryFile } from "./src/build/entry.ts";
import { fillManifest } from "./src/build/manifest.ts";
import { manifestFolder, projectFolder, sourceFolder } from "./src/build/paths.ts";
import { policies } from "./src/build/policy.ts";
import { licensesHere, vendored } from "./src/build/vendored.ts";

/** Excel on a Mac uses the system browser, which may be some years old. */
const language = "es2020";

/** One plain script per entry, a function called on the spot: no chunks, no loader, no globals. */
function scripts(entry: Record<string, string>, folder: string): Configuration {
  return {
    mode: "production",
    context: projectFolder,
    target: ["web", language],
    devtool: false,
    entry,
    output: { path: folder, filename: "[name].js" },
    resolve: { extensions: [".ts", ".js"] },
    module: { rules: [{ test: /\.ts$/, loader: "esbuild-loader", options: { target: language } }] },
    optimization: {
      // The functions compute faster as terser writes them, and faster again where it does not write a function out at its
      // one call, which makes a new one at each; swc makes the pages as small in a twentieth of the time.
      minimizer: [
        new MinimizerPlugin({
          include: /^functions\.js$/,
          extractComments: false,
          minimizerOptions: { compress: { passes: 2, reduce_funcs: false } },
        }),
        new MinimizerPlugin({
          exclude: /^functions\.js$/,
          minify: MinimizerPlugin.swcMinify,
          extractComments: false,
        }),
      ],
    },
    performance: { hints: false },
    stats: "errors-warnings",
  };
}

function page(from: string, name: string) {
  return {
    from,
    to: name,
    transform: (text: Buffer) =>
      text
        .toString()
        .replace("{policy}", policies[name])
        .replace("{pane}", () => readFileSync(join(sourceFolder, "taskpane", "pane.html"), "utf8").trim()),
  };
}

export default function configuration(folder: string, address: string): Configuration {
  const config = scripts(
    {
      functions: entryFile,
      shim: join(sourceFolder, "browser", "shim.ts"),
      workbook: join(sourceFolder, "browser", "main.ts"),
      page: join(sourceFolder, "taskpane", "page.ts"),
      "reference/reference": join(sourceFolder, "reference", "reference.ts"),
    },
    folder,
  );
  config.plugins = [
    new CopyPlugin({
      patterns: [
        page(join(sourceFolder, "taskpane", "index.html"), "index.html"),
        page(join(sourceFolder, "browser", "workbook.html"), "workbook.html"),
        { from: join(sourceFolder, "taskpane", "page.css"), to: "page.css" },
        { from: join(sourceFolder, "taskpane", "pane.css"), to: "pane.css" },
        { from: join(sourceFolder, "browser", "workbook.css"), to: "workbook.css" },
        { from: join(manifestFolder, "icons"), to: "icons" },
        {
          from: join(manifestFolder, "manifest.xml"),
          to: "manifest.xml",
          transform: (text: Buffer) => fillManifest(text.toString(), address, packageJson.version),
        },
        ...vendored,
        { from: licensesHere["font-awesome"], to: "vendor/font-awesome/LICENSE.txt" },
      ],
    }),
  ];
  return config;
}
