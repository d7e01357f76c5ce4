import { spawnSync } from "node:child_process";
import { inCheckout } from "@/lib/commands/checkout";
import { ensureGenerated } from "@/lib/commands/generate";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { benchContent } from "./content";
import { benchEvaluate } from "./evaluate";
import { fixed, printFigure } from "./print-figure";
import { withDatabase } from "./with-database";

await ensureGenerated();
/** `npm run bench lists`: the lists alone. */
const listsOnly = process.argv.includes("lists");
if (listsOnly) {
  const { benchLists } = await import("./lists");
  await benchLists(benchContent(simulateRun(1).evidence));
  process.exit(0);
}
/** `npm run bench documents`: what is made of a certificate, and checked of it, alone. */
if (process.argv.includes("documents")) {
  const { benchDocuments } = await import("./documents");
  await benchDocuments(benchContent(simulateRun(1).evidence));
  process.exit(0);
}
console.log("Medians of alternating rounds; each ratio is against the baseline of the same run.");
// The core in a process of its own: whatever has grown a WebAssembly memory in this one (the layout of PDF does)
// makes the engine look at every typed array twice, and then it is not the core that is measured.
const core = spawnSync(
  process.execPath,
  ["--import", "tsx", inCheckout("lib", "commands", "bench", "core.ts")],
  {
    stdio: "inherit",
  },
);
if (core.status !== 0) throw new Error(`The core's benches ended with ${core.status}`);
const { evidence } = simulateRun(1);
const scans = evidence.scans.channels[0]?.seconds.length ?? 0;
printFigure(await benchEvaluate(evidence), { name: "runs", count: 1 });
const [{ benchIngest }, { benchRender }, { benchChain }, { benchTrace }] = await Promise.all([
  import("./ingest"),
  import("./render"),
  import("./chain"),
  import("./trace"),
]);
printFigure(await benchRender(benchContent(evidence)), { name: "certificates", count: 1 });
const { benchDocuments } = await import("./documents");
await benchDocuments(benchContent(evidence));
await withDatabase(async (adminUrl, runtimeUrl) => {
  printFigure(await benchIngest(adminUrl, runtimeUrl, evidence), { name: "scans", count: scans });
  printFigure(await benchChain(runtimeUrl));
  await benchTrace(adminUrl, runtimeUrl);
});
const { benchLists } = await import("./lists");
await benchLists(benchContent(evidence));
const peak = process.resourceUsage().maxRSS / 1024;
console.log(`\nPeak memory of this process: ${fixed(peak)} MiB`);
