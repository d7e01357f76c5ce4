import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, expect, it } from "vitest";
import { authenticityArguments } from "@/lib/commands/authenticity/authenticity-arguments";
import { ended, spawnNode } from "@/tests/support/spawn-node";
import { temporaryFolder } from "@/tests/support/temporary-folder";
import { makeKeys, sampleContentAt, sampleToken, sealedSample } from "./sealed-sample";

const folder = temporaryFolder();
const at = (name: string): string => path.join(folder, name);
const run = (...args: string[]) => ended(spawnNode("lib/commands/authenticity/authenticity.ts", args));

let contentHash: string;

beforeAll(async () => {
  const keys = await makeKeys();
  const sample = await sealedSample(keys, sampleContentAt(sampleToken));
  contentHash = sample.contentHash;
  writeFileSync(at("good.pdf"), sample.file);
  writeFileSync(at("keys.json"), JSON.stringify(keys.list));
  writeFileSync(at("no-keys.json"), JSON.stringify({ ...keys.list, keys: [] }));
});

it("ends with 0, 1 or 2, and says why in the words of the page", async () => {
  const keys = ["--keys", at("keys.json")];
  const [good, other, unlisted] = await Promise.all([
    run(
      at("good.pdf"),
      ...keys,
      "--hash",
      `https://calibration.example/authenticity/${sampleToken}#${contentHash}`,
    ),
    run(at("good.pdf"), ...keys, "--hash", "0".repeat(64)),
    run(at("good.pdf"), "--keys", at("no-keys.json")),
  ]);
  expect(good).toMatchObject({ code: 0, stderr: "" });
  expect(good.stdout).toContain("Genuine and unchanged");
  expect(good.stdout).toContain("TOTAL-PASSED");
  expect(good.stdout).toContain("cannot be known offline");
  expect(good.stdout).toContain(
    "the log still holds what it held when this was signed can only be asked online",
  );
  expect(other.code).toBe(1);
  expect(other.stdout).toContain("Paper and file do not belong together");
  expect(unlisted.code).toBe(2);
  expect(unlisted.stdout).toContain("INDETERMINATE");
});

it("writes one page that may run its own script and reach nothing", async () => {
  expect((await run("--page", at("page.html"), "--keys", at("keys.json"))).code).toBe(0);
  const page = readFileSync(at("page.html"), "utf8");
  const script = /<script>([\s\S]*)<\/script>\n<\/html>/.exec(page)?.[1] ?? "";
  const hash = createHash("sha256").update(script).digest("base64");
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1];
  expect(policy).toContain(`script-src 'sha256-${hash}';`);
  expect(policy).toContain("default-src 'none'");
  expect(page.match(/<(link|img|iframe|script src)\b/g)).toBeNull();
  expect(page).toContain("as of 2026-03-02");
  expect(page).toContain("cannot be known offline");
  expect(page).toContain("can only be asked online");
});

it("refuses what it does not understand", () => {
  for (const parameters of [
    ...[[], ["a.pdf", "b.pdf"], ["--loud", "a.pdf"], ["a.pdf", "--keys"], ["a.pdf", "--keys", "--hash"]],
    ...[
      ["a.pdf", "--hash", "12"],
      ["a.pdf", "--hash", `https://calibration.example/authenticity/${sampleToken}`],
      ["--page", "o.html", "a.pdf"],
      ["--page", "o.html", "--hash", "1"],
    ],
  ])
    expect([parameters, authenticityArguments(parameters).kind]).toEqual([parameters, "refused"]);
  expect(authenticityArguments(["--help", "a.pdf"]).kind).toBe("help");
  expect(authenticityArguments(["a.pdf"])).toEqual({
    ...{ kind: "check", file: "a.pdf", keys: null },
    paperHash: { kind: "absent" },
  });
});
