import { Failure, runCommand } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";
import { watchForStop } from "@/lib/commands/start/stop-request";
import { openDatabase } from "./open-database";
import type { Rederived } from "./rederive-all";

const log = (line: string) => void process.stdout.write(`${line}\n`);

const tell = ({ step, outcome }: Rederived): void => {
  if (outcome.kind === "whole") log(`${step}: ${outcome.said}`);
  else log(`${step}: NOT AS IT WAS\n  ${outcome.record}\n  ${outcome.reason}`);
};

// The reader of a pipe may stop early (head); a server started for this must still be stopped.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

await runCommand(async () => {
  const stop = watchForStop();
  await ensureGenerated(log);
  const database = await openDatabase(process.env, log);
  // Loaded only now: they need the generated client.
  const { closeDatabase, configureDatabase } = await import("@/lib/data/client");
  const { rederiveAll } = await import("./rederive-all");
  try {
    configureDatabase(database.url);
    const whole = await stop.unless(rederiveAll(tell));
    log(whole ? "Everything stored is what follows from the readings." : "Stopped at the first record.");
    return whole ? 0 : 1;
  } catch (error) {
    if (!stop.asked()) throw error;
    throw new Failure("Stopped before the end; nothing was changed.");
  } finally {
    await closeDatabase();
    database.close();
  }
});
process.exit();
