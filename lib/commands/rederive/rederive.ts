import { runCommand } from "@/lib/commands/failure";
import { ensureGenerated } from "@/lib/commands/generate";
import { openDatabase } from "./open-database";
import type { Rederived } from "./rederive-all";

const log = (line: string) => void process.stdout.write(`${line}\n`);

const tell = ({ step, outcome }: Rederived): void => {
  if (outcome.kind === "whole") log(`${step}: ${outcome.said}`);
  else log(`${step}: NOT AS IT WAS\n  ${outcome.record}\n  ${outcome.reason}`);
};

await runCommand(async () => {
  await ensureGenerated(log);
  const database = await openDatabase(process.env, log);
  // Loaded only now: they need the generated client.
  const { closeDatabase, configureDatabase } = await import("@/lib/data/client");
  const { rederiveAll } = await import("./rederive-all");
  try {
    configureDatabase(database.url);
    const whole = await rederiveAll(tell);
    log(whole ? "Everything stored is what follows from the readings." : "Stopped at the first record.");
    return whole ? 0 : 1;
  } finally {
    await closeDatabase();
    database.close();
  }
});
