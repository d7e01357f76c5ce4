import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { configurePublicUrl, publicUrl } from "@/lib/data/public-url";
import { draftDocument } from "@/lib/operations/review/open-draft";
import { reviewRunView } from "@/lib/views/review-run";
import { refusal } from "../../support/accounts";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { inLaboratory, signingPassword as password } from "../../support/signatory";
import { at, both, failuresOf, form, sign, signaturesOf, signersOf } from "../../support/signers";

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

const { newRun, newSigner, signNew } = signersOf(() => world);

describe("an act twice", () => {
  const now = at("10:00:00");

  it("signs once: the request sent again is refused, and counts no failure", async () => {
    const signer = await newSigner();
    const input = await form(await newRun({ owners: ["north", "south"] }), both(signer, now));
    const [first, second] = input.items;
    await sign(signer, { ...input, items: [first!] }, now);
    for (const again of [
      { ...input, items: [first!] },
      { ...input, items: [second!] },
    ])
      expect(await codeOf(sign(signer, again, at("10:00:20")))).toBe("wrong-state");
    expect(await signaturesOf(signer)).toHaveLength(1);
    expect(await failuresOf(signer)).toEqual({ failures: 0, reasons: [] });
  });

  it("in parallel signs once, also for two runs", async () => {
    const signer = await newSigner();
    await signNew(signer, both(signer, now), now);
    const one = await form(await newRun(), { password });
    const other = await form(await newRun(), { password, actId: one.act.actId });
    const answers = await Promise.all(
      [one, other].map((input) => codeOf(sign(signer, input, at("10:01:00")))),
    );
    expect(answers.toSorted()).toEqual(["answered", "wrong-state"]);
    expect(await signaturesOf(signer)).toHaveLength(2);
  });

  it("two people, or one twice, at the same sensor: one certificate", async () => {
    const [signer, other] = [await newSigner(), await newSigner()];
    for (const one of [signer, other]) await signNew(one, both(one, now), now);
    const built = await newRun();
    const forms = await Promise.all([1, 2, 3].map(() => form(built, { password })));
    const actors = [signer, other, signer];
    const answers = await Promise.all(
      forms.map((input, index) => codeOf(sign(actors[index]!, input, at("10:01:00")))),
    );
    expect(answers.toSorted()).toEqual(["answered", "wrong-state", "wrong-state"]);
    const sensorId = built.sensors[0]!.id;
    expect(await inLaboratory((tx) => tx.certificate.count({ where: { sensorId } }))).toBe(1);
  });

  it("one code in parallel opens one session and signs once", async () => {
    const signer = await newSigner();
    const typed = both(signer, now);
    const forms = await Promise.all([1, 2, 3].map(async () => form(await newRun(), typed)));
    const answers = await Promise.all(forms.map((input) => codeOf(sign(signer, input, now))));
    expect(answers.toSorted()).toEqual(["answered", "invalid", "invalid"]);
    expect((await failuresOf(signer)).reasons).toEqual(["code-used", "code-used"]);
    expect(await signaturesOf(signer)).toHaveLength(1);
  });

  it("what was refused for its content signed nothing, and the session is not opened by it", async () => {
    const signer = await newSigner();
    const input = await form(await newRun(), both(signer, now));
    const moved = { ...input, items: [{ ...input.items[0]!, reviewedHash: "0".repeat(64) }] };
    expect(await codeOf(sign(signer, moved, now))).toBe("changed-meanwhile");
    expect(
      Object.keys(((await refusal(signNew(signer, { password }, now))) as { fields: object }).fields),
    ).toEqual(["secretCode"]);
    // Nor is the code used up by it.
    await signNew(signer, both(signer, now), now);
  });
});

