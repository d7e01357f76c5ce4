import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { inCheckout } from "@/lib/commands/checkout";
import { ensureGenerated } from "@/lib/commands/generate";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { ensureQueue } from "@/lib/commands/postgres/queue-schema";
import { ensureLogin, ensureRoles, ownerRole, prepareDatabase } from "@/lib/commands/postgres/roles";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { migrate } from "@/prisma/migrate";
import { benchContent } from "./content";
import { benchEvaluate } from "./evaluate";
import { fixed, printFigure } from "./print-figure";

/** A migrated database of its own, thrown away at the end. */
const withDatabase = async (work: (adminUrl: string, runtimeUrl: string) => Promise<void>): Promise<void> => {
  const server = await borrowServer();
  const database = `bench_${randomBytes(6).toString("hex")}`;
  const adminUrl = server.urlOf(database);
  const client = await connect(server.urlOf("postgres"));
  try {
    await ensureRoles(client);
    await client.query(`CREATE DATABASE ${database} OWNER ${ownerRole}`);
    const inside = await connect(adminUrl);
    await prepareDatabase(inside).finally(() => inside.end());
    await migrate({ databaseUrl: adminUrl, log: () => {} });
    await ensureQueue(adminUrl);
    const password = randomBytes(16).toString("hex");
    const user = await ensureLogin(client, database, "app", password);
    await work(adminUrl, changeUrl(adminUrl, { user, password }));
    await client.query(`DROP DATABASE ${database} WITH (FORCE)`);
    await client.query(`DROP ROLE ${user}`);
  } finally {
    await client.end();
    await server.giveBack();
  }
};

await ensureGenerated();
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
await withDatabase(async (adminUrl, runtimeUrl) => {
  printFigure(await benchIngest(adminUrl, runtimeUrl, evidence), { name: "scans", count: scans });
  printFigure(await benchChain(runtimeUrl));
  await benchTrace(adminUrl, runtimeUrl);
});
const peak = process.resourceUsage().maxRSS / 1024;
console.log(`\nPeak memory of this process: ${fixed(peak)} MiB`);
