import { cpSync, createWriteStream, mkdtempSync, rmSync, type WriteStream } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";
import { startWorkerProcess } from "@/lib/commands/jobs/worker-process";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { freePort } from "@/lib/commands/postgres/server";
import { tellDemo } from "@/lib/commands/start/demo";
import { startWebServer } from "@/lib/commands/web-server";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";
import { cloneTemplate, type TestDatabase } from "@/tests/support/clone-template";
import { startOidcServer } from "@/tests/support/oidc-server";
import { ensureTemplate } from "@/tests/support/template";
import { testKeys } from "@/tests/support/test-keys";

/** Of no installation. */
const secret = "only for tests, on loopback, and on a database dropped after them";

type Undo = (step: () => void | Promise<void>) => void;

type Told = {
  readonly database: TestDatabase;
  readonly keysFolder: string;
  readonly signIns: string;
  readonly port: number;
};

const temporary = (what: string, undo: Undo): string => {
  const folder = mkdtempSync(path.join(tmpdir(), `emfolio-${what}-`));
  undo(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

/** Web server and worker over a database with the demo in it; what a journey is told, by the environment. */
const serve = async (
  { database, keysFolder, signIns, port }: Told,
  output: WriteStream,
  undo: Undo,
): Promise<Readonly<Record<string, string>>> => {
  const publicUrl = `http://localhost:${port}`;
  const provider = await startOidcServer();
  undo(provider.stop);
  const web = await startWebServer({
    ...{ mode: "start", host: "127.0.0.1", port, publicUrl, databaseUrl: database.runtimeUrl },
    secret,
    environment: {
      OIDC_ISSUER: provider.issuer,
      OIDC_CLIENT_ID: "emfolio",
      OIDC_CLIENT_SECRET: "only for tests",
    },
    onOutput: (text) => void output.write(text),
  });
  undo(web.stop);
  const mailFolder = temporary("mail", undo);
  const worker = startWorkerProcess({
    ...{ databaseUrl: database.runtimeUrl, jobsUrl: database.jobsUrl, publicUrl, mailFolder },
    ...{ smtpUrl: undefined, mailFrom: undefined, sealKey: sealKeyOf(secret) },
    sealKeys: testKeys(keysFolder),
    log: (line) => void output.write(`${line}\n`),
  });
  undo(worker.stop);
  return {
    E2E_BASE_URL: publicUrl,
    E2E_SIGN_INS: signIns,
    E2E_DATABASE_URL: database.adminUrl,
    E2E_MAIL_FOLDER: mailFolder,
    E2E_OIDC_ISSUER: provider.issuer,
  };
};

/** Each a database and a folder of keys of its own, with the same story in them: it is told once, then copied. */
const tellOnce = async (
  howMany: number,
  log: (line: string) => void,
  undo: Undo,
): Promise<readonly Told[]> => {
  const server = await borrowServer(log);
  undo(server.giveBack);
  const template = await ensureTemplate(server.urlOf("postgres"), server.fresh);
  const database = await cloneTemplate(template);
  undo(database.drop);
  configureSeal(sealKeyOf(secret));
  const keysFolder = temporary("keys", undo);
  const port = await freePort();
  const told = await tellDemo(database.runtimeUrl, `http://localhost:${port}`, testKeys(keysFolder), log);
  const first = { database, keysFolder, signIns: JSON.stringify(told), port };
  const all: Told[] = [first];
  while (all.length < howMany) {
    const name = new URL(database.adminUrl).pathname.slice(1);
    const copy = await cloneTemplate({ ...template, name });
    undo(copy.drop);
    const keys = temporary("keys", undo);
    cpSync(keysFolder, keys, { recursive: true });
    all.push({ ...first, database: copy, keysFolder: keys, port: await freePort() });
  }
  return all;
};

/** The product as people meet it, so many times, each on a free port. */
export async function startLaboratories(
  howMany: number,
  log: (line: string) => void,
): Promise<{
  /** What the browser tests of each are told, by the environment. */
  readonly laboratories: readonly Readonly<Record<string, string>>[];
  readonly stop: () => Promise<void>;
}> {
  const steps: (() => void | Promise<void>)[] = [];
  const undo: Undo = (step) => void steps.push(step);
  const stop = async () => {
    for (const step of steps.reverse()) await step();
  };
  try {
    const output = createWriteStream(path.join(stateFolder, "browser-tests-server.log"));
    const laboratories = [];
    for (const told of await tellOnce(howMany, log, undo)) laboratories.push(await serve(told, output, undo));
    return { laboratories, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
