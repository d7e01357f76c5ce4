import { type ChildProcess, spawn } from "node:child_process";
import { setPriority } from "node:os";
import { checkout } from "@/lib/commands/checkout";

export type Ran = { readonly code: number | null; readonly output: string };

type RunOptions = {
  /** Show what it says as it says it; otherwise it is only returned. */
  readonly show: boolean;
  readonly minutes: number;
  /** Lets others go first: what nobody waits for at a screen. */
  readonly inBackground?: boolean;
  readonly environment?: Readonly<Record<string, string | undefined>>;
};

/** Of the 19 steps down that a process may take by itself. */
const background = 10;

const children = new Set<ChildProcess>();
let stopping = false;

/** Ends what runs and lets nothing more begin, so that each part can put away what it brought up. */
export function stopRunning(): void {
  stopping = true;
  for (const child of children) child.kill();
}

/** Runs a package's program by this same Node, never through a shell or a shim, and ends it when its time is up. */
export async function run(program: string, args: readonly string[], options: RunOptions): Promise<Ran> {
  if (stopping) return { code: null, output: "stopped" };
  const child = spawn(process.execPath, [program, ...args], {
    cwd: checkout,
    env: { ...process.env, ...options.environment },
    stdio: ["ignore", options.show ? "inherit" : "pipe", options.show ? "inherit" : "pipe"],
  });
  if (options.inBackground && child.pid !== undefined) setPriority(child.pid, background);
  const chunks: string[] = [];
  for (const stream of [child.stdout, child.stderr])
    stream?.on("data", (chunk: Buffer) => chunks.push(chunk.toString()));
  children.add(child);
  const late = setTimeout(() => {
    chunks.push(`\nended after ${options.minutes} minutes`);
    child.kill("SIGKILL");
  }, options.minutes * 60_000);
  const code = await new Promise<number | null>((resolve, reject) =>
    child.on("error", reject).on("close", resolve),
  );
  children.delete(child);
  clearTimeout(late);
  return { code, output: chunks.join("") };
}
