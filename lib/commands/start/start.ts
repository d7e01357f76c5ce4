import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { ensureBuild } from "@/lib/commands/build";
import { inCheckout } from "@/lib/commands/checkout";
import { Failure, runCommand } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";
import { startWorkerProcess } from "@/lib/commands/jobs/worker-process";
import { announce } from "@/lib/commands/start/announce";
import { authSecret } from "@/lib/commands/start/auth-secret";
import { ensureChains } from "@/lib/commands/start/chains";
import { ensureDemo } from "@/lib/commands/start/demo";
import { foundProcedures } from "@/lib/commands/start/found-procedures";
import { type ReadyDatabase, readyDatabase } from "@/lib/commands/start/prepare-database";
import { ensureSealKeys, keyFolderOf } from "@/lib/commands/start/seal-keys";
import { readSettings, type Settings } from "@/lib/commands/start/settings";
import { type StopRequest, watchForStop } from "@/lib/commands/start/stop-request";
import { requireFreePort, startWebServer, type WebServer } from "@/lib/commands/web-server";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";

type Undo = (() => void | Promise<void>)[];

const log = (line: string) => void process.stdout.write(`${line}\n`);

/** Everything up, in order; on any end, everything down, in the opposite order. */
export async function start(mode: "start" | "dev", args: readonly string[]): Promise<number> {
  // A file of settings for people who start it by hand; what the environment says already wins.
  if (existsSync(inCheckout(".env"))) process.loadEnvFile(inCheckout(".env"));
  const settings = readSettings(process.env, args);
  const stop = watchForStop();
  const undo: Undo = [];
  try {
    await requireFreePort(settings.host, settings.port);
    const { database, web } = await bringUp(mode, settings, stop, undo);
    await Promise.race([stop.when, failed(web, database)]);
  } catch (error) {
    if (!stop.asked()) throw error;
  } finally {
    if (stop.asked()) log("Stopping");
    for (const step of undo.reverse()) await step();
  }
  return 0;
}

async function bringUp(mode: "start" | "dev", settings: Settings, stop: StopRequest, undo: Undo) {
  const database = await readyDatabase(settings, log);
  undo.push(database.stop);
  await stop.unless(ensureGenerated(log));
  const secret = authSecret(settings.authSecret);
  configureSeal(sealKeyOf(secret));
  const sealKeys = keyFolderOf(settings, database.folder, secret);
  const signIns = await stop.unless(ensureDemo(database, settings, sealKeys, log));
  await stop.unless(ensureSealKeys(database, sealKeys, log));
  await stop.unless(foundProcedures(database.runtimeUrl));
  await stop.unless(ensureChains(database, log));
  if (mode === "start") undo.push(await stop.unless(ensureBuild(log)));
  log("Starting the web server");
  let ready = false;
  const web = await startWebServer({
    ...{ mode, host: settings.host, port: settings.port, publicUrl: settings.publicUrl },
    databaseUrl: database.runtimeUrl,
    secret,
    environment: { TRUSTED_PROXIES: String(settings.trustedProxies) },
    onOutput: (text) => void ((ready || mode === "dev") && process.stdout.write(text)),
  });
  ready = true;
  undo.push(web.stop);
  const mailFolder = path.join(database.folder, "mail");
  const { publicUrl, smtpUrl, mailFrom } = settings;
  const worker = startWorkerProcess({
    ...{ publicUrl, smtpUrl, mailFrom, mailFolder, log },
    ...{ databaseUrl: database.runtimeUrl, jobsUrl: database.jobsUrl, sealKey: sealKeyOf(secret) },
    sealKeys,
  });
  undo.push(worker.stop);
  await announce({ settings, database, signIns, mailFolder }, log);
  return { database, web };
}

/** Rejects when a part of it ends by itself. */
async function failed(web: WebServer, database: ReadyDatabase): Promise<never> {
  const gone = new Promise<string>((resolve) => {
    const timer = setInterval(() => !database.isRunning() && resolve("PostgreSQL ended"), 2_000);
    timer.unref();
  });
  const reason = await Promise.race([gone, web.ended.then((told) => `The web server ${told}`)]);
  throw new Failure(`${reason}; stopped the rest. Start again to go on: what was recorded is kept.`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await runCommand(() => start("start", process.argv.slice(2)));
  process.exit();
}
