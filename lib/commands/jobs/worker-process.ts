import { type ChildProcess, fork } from "node:child_process";
import { checkout, inCheckout } from "@/lib/commands/checkout";
import type { KeyFolder } from "@/lib/documents/seal/key-folder";

export type WorkerProcessOptions = {
  /** The runtime role's address: what a job does, it does through operations, as the pages do. */
  readonly databaseUrl: string;
  /** The queue's. */
  readonly jobsUrl: string;
  readonly publicUrl: string;
  /** Opens what lies sealed in the database; derived from the installation's secret, which the worker never learns. */
  readonly sealKey: string;
  /** The keys that seal certificates: only the worker has them. */
  readonly sealKeys: KeyFolder;
  readonly smtpUrl: string | undefined;
  readonly mailFrom: string | undefined;
  /** Where messages go without a mail server. */
  readonly mailFolder: string;
  readonly log: (line: string) => void;
};

export type WorkerProcess = { readonly stop: () => Promise<void> };

const longestPause = 60_000;

/**
 * Keeps a worker beside the web server. Mail can wait and a laboratory cannot: when the worker ends by itself it is
 * started again, after 1 s, 2 s, 4 s … up to a minute, and the pages go on.
 */
export function startWorkerProcess(options: WorkerProcessOptions): WorkerProcess {
  let child: ChildProcess | undefined;
  let again: NodeJS.Timeout | undefined;
  let stopping = false;
  let pause = 1_000;
  const begin = () => {
    let said = "";
    const begun = startChild(options);
    child = begun;
    // It got as far as working: the next failure is a new one.
    begun.on("message", () => {
      pause = 1_000;
    });
    begun.stdout?.on("data", (chunk: Buffer) => options.log(chunk.toString().trimEnd()));
    begun.stderr?.on("data", (chunk: Buffer) => {
      said = `${said}${chunk}`.slice(-2_000);
    });
    const ended = (how: string) => {
      if (stopping || child !== begun) return;
      child = undefined;
      options.log(
        `The worker that sends mail ended (${said.trim() || how}); starting it again in ${pause / 1_000} s`,
      );
      again = setTimeout(begin, pause);
      pause = Math.min(pause * 2, longestPause);
    };
    begun.once("error", (error) => ended(error.message));
    begun.once("close", (code, signal) => ended(String(code ?? signal)));
  };
  begin();
  return {
    stop: async () => {
      stopping = true;
      clearTimeout(again);
      if (child !== undefined) await stop(child);
    },
  };
}

function startChild(options: WorkerProcessOptions): ChildProcess {
  return fork(inCheckout("lib", "commands", "jobs", "worker.ts"), [], {
    cwd: checkout,
    env: environment(options),
    execArgv: ["--import", "tsx"],
    stdio: ["ignore", "pipe", "pipe", "ipc"],
  });
}

/** No more of ours than it needs: not the key of the sign-in sessions, not the owner's address. */
function environment(options: WorkerProcessOptions): NodeJS.ProcessEnv {
  const { AUTH_SECRET: _, NEXTAUTH_SECRET: __, RUNTIME_DATABASE_URL: ___, ...rest } = process.env;
  return {
    ...rest,
    NODE_ENV: "production",
    DATABASE_URL: options.databaseUrl,
    JOBS_DATABASE_URL: options.jobsUrl,
    PUBLIC_URL: options.publicUrl,
    SEAL_KEY: options.sealKey,
    SEAL_KEYS: JSON.stringify(options.sealKeys),
    SMTP_URL: options.smtpUrl,
    MAIL_FROM: options.mailFrom,
    MAIL_FOLDER: options.mailFolder,
  };
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once("close", resolve));
  child.kill("SIGTERM");
  // A job that is cut short is taken over at the next start.
  const late = setTimeout(() => child.kill("SIGKILL"), 8_000);
  await ended;
  clearTimeout(late);
}
