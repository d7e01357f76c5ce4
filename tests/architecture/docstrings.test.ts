import { describe, expect, it } from "vitest";
import { exportedFunctions, undocumented } from "./docstrings";
import { readSources, repositoryFiles } from "./source";

const sources = readSources(
  repositoryFiles().filter((file) => file.startsWith("lib/metrology/") && file.endsWith(".ts")),
);

/** These two carry any value and are documented with the type they make. */
const carriers = "lib/metrology/outcome.ts";

describe("docstrings of lib/metrology", () => {
  it("give source, units and error cases of every exported function", () => {
    expect(sources.filter(({ file }) => file !== carriers).flatMap(undocumented)).toEqual([]);
  });

  it("are looked for in functions enough", () => {
    expect(sources.flatMap(exportedFunctions).length).toBeGreaterThan(100);
  });

  const file = (text: string) => ({ file: "lib/metrology/shown.ts", text });
  const body = "export function shown(x: number): Outcome<number> { return found(x); }";

  it.each([
    ["none at all", body, "a docstring worth the name"],
    [
      "no source",
      `/** Doubles x, which is in µV, and what comes of it is in µV as well. Problems: \`not-finite\`. */\n${body}`,
      "its source",
    ],
    [
      "no units",
      `/** Doubles x as JCGM 100:2008, 5.1.2 has it, for whatever it is good. Problems: \`not-finite\`. */\n${body}`,
      "its units",
    ],
    [
      "no error cases",
      `/** Doubles x, in µV, by JCGM 100:2008, 5.1.2, and gives it back, in µV, to who asked. */\n${body}`,
      "its error cases",
    ],
  ])("are missed when there is %s", (_, text, what) => {
    expect(undocumented(file(text)).join()).toContain(what);
  });

  it("pass when all is there", () => {
    const text = `/** Doubles x, in µV, by JCGM 100:2008, 5.1.2. Problems: \`not-finite\` for what is no number. */\n${body}`;
    expect(undocumented(file(text))).toEqual([]);
  });
});
