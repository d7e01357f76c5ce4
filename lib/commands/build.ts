import { spawn } from "node:child_process";
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { bundleOfflineCheck } from "@/lib/commands/authenticity/bundle-offline-check";
import { checkout, inCheckout, stateFolder } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";
import { fingerprint } from "@/lib/commands/fingerprint";
import { withLock } from "@/lib/commands/lock";
import { processIdentity } from "@/lib/commands/process-identity";
import { keptScriptFile } from "@/lib/documents/offline-check/kept-script";

const marker = inCheckout(".next", "emfolio-fingerprint");
const serving = path.join(stateFolder, "serving");
const logFile = path.join(stateFolder, "build.log");

const rootSources = [
  "next.config.mjs",
  "proxy.ts",
  "instrumentation.ts",
  "tsconfig.json",
  "package-lock.json",
];

/** What is not in the pages: changing it needs no new build. */
const notInPages = ["commands", "decisions", "generated", "jobs", "station"];

/** What the production build is made of. */
function sourceFingerprint(): string {
  const rooms = readdirSync(inCheckout("lib")).filter((name) => !notInPages.includes(name));
  const folders = ["app", "public", "prisma/schema", ...rooms.map((name) => `lib/${name}`)];
  return `${fingerprint(checkout, [...rootSources, ...folders])} node ${process.versions.node.split(".")[0]}`;
}

/**
 * Builds the pages unless they are built from these very sources, then registers this process as serving them.
 * Returns how to sign off. A build is never replaced under a living server: its pages would fail.
 */
export async function ensureBuild(log: (line: string) => void): Promise<() => void> {
  const waiting = (pid: number) => log(`Waiting for process ${pid}, which is building`);
  return withLock(
    path.join(stateFolder, "build.lock"),
    async () => {
      const wanted = sourceFingerprint();
      if (!isBuilt(wanted)) {
        const other = servers()[0];
        if (other !== undefined) {
          throw new Failure(
            `The sources changed, and process ${other} still serves the pages of before: stop it first.`,
          );
        }
        await build(wanted, log);
      }
      return register();
    },
    waiting,
  );
}

function isBuilt(wanted: string): boolean {
  return existsSync(marker) && readFileSync(marker, "utf8") === wanted;
}

async function build(wanted: string, log: (line: string) => void): Promise<void> {
  log("Building the pages (usually less than a minute)");
  rmSync(marker, { force: true });
  mkdirSync(stateFolder, { recursive: true });
  const file = openSync(logFile, "w");
  const child = spawn(
    process.execPath,
    [inCheckout("node_modules", "next", "dist", "bin", "next"), "build"],
    {
      cwd: checkout,
      env: { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" },
      stdio: ["ignore", file, file],
    },
  );
  closeSync(file);
  process.once("exit", () => child.kill());
  const code = await new Promise<number | null>((resolve, reject) =>
    child.on("error", reject).on("close", resolve),
  );
  if (code !== 0) {
    const told = readFileSync(logFile, "utf8").trimEnd().split("\n").slice(-40).join("\n");
    throw new Failure(`${told}\nThe build failed; all it said is in ${logFile}.`);
  }
  writeFileSync(keptScriptFile(checkout), await bundleOfflineCheck());
  writeFileSync(marker, wanted);
}

function register(): () => void {
  const entry = path.join(serving, `${process.pid} ${processIdentity(process.pid)}`);
  mkdirSync(serving, { recursive: true });
  writeFileSync(entry, "");
  return () => rmSync(entry, { force: true });
}

/** The processes that serve the build; entries of killed ones are removed. */
function servers(): readonly number[] {
  if (!existsSync(serving)) return [];
  return readdirSync(serving).flatMap((name) => {
    const [pid, identity] = name.split(" ");
    if (processIdentity(Number(pid)) === identity) return [Number(pid)];
    rmSync(path.join(serving, name), { force: true });
    return [];
  });
}
