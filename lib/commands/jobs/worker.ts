import { fileURLToPath } from "node:url";
import { Failure, runCommand } from "@/lib/commands/failure";
import { becomeSoleWorker } from "@/lib/commands/jobs/sole-worker";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { configurePublicUrl } from "@/lib/data/public-url";
import { configureSeal } from "@/lib/data/seal";
import { configureDccSchema } from "@/lib/documents/dcc/schema-in-use";
import type { KeyFolder } from "@/lib/documents/seal/key-folder";
import { fileCarrier } from "@/lib/jobs/file-carrier";
import { runWorker } from "@/lib/jobs/run-worker";
import { smtpCarrier } from "@/lib/jobs/smtp-carrier";
import type { Work } from "@/lib/jobs/work";
import { makeSealer } from "@/lib/operations/seal/sealer";

// A process of its own beside the web server, started by lib/commands/jobs/worker-process.ts.

const log = (line: string) => void process.stdout.write(`${line}\n`);

function fromEnvironment(name: string): string {
  const value = process.env[name];
  if (value === undefined || value === "") throw new Failure(`${name} is not set.`);
  return value;
}

function work(): Work {
  const publicUrl = fromEnvironment("PUBLIC_URL");
  const from = process.env.MAIL_FROM || `emfolio@${new URL(publicUrl).hostname}`;
  const smtpUrl = process.env.SMTP_URL;
  const carrier = smtpUrl ? smtpCarrier(smtpUrl, from) : fileCarrier(fromEnvironment("MAIL_FOLDER"), from);
  const sealKeys = JSON.parse(fromEnvironment("SEAL_KEYS")) as KeyFolder;
  const clock = () => new Date();
  const mayTellOwnNetwork = process.env.WEBHOOKS_MAY_REACH_OWN_NETWORK === "yes";
  return { carrier, publicUrl, mayTellOwnNetwork, seal: makeSealer(sealKeys, clock), clock };
}

/** Works the queue until it is told to stop, or until the database goes away. */
async function main(): Promise<number> {
  const stop = new Promise<"stop">((resolve) => {
    process.on("SIGTERM", () => resolve("stop"));
    // Ctrl-C reaches the supervisor too, and it says when.
    for (const signal of ["SIGINT", "SIGHUP"] as const) process.on(signal, () => {});
  });
  // Started by our supervisor, this process must not outlive it, not even when the supervisor is killed.
  process.on("disconnect", () => process.exit(0));
  const jobsUrl = fromEnvironment("JOBS_DATABASE_URL");
  configureDatabase(fromEnvironment("DATABASE_URL"));
  configurePublicUrl(fromEnvironment("PUBLIC_URL"));
  configureSeal(fromEnvironment("SEAL_KEY"));
  configureDccSchema(process.env.DCC_SCHEMA_DIR || null);
  const waiting = () => log("Another worker works this database; this one waits until it ends");
  const sole = await Promise.race([stop, becomeSoleWorker(jobsUrl, waiting)]);
  if (sole === "stop") return 0;
  if (sole.freed > 0) log(`Jobs taken over that were cut short: ${sole.freed}`);
  const worker = await runWorker(jobsUrl, work(), log);
  process.send?.("working");
  const lost = sole.lost.then(() => Promise.reject(new Failure("The database ended the connection.")));
  const why = await Promise.race([stop, worker.ended.then(() => "ended" as const), lost]);
  if (why === "stop") await worker.stop();
  await sole.release();
  await closeDatabase();
  return why === "stop" ? 0 : 1;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await runCommand(main);
  process.exit();
}
