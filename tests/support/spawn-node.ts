import { type ChildProcess, spawn } from "node:child_process";
import path from "node:path";

const checkout = path.resolve(import.meta.dirname, "..", "..");

/** What of the environment would make a command behave otherwise than on a fresh machine. */
const personal = [
  "DATABASE_URL",
  "RUNTIME_DATABASE_URL",
  "JOBS_DATABASE_URL",
  "SMTP_URL",
  "MAIL_FROM",
  "EMFOLIO_DATA_DIR",
  "PORT",
  "HOST",
  "PUBLIC_URL",
  "AUTH_SECRET",
];

/** Runs a script of the checkout as npm would. */
export function spawnNode(
  script: string,
  args: readonly string[],
  environment: Record<string, string> = {},
): ChildProcess {
  const inherited = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !personal.includes(name)),
  );
  return spawn(process.execPath, ["--import", "tsx", script, ...args], {
    cwd: checkout,
    env: { ...inherited, NODE_ENV: "production", ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });
}

export type Ended = { readonly code: number | null; readonly stdout: string; readonly stderr: string };

export async function ended(child: ChildProcess): Promise<Ended> {
  let stdout = "";
  let stderr = "";
  child.stdout?.on("data", (chunk: Buffer) => (stdout += chunk.toString()));
  child.stderr?.on("data", (chunk: Buffer) => (stderr += chunk.toString()));
  const code = await new Promise<number | null>((resolve) => child.once("close", resolve));
  return { code, stdout, stderr };
}

/** Resolves when the process has printed the text; rejects with all it said if it ends first. */
export async function printed(child: ChildProcess, text: string): Promise<void> {
  let said = "";
  await new Promise<void>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on("data", (chunk: Buffer) => {
        said += chunk.toString();
        if (said.includes(text)) resolve();
      });
    }
    child.once("close", () => reject(new Error(said)));
  });
}
