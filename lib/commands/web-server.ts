import { type ChildProcess, fork } from "node:child_process";
import { createServer } from "node:net";
import { setTimeout as pause } from "node:timers/promises";
import { checkout, inCheckout } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";

export type WebServerOptions = {
  readonly mode: "start" | "dev";
  readonly host: string;
  readonly port: number;
  readonly publicUrl: string;
  /** The runtime role's address: the pages never see the owner's. */
  readonly databaseUrl: string;
  readonly secret: string;
  /** What the pages are told beside it. */
  readonly environment?: Readonly<Record<string, string>>;
  readonly onOutput: (text: string) => void;
};

export type WebServer = {
  /** Resolves when the process is gone, with what it said of itself. */
  readonly ended: Promise<string>;
  readonly stop: () => Promise<void>;
};

/** Starts the web server as a child and waits until it answers. */
export async function startWebServer(options: WebServerOptions): Promise<WebServer> {
  const next = inCheckout("node_modules", "next", "dist", "bin", "next");
  const child = fork(next, [options.mode, "-H", options.host, "-p", String(options.port)], {
    cwd: checkout,
    env: environment(options),
    execArgv: [],
    stdio: ["ignore", "pipe", "pipe", "ipc"],
  });
  child.stdout?.on("data", (chunk: Buffer) => options.onOutput(chunk.toString()));
  child.stderr?.on("data", (chunk: Buffer) => options.onOutput(chunk.toString()));
  const ended = new Promise<string>((resolve) => {
    child.once("error", (error) => resolve(error.message));
    child.once("close", (code, signal) => resolve(`ended with ${code ?? signal}`));
  });
  const early = await Promise.race([ended, answering(options)]);
  if (early !== undefined) throw new Failure(`The web server did not start: ${early}`);
  return { ended, stop: () => stop(child, ended) };
}

/** Says in one line if the port cannot be had, before anything else is begun. */
export async function requireFreePort(host: string, port: number): Promise<void> {
  const probe = createServer();
  const code = await new Promise<string | undefined>((resolve) => {
    probe.once("error", (error: NodeJS.ErrnoException) => resolve(error.code ?? error.message));
    probe.listen({ host, port, exclusive: true }, () => resolve(undefined));
  });
  await new Promise((resolve) => probe.close(resolve));
  if (code === undefined) return;
  if (code === "EADDRINUSE") {
    throw new Failure(
      `Port ${port} on ${host} is in use: stop what uses it, or choose another with PORT=${port + 1} npm start.`,
    );
  }
  throw new Failure(`Port ${port} on ${host} cannot be opened (${code}).`);
}

function environment(options: WebServerOptions): NodeJS.ProcessEnv {
  const {
    RUNTIME_DATABASE_URL: _,
    AUTH_SECRET: __,
    JOBS_DATABASE_URL: ___,
    SMTP_URL: ____,
    ...rest
  } = process.env;
  return {
    ...rest,
    ...options.environment,
    // Empty and not absent: Next reads .env by itself where a name has no value. The worker alone seals.
    SEAL_KEY_FILE: "",
    SEAL_KEY_PASSPHRASE: "",
    NODE_ENV: options.mode === "dev" ? "development" : "production",
    NEXT_TELEMETRY_DISABLED: "1",
    DATABASE_URL: options.databaseUrl,
    NEXTAUTH_SECRET: options.secret,
    NEXTAUTH_URL: options.publicUrl,
    PUBLIC_URL: options.publicUrl,
  };
}

async function answering({ host, port }: WebServerOptions): Promise<undefined> {
  const address = host === "0.0.0.0" || host === "::" ? "127.0.0.1" : host;
  const giveUpAt = Date.now() + 120_000;
  while (Date.now() < giveUpAt) {
    try {
      const url = `http://${address.includes(":") ? `[${address}]` : address}:${port}/api/health`;
      await fetch(url, { redirect: "manual", signal: AbortSignal.timeout(60_000) });
      return undefined;
    } catch {
      await pause(50);
    }
  }
  throw new Failure("The web server did not answer within two minutes.");
}

async function stop(child: ChildProcess, ended: Promise<string>): Promise<void> {
  if (child.exitCode === null && child.signalCode === null) child.kill("SIGTERM");
  const late = setTimeout(() => child.kill("SIGKILL"), 10_000);
  await ended;
  clearTimeout(late);
}
