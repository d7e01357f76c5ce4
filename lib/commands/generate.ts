import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { checkout, inCheckout } from "@/lib/commands/checkout";
import { Failure, runCommand } from "@/lib/commands/failure";
import { fingerprint } from "@/lib/commands/fingerprint";

const output = inCheckout("lib", "generated", "prisma");
const marker = inCheckout("lib", "generated", "fingerprint");

/** Makes the database client again if the schema (or the generator's version) changed since the last time. */
export async function ensureGenerated(log: (line: string) => void = () => {}): Promise<void> {
  const wanted = fingerprint(checkout, [
    "prisma/schema",
    "prisma/prisma.config.ts",
    "node_modules/prisma/package.json",
  ]);
  if (existsSync(output) && existsSync(marker) && readFileSync(marker, "utf8") === wanted) return;
  log("Generating the database client");
  await generate();
  mkdirSync(path.dirname(marker), { recursive: true });
  writeFileSync(marker, wanted);
}

async function generate(): Promise<void> {
  const cli = inCheckout("node_modules", "prisma", "build", "index.js");
  const child = spawn(
    process.execPath,
    [cli, "generate", "--config", "prisma/prisma.config.ts", "--no-hints"],
    {
      cwd: checkout,
      // The command line wants to download an engine that `generate` never runs; naming any executable prevents it.
      env: {
        ...process.env,
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        PRISMA_HIDE_UPDATE_MESSAGE: "1",
        CHECKPOINT_DISABLE: "1",
      },
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  let told = "";
  child.stdout.on("data", (chunk: Buffer) => (told += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (told += chunk.toString()));
  const code = await new Promise<number | null>((resolve, reject) =>
    child.on("error", reject).on("close", resolve),
  );
  if (code !== 0) throw new Failure(`The database client could not be generated:\n${told.trim()}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await runCommand(async () => {
    await ensureGenerated((line) => process.stdout.write(`${line}\n`));
    return 0;
  });
}
