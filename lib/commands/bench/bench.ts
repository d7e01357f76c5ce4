import { randomBytes } from "node:crypto";
import { ensureGenerated } from "@/lib/commands/generate";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { ensureLogin, ensureRoles, ownerRole, prepareDatabase } from "@/lib/commands/postgres/roles";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { migrate } from "@/prisma/migrate";
import { benchContent } from "./content";
import { benchHeavyEvaluation } from "./evaluate-heavy";
import type { Figure } from "./measure";

const fixed = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

const print = (figure: Figure, unit?: { readonly name: string; readonly count: number }): void => {
  console.log(`\n${figure.name}`);
  console.log(`  ours      ${fixed(figure.oursMilliseconds)} ms  ${figure.ours}`);
  console.log(`  baseline  ${fixed(figure.baselineMilliseconds)} ms  ${figure.baseline}`);
  console.log(`  ratio     ${fixed(figure.oursMilliseconds / figure.baselineMilliseconds)} × the baseline`);
  if (unit)
    console.log(
      `  rate      ${fixed((unit.count / figure.oursMilliseconds) * 1000)} ${unit.name} per second`,
    );
};

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
    const password = randomBytes(16).toString("hex");
    const user = await ensureLogin(client, database, password);
    await work(adminUrl, changeUrl(adminUrl, { user, password }));
    await client.query(`DROP DATABASE ${database} WITH (FORCE)`);
    await client.query(`DROP ROLE ${user}`);
  } finally {
    await client.end();
    await server.giveBack();
  }
};

await ensureGenerated();
const [
  { benchIngest },
  { benchEvaluate },
  { benchRender },
  { benchChain },
  { benchMonteCarlo },
  { benchReferenceFunction },
] = await Promise.all([
  import("./ingest"),
  import("./evaluate"),
  import("./render"),
  import("./chain"),
  import("./monte-carlo"),
  import("./reference-functions"),
]);
console.log("Medians of alternating rounds; each ratio is against the baseline of the same run.");
const { evidence } = simulateRun(1);
const scans = evidence.scans.channels[0]?.seconds.length ?? 0;
for (const type of ["K", "N", "R", "S"] as const) {
  for (const figure of await benchReferenceFunction(type)) print(figure);
}
print(await benchEvaluate(evidence), { name: "runs", count: 1 });
print(await benchHeavyEvaluation());
const monteCarlo = await benchMonteCarlo();
print(monteCarlo.figure, { name: "trials", count: monteCarlo.trials });
for (const note of monteCarlo.notes) console.log(`  ${note}`);
print(await benchRender(benchContent(evidence)), { name: "certificates", count: 1 });
await withDatabase(async (adminUrl, runtimeUrl) => {
  print(await benchIngest(adminUrl, runtimeUrl, evidence), { name: "scans", count: scans });
  print(await benchChain(runtimeUrl));
});
const peak = process.resourceUsage().maxRSS / 1024;
console.log(`\nPeak memory of this process: ${fixed(peak)} MiB`);
