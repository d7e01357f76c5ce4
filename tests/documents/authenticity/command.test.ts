import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, expect, it } from "vitest";
import { authenticityArguments } from "@/lib/commands/authenticity/authenticity-arguments";
import { ended, spawnNode } from "@/tests/support/spawn-node";
import { temporaryFolder } from "@/tests/support/temporary-folder";
import {
  file as evidence,
  content as measured,
} from "../../domain/certificate/recompute/certificate-with-evidence";
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
  writeFileSync(at("measured.pdf"), (await sealedSample(keys, measured)).file);
  writeFileSync(at("evidence.json"), JSON.stringify(evidence));
  const [part] = evidence.parts;
  const warmer = structuredClone(part!.evidence);
  for (const { microvolts } of warmer.scans.channels.slice(0, 1))
    for (const n of microvolts.keys()) microvolts[n]! += 50;
  writeFileSync(at("changed.json"), JSON.stringify({ ...evidence, parts: [{ ...part, evidence: warmer }] }));
  writeFileSync(at("dcc.xml"), '<?xml version="1.0" encoding="UTF-8"?><dcc:digitalCalibrationCertificate/>');
  writeFileSync(at("no.json"), "no JSON");
  writeFileSync(at("keys.json"), JSON.stringify(keys.list));
  writeFileSync(at("no-keys.json"), JSON.stringify({ ...keys.list, keys: [] }));
});

it("ends with 0, 1 or 2, and says why in the words of the page", async () => {
  const keys = ["--keys", at("keys.json")];
  const [good, other, unlisted, data] = await Promise.all([
    run(
      at("good.pdf"),
      ...keys,
      "--hash",
      `https://calibration.example/authenticity/${sampleToken}#${contentHash}`,
    ),
    run(at("good.pdf"), ...keys, "--hash", "0".repeat(64)),
    run(at("good.pdf"), "--keys", at("no-keys.json")),
    run(at("dcc.xml"), ...keys),
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
  expect(data.code).toBe(2);
  expect(data.stdout).toContain("check the PDF");
  expect(data.stdout).not.toContain("Do not rely");
});

it("computes the numbers again from the evidence, and names each that comes out otherwise", async () => {
  const from = (file: string) => run(at("measured.pdf"), "--keys", at("keys.json"), "--evidence", at(file));
  const [again, changed, none] = await Promise.all(["evidence.json", "changed.json", "no.json"].map(from));
  // This invented evidence brings no blocks, and so does not prove its readings: that is said, and is no success.
  expect(again).toMatchObject({ code: 1, stderr: "" });
  expect(again!.stdout).toContain("The figures come out again, but not all readings are those");
  expect(changed!.code).toBe(1);
  expect(changed!.stdout).toMatch(/\d+ of \d+ printed figures come out otherwise/);
  expect(changed!.stdout).toMatch(/Results, .*, Error, °C: printed \S+, computed again \S+/);
  expect(none!.code).toBe(2);
  expect(none!.stdout).toContain("Nothing was computed again: the file is no JSON");
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
      ["--page", "o.html", "--evidence", "e.json"],
    ],
  ])
    expect([parameters, authenticityArguments(parameters).kind]).toEqual([parameters, "refused"]);
  expect(authenticityArguments(["--help", "a.pdf"]).kind).toBe("help");
  expect(authenticityArguments(["a.pdf"])).toEqual({
    ...{ kind: "check", file: "a.pdf", keys: null },
    ...{ paperHash: { kind: "absent" }, evidence: null },
  });
});
