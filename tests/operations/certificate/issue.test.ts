import { PDFDocument } from "pdf-lib";
import type pg from "pg";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { sha256 } from "@/lib/data/sha256";
import { readAttachments } from "@/lib/documents/authenticity/read-attachments";
import { evidenceSum, evidenceSumName } from "@/lib/domain/certificate/evidence-file/evidence-sum";
import { fetchDocuments } from "@/lib/operations/certificate/download";
import { downloadEvidence } from "@/lib/operations/certificate/download-evidence";
import { issueCertificate } from "@/lib/operations/certificate/issue";
import { type IssueSteps, issueSteps } from "@/lib/operations/certificate/issue-steps";
import { execute } from "@/lib/operations/execute";
import { certificateListView } from "@/lib/views/certificate-list";
import { certificatePageView } from "@/lib/views/certificate-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { testSeal } from "../../support/issue-now";
import { signClock, signRun } from "../../support/sign-run";
import { ended, spawnNode } from "../../support/spawn-node";
import { workOff } from "../../support/work-off";

/** Whatever cuts the making of a document short, the certificate keeps its number, and its files come whole and once. */

let database: TestDatabase;
let admin: pg.Client;
let world: World;
type Signed = Awaited<ReturnType<typeof signRun>>[number];
const signed: Signed[] = [];
const laboratory = { kind: "laboratory" } as const;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureDatabase(database.runtimeUrl);
  configurePublicUrl("https://calibration.example");
  world = await buildWorld();
  const built = await buildRun(world, { owners: Array.from({ length: 8 }, () => "north" as const) });
  signed.push(...(await signRun(world.people.signatory, built)));
  // Signed is not ready: nobody is told of a document that is not there.
  expect(await readyLetters()).toEqual([]);
});
afterAll(async () => {
  Reflect.deleteProperty(globalThis, "emfolioPublicUrl");
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

let certificate: Signed;
beforeEach(() => {
  certificate = signed.shift() as Signed;
});

const filesOf = (id: string) =>
  inScope(laboratory, (tx) =>
    tx.certificateFile.findMany({ where: { certificateId: id }, orderBy: { mediaType: "asc" } }),
  );
const attemptsOf = (id: string) =>
  inScope(laboratory, (tx) =>
    tx.certificateAttempt.findMany({ where: { certificateId: id }, orderBy: { id: "asc" } }),
  );
const issuedEvents = (id: string) =>
  inScope(laboratory, (tx) =>
    tx.auditEvent.findMany({ where: { entityId: id, action: "certificate.issued" } }),
  );
const jobOf = async (id: string) =>
  (
    await admin.query("SELECT attempts, last_error FROM graphile_worker._private_jobs WHERE key = $1", [
      `certificate:${id}`,
    ])
  ).rows[0];

/** As the list of what is still to be made says it. */
const isListed = async (number: string): Promise<boolean> =>
  (await certificateListView(world.people.signatory, { only: "pending" })).certificates.some(
    (listed) => listed.number === number,
  );

const readyLetters = () =>
  inScope(laboratory, (tx) => tx.mailMessage.findMany({ where: { kind: "certificate-ready" } }));

const demandPending = async ({ id, number, token }: Signed) => {
  expect(await filesOf(id)).toEqual([]);
  expect(await issuedEvents(id)).toEqual([]);
  const page = await certificatePageView(world.people.signatory, number);
  expect(page.file).toBeNull();
  expect(await isListed(number)).toBe(true);
  expect(await codeOf(fetchDocuments(world.people.north, [token], signClock))).toBe("wrong-state");
};

const demandIssuedOnce = async ({ id, number, token }: Signed) => {
  const files = await filesOf(id);
  expect(files.map(({ mediaType }) => mediaType)).toEqual(["application/pdf", "application/xml"]);
  for (const file of files) expect(hex(file.sha256)).toBe(hex(sha256(file.bytes)));
  const events = await issuedEvents(id);
  expect(events).toHaveLength(1);
  expect(await isListed(number)).toBe(false);
  const [pdf, dcc] = files;
  expect(JSON.parse(events[0]!.payload)).toEqual({
    number,
    mediaType: "application/pdf",
    sha256: hex(pdf!.sha256),
    bytes: pdf!.bytes.length,
    renderer: pdf!.rendererVersion,
    unsealedSha256: hex(pdf!.unsealedSha256!),
    sealFingerprint: pdf!.sealFingerprint,
    dccSha256: hex(dcc!.sha256),
  });
  const [document] = await fetchDocuments(world.people.north, [token], signClock);
  expect(document!.number).toBe(number);
  await demandNamesEvidence(certificate, pdf!.bytes);
};

/** The evidence was not ordered: the sealed document says which file it is, and that is the one that is downloaded. */
const demandNamesEvidence = async ({ number, token }: Signed, pdf: Uint8Array) => {
  const evidence = await execute(downloadEvidence, world.people.technician, { token }, signClock);
  const carried = readAttachments(await PDFDocument.load(pdf, { updateMetadata: false }));
  const sum = carried.find(({ name }) => name === evidenceSumName)?.bytes;
  expect(new TextDecoder().decode(sum)).toBe(evidenceSum(number, hex(sha256(evidence.bytes))));
};

const whole = issueSteps(testSeal);
const fails = (what: string) => async (): Promise<never> => {
  throw new Error(what);
};
/** The store's own fault: the database takes no document that a key sealed which is not on the laboratory's list. */
const foreign: Pick<IssueSteps, "seal"> = {
  seal: async (pdf) => ({ bytes: pdf, fingerprint: "f".repeat(64) }),
};

describe("a step that fails", () => {
  it.each<readonly [string, Partial<IssueSteps>, RegExp]>([
    ["render", { render: fails("a font is missing") }, /a font is missing/],
    ["attach", { attach: fails("no XML") }, /no XML/],
    ["seal", { seal: fails("the key file cannot be read") }, /the key file cannot be read/],
    ["store", foreign, /sealed by no key/],
  ])(
    "%s: told with its reason, pending meanwhile, and issued once afterwards",
    async (step, fault, reason) => {
      const { id } = certificate;
      await expect(issueCertificate(id, { ...whole, ...fault }, signClock)).rejects.toThrow();
      expect(await attemptsOf(id)).toMatchObject([{ step, detail: expect.stringMatching(reason) }]);
      await demandPending(certificate);
      expect(await issueCertificate(id, whole, signClock)).toBe("issued");
      await demandIssuedOnce(certificate);
      expect(await issueCertificate(id, whole, signClock)).toBe("nothing to do");
      await demandIssuedOnce(certificate);
      expect(await attemptsOf(id)).toHaveLength(1);
    },
  );
});

describe("a worker", () => {
  it("that is killed between two steps leaves no half, and the next one issues it", async () => {
    const worker = spawnNode("tests/support/killed-issuer.ts", [certificate.id], {
      DATABASE_URL: database.runtimeUrl,
    });
    expect(await ended(worker)).toMatchObject({ code: null, stderr: "" });
    await demandPending(certificate);
    expect(await attemptsOf(certificate.id)).toEqual([]);
    await issueCertificate(certificate.id, whole, signClock);
    await demandIssuedOnce(certificate);
  });

  it("and another that issue the same certificate at the same time store it once", async () => {
    const said = await Promise.all(
      Array.from({ length: 3 }, () => issueCertificate(certificate.id, whole, signClock)),
    );
    expect(said.toSorted()).toEqual(["issued", "nothing to do", "nothing to do"]);
    await demandIssuedOnce(certificate);
    expect(await attemptsOf(certificate.id)).toEqual([]);
  });

  it("finds the job that the sign-off left, comes back to it after a failure, and has none afterwards", async () => {
    const work = {
      carrier: { kind: "file" as const, carry: fails("no mail") },
      publicUrl: "https://x.example",
    };
    expect(await jobOf(certificate.id)).toMatchObject({ attempts: 0 });
    const clock = () => new Date();
    await workOff(database.jobsUrl, { ...work, clock, seal: fails("no key yet") });
    // Under load the queue may come back to it once more before it is stopped.
    const failed = await jobOf(certificate.id);
    expect(failed.attempts).toBeGreaterThan(0);
    expect(failed.last_error).toMatch(/no key yet/);
    await demandPending(certificate);
    await admin.query("UPDATE graphile_worker._private_jobs SET run_at = now()");
    await workOff(database.jobsUrl, { ...work, clock });
    await demandIssuedOnce(certificate);
    expect(await jobOf(certificate.id)).toBeUndefined();
  });
});

it("tells the customer of each certificate once, when its document is there", async () => {
  const letters = await readyLetters();
  const [first] = letters;
  const counts = letters
    .filter(({ recipient }) => recipient === first?.recipient)
    .map(({ subject }) =>
      Number(/^(\d+) certificates? of your order O-\d+ (?:is|are) ready$/.exec(subject)?.[1]),
    );
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(8);
});
