import { createWriteStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { stateFolder } from "@/lib/commands/checkout";
import { startWorkerProcess } from "@/lib/commands/jobs/worker-process";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { freePort } from "@/lib/commands/postgres/server";
import { tellDemo } from "@/lib/commands/start/demo";
import { startWebServer } from "@/lib/commands/web-server";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";
import { cloneTemplate } from "@/tests/support/clone-template";
import { startOidcServer } from "@/tests/support/oidc-server";
import { ensureTemplate } from "@/tests/support/template";
import { testKeys } from "@/tests/support/test-keys";

/** Of no installation. */
const secret = "only for tests, on loopback, and on a database dropped after them";

export type Laboratory = {
  /** What the browser tests are told, by the environment. */
  readonly environment: Readonly<Record<string, string>>;
  readonly stop: () => Promise<void>;
};

/** The product as people meet it, on a database of its own with the demo in it, on a free port. */
export async function startLaboratory(log: (line: string) => void): Promise<Laboratory> {
  const undo: (() => void | Promise<void>)[] = [];
  const stop = async () => {
    for (const step of undo.reverse()) await step();
  };
  try {
    const server = await borrowServer(log);
    undo.push(server.giveBack);
    const database = await cloneTemplate(await ensureTemplate(server.urlOf("postgres"), server.fresh));
    undo.push(database.drop);
    configureSeal(sealKeyOf(secret));
    const sealKeys = testKeys(mkdtempSync(path.join(tmpdir(), "emfolio-keys-")));
    undo.push(() => rmSync(sealKeys.folder, { recursive: true, force: true }));
    const port = await freePort();
    const publicUrl = `http://localhost:${port}`;
    const signIns = await tellDemo(database.runtimeUrl, publicUrl, sealKeys, log);
    const output = createWriteStream(path.join(stateFolder, "browser-tests-server.log"));
    const provider = await startOidcServer();
    undo.push(provider.stop);
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
    undo.push(web.stop);
    const mailFolder = mkdtempSync(path.join(tmpdir(), "emfolio-mail-"));
    undo.push(() => rmSync(mailFolder, { recursive: true, force: true }));
    const worker = startWorkerProcess({
      ...{ databaseUrl: database.runtimeUrl, jobsUrl: database.jobsUrl, publicUrl, mailFolder },
      ...{ smtpUrl: undefined, mailFrom: undefined, sealKey: sealKeyOf(secret) },
      sealKeys,
      log: (line) => void output.write(`${line}\n`),
    });
    undo.push(worker.stop);
    const environment = {
      E2E_BASE_URL: publicUrl,
      E2E_SIGN_INS: JSON.stringify(signIns),
      E2E_DATABASE_URL: database.adminUrl,
      E2E_MAIL_FOLDER: mailFolder,
      E2E_OIDC_ISSUER: provider.issuer,
    };
    return { environment, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
