import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { insertRecoveryCodes } from "@/lib/data/account/second-factor-store";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { recoveryHash } from "@/lib/operations/one-time-code";
import { changeSigningPolicy } from "@/lib/operations/signing/change-policy";
import { accountPolicyView } from "@/lib/views/account-policy";
import { refusal } from "../../support/accounts";
import type { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import {
  inLaboratory,
  codeOf as oneTimeCode,
  signingPassword as password,
  personSessionRow,
} from "../../support/signatory";
import {
  at,
  both,
  failuresOf,
  form,
  type Signer,
  sign,
  signaturesOf,
  signersOf,
  type Typed,
} from "../../support/signers";

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

describe("the act", () => {
  it("keeps whose signature it is, what it means, by which means, and the hash that was shown", async () => {
    const signer = await newSigner();
    const built = await newRun();
    const input = await form(built, both(signer, at("10:00:00")));
    const { certificates } = await sign(signer, input, at("10:00:00"));
    const [signature] = await signaturesOf(signer);
    expect(signature).toMatchObject({
      ...{ certificateId: certificates[0]!.id, printedName: signer.name, means: "password+code" },
      ...{ meaning: "reviewed-and-authorised", actId: input.act.actId, signedAt: at("10:00:00") },
    });
    expect(hex(signature!.reviewedHash)).toBe(input.items[0]!.reviewedHash);
    const certificate = await inLaboratory((tx) =>
      tx.certificate.findUniqueOrThrow({ where: { id: certificates[0]!.id } }),
    );
    expect(hex(signature!.contentHash)).toBe(hex(certificate.contentHash));
    expect(JSON.parse(certificate.content).authorisedBy).toEqual({
      ...{ name: signer.name, role: "Signatory", on: "2026-03-05", at: "2026-03-05T10:00:00.000Z" },
      meaning: "I reviewed these results and authorise their release.",
    });
  });

  it("needs both at first, one of them within 15 minutes of the last, and both again afterwards", async () => {
    const signer = await newSigner();
    const fieldsOf = async (typed: Typed, when: Date) => {
      const answer = await refusal(signNew(signer, typed, when));
      return answer === "answered" ? answer : Object.keys(answer.fields ?? {});
    };
    expect(await fieldsOf({}, at("10:00:00"))).toEqual(["password", "secretCode"]);
    expect(await fieldsOf({ password }, at("10:00:00"))).toEqual(["secretCode"]);
    expect(await fieldsOf({ code: both(signer, at("10:00:00")).code }, at("10:00:00"))).toEqual(["password"]);
    await signNew(signer, both(signer, at("10:00:00")), at("10:00:00"));
    expect(await fieldsOf({}, at("10:01:00"))).toEqual(["password"]);
    await signNew(signer, { password }, at("10:14:00"));
    await signNew(signer, { code: both(signer, at("10:28:00")).code }, at("10:28:00"));
    expect(await fieldsOf({ password }, at("10:43:00"))).toEqual(["secretCode"]);
    await signNew(signer, both(signer, at("10:44:00")), at("10:44:00"));
    const signatures = await signaturesOf(signer);
    expect(signatures.map(({ means }) => means)).toEqual([
      "password+code",
      "password",
      "code",
      "password+code",
    ]);
    expect(new Set(signatures.map(({ signingSessionId }) => signingSessionId)).size).toBe(2);
    expect(await failuresOf(signer)).toEqual({ failures: 0, reasons: [] });
  });

  it("counts what is wrong although nothing is signed: another's code, a recovery code, a wrong password", async () => {
    const signer = await newSigner();
    const now = at("10:00:00");
    const other = oneTimeCode(world.people.signatory.personId, now);
    expect(await codeOf(signNew(signer, { password, code: other }, now))).toBe("invalid");
    await inLaboratory(async (tx) => {
      const factor = await tx.secondFactor.findFirstOrThrow({ where: { personId: signer.personId } });
      await insertRecoveryCodes(tx, factor.id, [recoveryHash("abcd-efgh-jkmn-pqrs")]);
    });
    expect(await codeOf(signNew(signer, { password, code: "abcd-efgh-jkmn-pqrs" }, now))).toBe("invalid");
    expect(await codeOf(signNew(signer, { ...both(signer, now), password: "another" }, now))).toBe("invalid");
    expect(await failuresOf(signer)).toEqual({
      failures: 3,
      reasons: ["wrong-code", "wrong-code", "wrong-password"],
    });
    expect(await signaturesOf(signer)).toEqual([]);
    // A wrong password used no code up.
    await signNew(signer, both(signer, now), now);
  });

  it("locks the account as a sign-in does, and then signs nothing", async () => {
    const signer = await newSigner();
    await inLaboratory((tx) =>
      tx.laboratory.update({ where: { id: "laboratory" }, data: { accountPolicy: '{"lockAfter":5}' } }),
    );
    const input = await form(await newRun(), { password: "another", code: "123456" });
    for (let tried = 0; tried < 5; tried += 1)
      expect(await codeOf(sign(signer, input, at("10:00:00")))).toBe("invalid");
    const right = { ...input, act: { ...input.act, ...both(signer, at("10:00:30")) } };
    expect(await codeOf(sign(signer, right, at("10:00:30")))).toBe("too-many");
    const events = await inLaboratory((tx) =>
      tx.auditEvent.findMany({ where: { entityId: signer.personId, action: "account.locked" } }),
    );
    expect(events).toHaveLength(1);
    expect(await signaturesOf(signer)).toEqual([]);
  });

  it("is slowed down after five wrong tries", async () => {
    const signer = await newSigner();
    await inLaboratory((tx) =>
      tx.laboratory.update({ where: { id: "laboratory" }, data: { accountPolicy: "{}" } }),
    );
    const input = await form(await newRun(), { password: "another", code: "123456" });
    for (let tried = 0; tried < 5; tried += 1) await codeOf(sign(signer, input, at("10:00:00")));
    expect(await codeOf(sign(signer, input, at("10:00:01")))).toBe("too-many");
    expect((await failuresOf(signer)).failures).toBe(5);
  });
});

it("lasts as long as the laboratory says, from now on", async () => {
  const signer = await newSigner();
  await signNew(signer, both(signer, at("10:00:00")), at("10:00:00"));
  const { version } = await accountPolicyView(world.people.quality);
  const change = { version, policy: { windowMinutes: 5, longestHours: 8 } };
  const save = (actor: Actor, input = change) =>
    execute(changeSigningPolicy, actor, input, () => at("10:04:00"));
  expect(await codeOf(save(signer))).toBe("not-permitted");
  await save(world.people.quality);
  expect(await codeOf(save(world.people.quality))).toBe("rule");
  expect(await codeOf(signNew(signer, { password }, at("10:05:00")))).toBe("invalid");
  const { signing, version: next } = await accountPolicyView(world.people.quality);
  expect(signing).toEqual(change.policy);
  expect(
    await codeOf(save(world.people.quality, { ...change, policy: { windowMinutes: 15, longestHours: 8 } })),
  ).toBe("changed-meanwhile");
  await save(world.people.quality, { version: next, policy: { windowMinutes: 15, longestHours: 8 } });
  await signNew(signer, { password }, at("10:05:00"));
});

describe("who may not sign", () => {
  const now = at("10:00:00");
  const code = async (signer: Signer, actor: Actor = signer) =>
    codeOf(signNew(actor, both(signer, now), now));

  it("nobody without a sign-in, with another's, with one that ended, or at the bench", async () => {
    const signer = await newSigner();
    const { sessionId: _, ...nowhere } = signer;
    expect(await code(signer, nowhere as Actor)).toBe("not-permitted");
    expect(await code(signer, { ...signer, sessionId: world.people.signatory.sessionId })).toBe(
      "not-permitted",
    );
    expect(await code(signer, { ...signer, session: "bench" })).toBe("not-permitted");
    const bench = await inLaboratory((tx) => personSessionRow(tx, signer.personId, "bench"));
    expect(await code(signer, { ...signer, sessionId: bench })).toBe("not-permitted");
    await inLaboratory((tx) =>
      tx.personSession.update({ where: { id: signer.sessionId }, data: { endedAt: at("09:59:00") } }),
    );
    expect(await code(signer)).toBe("not-permitted");
    expect(await failuresOf(signer)).toEqual({ failures: 0, reasons: [] });
  });

  it("nobody without one-time codes: told where to set them up", async () => {
    const signer = await newSigner();
    await inLaboratory((tx) =>
      tx.secondFactor.updateMany({ where: { personId: signer.personId }, data: { endedAt: now } }),
    );
    expect(await refusal(signNew(signer, { password, code: "123456" }, now))).toMatchObject({
      code: "rule",
      message: expect.stringContaining("“Your account”"),
    });
  });

  it("nobody whose role was taken away after the page was opened", async () => {
    const signer = await newSigner();
    const input = await form(await newRun(), both(signer, now));
    await inLaboratory((tx) => tx.personRole.deleteMany({ where: { personId: signer.personId } }));
    expect(await codeOf(sign(signer, input, now))).toBe("not-permitted");
    expect(await signaturesOf(signer)).toEqual([]);
  });

  it.each<[string, object | null, Partial<Parameters<typeof buildRun>[1]>, RegExp]>([
    ["none", null, {}, /you hold no authorisation/],
    ["over", { validUntil: new Date("2026-03-04") }, {}, /ended on 2026-03-04/],
    ["another type", { typeLetters: "S" }, { typeLetter: "K" }, /of type K.*is for S/],
    ["its range", { toCelsius: 500 }, {}, /−200 °C to 500 °C/],
    [
      "the scope",
      { scope: "inside" },
      {
        change: (point) =>
          point.state === "measured"
            ? { ...point, scope: { state: "outside", capabilityCelsius: null } as never }
            : point,
      },
      /outside the laboratory's scope/,
    ],
  ])("nobody beyond their authorisation: %s", async (_, authorised, options, message) => {
    const signer = await newSigner(authorised);
    const input = await form(await newRun(options), both(signer, now));
    expect(await refusal(sign(signer, input, now))).toMatchObject({
      code: "rule",
      message: expect.stringMatching(message),
    });
    expect(await signaturesOf(signer)).toEqual([]);
  });
});
