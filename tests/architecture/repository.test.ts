import { describe, expect, it } from "vitest";
import { impurities } from "./metrology-rules";
import { isScript, readSources, repositoryFiles } from "./source";
import * as rules from "./source-rules";

const files = repositoryFiles();
const sources = readSources(files.filter((file) => isScript(file) && !file.startsWith("lib/generated/")));
const styles = readSources(files.filter((file) => file.endsWith(".css")));
const under = (pattern: RegExp) => sources.filter(({ file }) => pattern.test(file));

const topLevel = [
  ["app", "e2e", "lib", "prisma", "public", "tests", ".ci"],
  [
    "package.json",
    "package-lock.json",
    "next.config.mjs",
    "tsconfig.json",
    "biome.json",
    "proxy.ts",
    "instrumentation.ts",
  ],
  ["docker-compose.yml", "Dockerfile", ".dockerignore", ".env.example", ".gitignore", ".npmrc"],
  ["README.md", "DEVELOPERS.md", "LICENSE"],
].flat();

describe("the repository", () => {
  it("is seen", () => {
    expect(sources.length).toBeGreaterThan(300);
    expect(under(/^lib\/metrology\//).length).toBeGreaterThan(20);
  });

  it("has nothing at its top that the map does not name", () => {
    expect(
      [...new Set(files.map((file) => file.split("/")[0]))].filter(
        (entry) => !topLevel.includes(entry ?? ""),
      ),
    ).toEqual([]);
  });

  it("keeps the engine the same on every machine and on every day", () => {
    expect(under(/^lib\/metrology\//).flatMap(impurities)).toEqual([]);
  });

  it.each([
    ["files are short", [...sources, ...styles], rules.tooLong],
    ["nothing only passes on", sources, rules.barrels],
    ["code has a home", sources, rules.homelessFolders],
    ["the environment is read in few places", sources, rules.environmentReads],
    ["SQL stands where it is looked for", sources, rules.rawSql],
    ["browser code says so in its name", under(/^(app|lib)\//), rules.misnamedClients],
    ["names are in kebab-case", sources.filter(({ file }) => !file.startsWith("app/")), rules.oddNames],
    ["no test is silenced", sources, rules.silencedTests],
    ["no enums of our own", sources, rules.enums],
  ] as const)("%s", (_, those, rule) => {
    expect(those.flatMap((source) => rule(source))).toEqual([]);
  });
});
