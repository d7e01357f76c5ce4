import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "@playwright/test";
import { build } from "esbuild";
import { checkout } from "@/lib/commands/checkout";
import { findChromium } from "@/lib/commands/test/chromium";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import type { KeyList } from "@/lib/domain/seal/key-list";
import { printFigure } from "./print-figure";

type Taken = { readonly told: string; readonly own: number; readonly base: number };

/** Runs in the page: both sides in turn, the first round does not count. Answers the medians, and what ours said. */
const inTurns = (ours: string, baseline: string): string => `async (given) => {
  const bytes = Uint8Array.from(atob(given.file), (sign) => sign.charCodeAt(0));
  const [own, base] = [[], []];
  let told = "";
  for (let round = 0; round <= 7; round += 1) {
    const begun = performance.now();
    told = String(${ours});
    const between = performance.now();
    ${baseline};
    if (round > 0) { own.push(between - begun); base.push(performance.now() - between); }
  }
  const median = (values) => values.sort((a, b) => a - b)[3];
  return { told, own: median(own), base: median(base) };
}`;

const entry = `
  import { checkFile } from "@/lib/documents/authenticity/check-file";
  import { computeNumbers } from "@/lib/documents/authenticity/numbers/compute-numbers";
  Object.assign(globalThis, { checkFile, computeNumbers });`;

const bundled = async (): Promise<string> => {
  const { outputFiles } = await build({
    stdin: { contents: entry, resolveDir: checkout, loader: "ts" },
    absWorkingDir: checkout,
    ...{ bundle: true, write: false, minify: true, format: "iife", platform: "browser", target: "es2022" },
  });
  return outputFiles[0]?.text ?? "";
};

/** Once in a real browser, on a page from a file: no server, no network. */
const inBrowser = async (measured: string, given: object): Promise<Taken> => {
  const folder = mkdtempSync(path.join(tmpdir(), "emfolio-bench-"));
  const page = path.join(folder, "bench.html");
  const script = (await bundled()).replaceAll("</script", "<\\/script");
  writeFileSync(page, `<!doctype html><meta charset="utf-8"><script>${script}</script>`);
  const executablePath = findChromium((line) => console.log(line));
  const args = [...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), "--disable-gpu"];
  const browser = await chromium.launch({ executablePath, args });
  try {
    const opened = await browser.newPage();
    await opened.goto(pathToFileURL(page).href);
    return (await opened.evaluate(`(${measured})(${JSON.stringify(given)})`)) as Taken;
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
};

const megabytes = (bytes: Uint8Array): string => (bytes.length / 1_048_576).toFixed(1);
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");

/** The check of a dropped file in a real browser, against one SHA-256 over it by the browser's own code. */
export const benchBrowserCheck = async (
  file: Uint8Array,
  keys: KeyList,
  now: Date,
  what: string,
): Promise<void> => {
  const { told, own, base } = await inBrowser(
    inTurns(
      "(await checkFile(bytes, { keys: given.keys, now: new Date(given.now) })).verdict",
      'await crypto.subtle.digest("SHA-256", bytes)',
    ),
    { file: base64(file), keys, now: now.toISOString() },
  );
  if (told !== "total-passed") throw new Error(`in the browser: ${told}`);
  printFigure({
    name: `Check of a file in the browser: ${what}, ${megabytes(file)} MB with its evidence`,
    ours: "checkFile: coverage, digest, signature, certificate, timestamp, content",
    baseline: "one SHA-256 over the file, the browser's own",
    oursMilliseconds: own,
    baselineMilliseconds: base,
  });
};

/** Every printed figure computed again in a real browser and every reading proved by its block, against reading the same evidence as JSON. */
export const benchBrowserRecompute = async (
  content: CertificateContent,
  evidence: EvidenceFile,
  what: string,
): Promise<void> => {
  const file = new TextEncoder().encode(JSON.stringify(evidence));
  const { told, own, base } = await inBrowser(
    inTurns(
      `await (async () => {
        const carried = { content: given.content, evidence: { kind: "attached", bytes } };
        const { problems, differences, comparisons, unproved, readings } = await computeNumbers(carried, bytes);
        return [problems.length + unproved.length, differences.length, comparisons.length, readings].join(" ");
      })()`,
      "JSON.parse(new TextDecoder().decode(bytes))",
    ),
    { file: base64(file), content },
  );
  const [problems, differences, compared, readings] = told.split(" ").map(Number);
  if (problems !== 0 || differences !== 0) throw new Error(`in the browser: ${told}`);
  printFigure({
    name: `Figures computed again in the browser: ${what}, ${compared} figures, ${readings} readings, ${megabytes(file)} MB of evidence`,
    ours: "as the page does: schema, evaluation of the load, every printed figure compared, the readings held against their blocks",
    baseline: "reading the same evidence as JSON",
    oursMilliseconds: own,
    baselineMilliseconds: base,
  });
};
