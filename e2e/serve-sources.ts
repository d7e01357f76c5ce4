import { readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "@playwright/test";
import ts from "typescript";

const checkout = path.resolve(import.meta.dirname, "..");

export type ServedSources = {
  readonly origin: string;
  /** What the page has asked for, as paths in the repository. */
  readonly files: () => readonly string[];
};

/**
 * Serves the repository's TypeScript to a page as modules, each file as it stands but for its types: no bundler comes
 * between the source and the engine. Only for files that import relatively or by the alias.
 */
export async function serveSources(page: Page): Promise<ServedSources> {
  const origin = "http://sources.invalid";
  const served: string[] = [];
  await page.route(`${origin}/**`, async (route) => {
    const asked = new URL(route.request().url()).pathname;
    if (asked === "/")
      return route.fulfill({ contentType: "text/html", body: "<!doctype html><title>Sources</title>" });
    if (!/^\/(lib\/metrology|tests\/metrology)\/[a-z0-9/-]+$/.test(asked))
      return route.fulfill({ status: 404 });
    const file = `${asked.slice(1)}.ts`;
    const source = readFileSync(path.join(checkout, file), "utf8");
    const { outputText } = ts.transpileModule(source, {
      compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ES2022 },
    });
    served.push(file);
    const body = outputText.replaceAll(/(from\s+["'])@\//g, "$1/");
    return route.fulfill({ contentType: "text/javascript", body });
  });
  return { origin, files: () => served };
}
