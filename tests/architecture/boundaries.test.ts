import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { cruise, type IConfiguration, type ICruiseResult } from "dependency-cruiser";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkout, repositoryFiles } from "./source";
import { trespasses } from "./trespasses";

const configuration = createRequire(import.meta.url)("../boundaries.cjs") as IConfiguration;

async function cruised(baseDir: string, folders: readonly string[]): Promise<ICruiseResult> {
  const { tsConfig: _, ...options } = configuration.options ?? {};
  const ruleSet = { forbidden: configuration.forbidden ?? [] };
  const result = await cruise([...folders], { ...options, validate: true, ruleSet, baseDir });
  if (typeof result.output === "string") throw new Error(result.output);
  return result.output;
}

describe("the boundary rules", () => {
  let folder: string;
  let found: readonly { readonly rule: string; readonly from: string }[];

  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), "emfolio-boundaries-"));
    const write = (file: string, text: string) => {
      mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
      writeFileSync(path.join(folder, file), text);
    };
    write(
      "package.json",
      JSON.stringify({
        dependencies: { zod: "*", next: "*", pg: "*", canonicalize: "*" },
        devDependencies: { vitest: "*" },
      }),
    );
    for (const name of ["zod", "next", "pg", "canonicalize", "vitest"]) {
      write(`node_modules/${name}/package.json`, JSON.stringify({ name, main: "main.js" }));
      write(`node_modules/${name}/main.js`, "module.exports = {};");
    }
    for (const { files } of trespasses) for (const [file, text] of Object.entries(files)) write(file, text);
    const result = await cruised(folder, ["app", "lib", "prisma"]);
    found = result.summary.violations.map(({ rule, from }) => ({ rule: rule.name, from }));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(trespasses)("$rule stops $from", ({ rule, from }) => {
    expect(found).toContainEqual({ rule, from });
  });

  it("stop nothing else", () => {
    const innocent = found.filter(({ from }) => !trespasses.some((trespass) => trespass.from === from));
    expect(innocent).toEqual([]);
  });

  it("are each shown to bite", () => {
    const shown = new Set(trespasses.map(({ rule }) => rule));
    expect(
      (configuration.forbidden ?? []).map(({ name }) => name).filter((name) => !shown.has(name ?? "")),
    ).toEqual([]);
  });
});

describe("the boundary tool", () => {
  it("sees every source file, so that it cannot pass by seeing nothing", async () => {
    const options = configuration.options ?? {};
    const result = await cruise(["app", "lib", "prisma"], { ...options, baseDir: checkout });
    if (typeof result.output === "string") throw new Error(result.output);
    const seen = new Set(result.output.modules.map(({ source }) => source));
    const sources = repositoryFiles().filter(
      (file) => /^(app|lib|prisma)\/.*\.tsx?$/.test(file) && !file.startsWith("lib/generated/"),
    );
    expect(sources.length).toBeGreaterThan(300);
    expect(sources.filter((file) => !seen.has(file))).toEqual([]);
  });
});
