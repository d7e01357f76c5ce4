import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { execute } from "@/lib/operations/execute";
import { configureLaboratory } from "@/lib/operations/laboratory/configure";
import { setMark } from "@/lib/operations/laboratory/set-mark";
import { draftDocument } from "@/lib/operations/review/open-draft";
import { pdfPages } from "@/tests/support/pdf-text";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { refusalOf } from "../../support/front-desk";
import { issueNow } from "../../support/issue-now";
import { png } from "../../support/png";
import { signClock, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const laboratory = () =>
  inScope({ kind: "laboratory" }, (tx) => tx.laboratory.findUniqueOrThrow({ where: { id: "laboratory" } }));
const image = png(60, 30);
const put = async (mark: { bytes: Uint8Array; fileName: string } | null, actor = world.people.quality) =>
  execute(setMark, actor, { version: (await laboratory()).version, mark }, signClock);

/** 600 °C inside, 1000 °C outside. */
const partly = (point: EvaluatedPoint): EvaluatedPoint =>
  point.state !== "measured"
    ? point
    : {
        ...point,
        scope:
          point.nominalCelsius < 800
            ? { state: "inside", capabilityCelsius: 1, isRaised: false, source: "invented schedule" }
            : { state: "outside", capabilityCelsius: null, isRaised: false, source: null },
      };

describe("the accreditation mark", () => {
  it("is taken in by the quality manager alone, as an image that prints", async () => {
    expect((await refusalOf(put({ bytes: image, fileName: "m.png" }, world.people.signatory))).code).toBe(
      "not-permitted",
    );
    const svg = new TextEncoder().encode("<svg/>");
    expect((await refusalOf(put({ bytes: svg, fileName: "m.svg" }))).fields).toHaveProperty("mark");
    expect((await laboratory()).accreditationMarkId).toBeNull();
    await put({ bytes: image, fileName: "mark.png" });
    const { accreditationMarkId } = await laboratory();
    const kept = await inScope({ kind: "laboratory" }, (tx) =>
      tx.evidenceDocument.findUniqueOrThrow({ where: { id: accreditationMarkId ?? "" } }),
    );
    expect(hex(kept.sha256)).toBe(hex(sha256(image)));
    expect(kept.mediaType).toBe("image/png");
    expect(
      (await refusalOf(execute(setMark, world.people.quality, { version: 1, mark: null }, signClock))).code,
    ).toBe("changed-meanwhile");
  });

  it("reaches draft and certificate with wording and number where a point is inside, each outside marked", async () => {
    const { version, name, addressLines, contact, countryCode, performerMaySignOff } = await laboratory();
    const record = { version, name, addressLines, contact, countryCode, performerMaySignOff };
    const words = { accreditationText: "Accredited by an invented body", accreditationNumber: "INV 0000" };
    await execute(configureLaboratory, world.people.quality, { ...record, ...words }, signClock);
    const built = await buildRun(world, { owners: ["north"], change: partly });
    const input = { runNumber: built.run.number, tag: built.sensors[0]!.tag };
    const draft = (await pdfPages(await draftDocument(world.people.signatory, input, signClock))).join(" ");
    const [signed] = await signRun(world.people.signatory, built);
    await issueNow(signed!.id);
    const row = await inScope({ kind: "laboratory" }, (tx) =>
      tx.certificate.findUniqueOrThrow({
        where: { id: signed!.id },
        include: { files: { where: { mediaType: "application/pdf" } } },
      }),
    );
    const content = CertificateContent.parse(JSON.parse(row.content));
    expect(content.rows.map(({ scope }) => scope)).toEqual(["inside", "outside"]);
    expect(content.laboratory.accreditationMark?.sha256).toBe(hex(sha256(image)));
    const issued = (await pdfPages(row.files[0]!.bytes)).join(" ");
    for (const text of [draft, issued]) {
      expect(text).toContain("Accredited by an invented body");
      expect(text).toContain("INV 0000");
      expect(text).toMatch(/1000 °C\s+†/);
      expect(text).not.toMatch(/600 °C\s+†/);
    }
  });

  it("stays with the certificates that carry it when it is taken off, and reaches no other", async () => {
    await put(null);
    const built = await buildRun(world, { owners: ["north"], change: partly });
    const [signed] = await signRun(world.people.signatory, built);
    const rows = await inScope({ kind: "laboratory" }, (tx) =>
      tx.certificate.findMany({ orderBy: { number: "asc" } }),
    );
    const marks = rows.map(({ content }) => CertificateContent.parse(JSON.parse(content)).laboratory);
    expect(marks.map((one) => one.accreditationMark?.sha256)).toEqual([hex(sha256(image)), undefined]);
    expect(rows.at(-1)?.id).toBe(signed!.id);
  });

  it("claims nothing where no point is held against a scope", async () => {
    const built = await buildRun(world, { owners: ["south"] });
    const [signed] = await signRun(world.people.signatory, built);
    const row = await inScope({ kind: "laboratory" }, (tx) =>
      tx.certificate.findUniqueOrThrow({ where: { id: signed!.id } }),
    );
    expect(row.content).not.toContain("Accredited by an invented body");
    expect(row.content).not.toContain("INV 0000");
  });
});