describe("what no document could carry", () => {
  const now = at("10:00:00");
  const certificates = () => inLaboratory((tx) => tx.certificate.count());
  const refusedWith = async (
    built: Awaited<ReturnType<typeof newRun>>,
    meanwhile: () => Promise<unknown>,
  ) => {
    const signer = await newSigner();
    const input = await form(built, both(signer, now));
    const before = await certificates();
    await meanwhile();
    const answer = await refusal(sign(signer, input, now));
    expect(await signaturesOf(signer)).toEqual([]);
    expect(await certificates()).toEqual(before);
    // The code is still good.
    await signNew(signer, both(signer, now), now);
    return answer;
  };

  it("is refused before the signature: a character that the font lacks, told with its place and the remedy", async () => {
    const built = await newRun();
    const { id } = built.sensors[0]!;
    const construction = "mineral insulated, ⌀ 3 mm";
    const answer = await refusedWith(built, () =>
      inLaboratory((tx) => tx.sensor.update({ where: { id }, data: { construction } })),
    );
    expect(answer).toMatchObject({
      code: "rule",
      message: expect.stringMatching(/“⌀” \(U\+2300\), which stands in the construction of the item.*“Ø”/),
    });
    // The review says so too, and offers no signature; the draft says it instead of failing.
    const { sensors } = await reviewRunView(world.people.signatory, built.run.number);
    expect(sensors[0]).toMatchObject({ reviewedHash: null, obstacle: expect.stringContaining("“⌀”") });
    const draft = { runNumber: built.run.number, tag: built.sensors[0]!.tag };
    await expect(draftDocument(world.people.signatory, draft, () => now)).rejects.toThrow(/“⌀”/);
  });

  it("is refused before the signature: what its machine-readable form would contradict", async () => {
    const built = await newRun({
      change: (point) =>
        point.state === "measured" ? { ...point, conformity: { ...point.conformity, state: "fail" } } : point,
    });
    expect(await refusedWith(built, async () => {})).toMatchObject({
      code: "rule",
      message: expect.stringMatching(
        /rules of a DCC: Row 1 says fail, and its error and limits say otherwise/,
      ),
    });
  });

  it("is refused before the signature: an address too long for the code on each page", async () => {
    const signer = await newSigner();
    const input = await form(await newRun(), both(signer, now));
    const known = publicUrl();
    const label = "a".repeat(60);
    configurePublicUrl(`https://${[label, label, label].join(".")}.example`);
    const answer = await refusal(sign(signer, input, now));
    if (known) configurePublicUrl(known);
    else Reflect.deleteProperty(globalThis, "emfolioPublicUrl");
    expect(answer).toMatchObject({ message: expect.stringContaining("too long for a code of 20 mm") });
    await sign(signer, input, now);
  });
});

describe("what is signed was looked at", () => {
  const now = at("10:00:00");

  it("refuses a result that must be opened and was not, and a remark that is not settled", async () => {
    const signer = await newSigner();
    await signNew(signer, both(signer, now), now);
    const built = await newRun();
    const input = await form(built, { password });
    const late = await newSigner();
    expect(
      await refusal(sign(late, { ...input, act: { ...input.act, ...both(late, now) } }, now)),
    ).toMatchObject({
      code: "rule",
      message: expect.stringMatching(/You have not opened T-\d+ at/),
    });
    const remark = {
      ...{ runId: built.run.id, evaluationId: built.evaluation.id, sensorId: built.sensors[0]!.id },
      ...{ place: "error", writtenById: world.people.quality.personId, writtenAt: now },
    };
    const { id } = await inLaboratory((tx) =>
      tx.reviewComment.create({ data: { ...remark, text: "Is this the right reference?" } }),
    );
    expect(await refusal(sign(signer, input, now))).toMatchObject({
      code: "rule",
      message: expect.stringContaining("Is this the right reference?"),
    });
    await inLaboratory((tx) =>
      tx.reviewComment.create({ data: { ...remark, text: "It is.", answersId: id, settles: true } }),
    );
    await sign(signer, input, now);
  });
});
