import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { Corrections, TypedCorrections } from "@/lib/domain/amendment/amendment";
import { applyCorrections } from "@/lib/domain/amendment/apply-corrections";
import { composeAmendment } from "@/lib/domain/amendment/compose-amendment";
import { decideAsk } from "@/lib/domain/amendment/decide-amendment";
import { saidNow } from "@/lib/domain/amendment/said-now";
import { canonicalContent, contentHash } from "@/lib/domain/certificate/content-hash";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import { type Standing, standingSentence } from "@/lib/domain/certificate/standing";
import { newsOf } from "@/lib/domain/mail/news";
import { bilingual, lotOfTwelve, short } from "../../documents/certificate/examples";

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();
const hashOf = (content: typeof short) => Buffer.from(contentHash(content, sha256)).toString("hex");
const reason = "The customer's address was that of another works.";
const amends = { kind: "amendment" as const, number: short.number, contentHash: hashOf(short), reason };

describe("corrections", () => {
  it("change the named field and nothing else", () => {
    expect(applyCorrections(short, {})).toEqual(short);
    expect(applyCorrections(short, { purchaseOrder: "" }).order.purchaseOrder).toBe("");
    const { condition, ...item } = short.item;
    const corrected = applyCorrections(short, { condition: "Sheath cracked" });
    expect(corrected.item).toEqual({ ...item, condition: "Sheath cracked" });
    expect({ ...corrected, item: { ...corrected.item, condition } }).toEqual(short);
  });

  it("of a lot speak of the item that it is filed under, wherever it stands", () => {
    const { tag } = lotOfTwelve.item;
    const corrected = applyCorrections(lotOfTwelve, { serial: "CORRECTED" });
    expect(corrected.item.serial).toBe("CORRECTED");
    for (const [at, { item }] of (corrected.sets ?? []).entries())
      expect(item.serial).toBe(item.tag === tag ? "CORRECTED" : lotOfTwelve.sets?.[at]?.item.serial);
  });

  it("date the receipt of the item that it is filed under, in each of its sets, and of no other", () => {
    const { tag } = lotOfTwelve.item;
    const corrected = applyCorrections(lotOfTwelve, { receivedOn: "2026-01-02" });
    expect(corrected.receivedOn).toBe("2026-01-02");
    for (const [at, { item, receivedOn }] of (corrected.sets ?? []).entries())
      expect(receivedOn).toBe(item.tag === tag ? "2026-01-02" : lotOfTwelve.sets?.[at]?.receivedOn);
  });

  it("date no receipt after the measurement", () => {
    const asked = {
      content: short,
      standing: { kind: "valid" as const },
      failures: 0,
      isAskedAlready: false,
    };
    const receivedOn = "2099-01-01";
    expect(decideAsk({ ...asked, kind: "amendment", corrections: { receivedOn } })).toMatchObject({
      refusal: { fields: { "corrections.receivedOn": expect.stringContaining(short.performedFrom) } },
    });
  });

  it("are shown beside what is said now", () => {
    const corrections = { serial: "X", protection: "bare-wire" as const, material: "Lot 9" };
    expect(saidNow(applyCorrections(short, corrections))).toEqual({
      ...saidNow(short),
      ...{ serial: "X", protection: "Bare wire", material: "Lot 9" },
    });
  });

  it("are refused at their field where no certificate could print them; stored ones are read as they are", () => {
    const typed = { construction: "sheath ⌀ 3 mm" };
    expect(TypedCorrections.safeParse(typed).error?.issues).toMatchObject([
      { path: ["construction"], message: expect.stringContaining("Write “Ø” instead") },
    ]);
    expect(Corrections.safeParse(typed).success).toBe(true);
  });

  it("leave no translation behind of what is said no longer", () => {
    const said = Object.keys(bilingual.translations?.[0]?.texts ?? {});
    const { condition } = bilingual.item;
    const others = JSON.stringify({ ...bilingual, item: null, translations: null });
    const corrected = applyCorrections(bilingual, { condition: "Sheath cracked (given in English)" });
    const left = Object.keys(corrected.translations?.[0]?.texts ?? {});
    expect(left).toEqual(said.filter((text) => text !== condition || others.includes(JSON.stringify(text))));
  });
});

describe("what follows a certificate", () => {
  it("has a reviewed form that the signed one gives again", () => {
    const compose = (issue: Parameters<typeof composeAmendment>[3]) => {
      const composed = composeAmendment(short, amends, { remark: "Read again." }, issue);
      if (!composed.ok) throw new Error(composed.refusal.message);
      return composed.value;
    };
    const signed = compose({
      ...{ number: "C-2026-0099", issuedOn: "2026-05-04", exception: "" },
      signatory: { name: "Sam Signer", role: "Signatory" },
      authenticity: { address: "https://calibration.example/authenticity/x" },
    });
    expect(signed).toMatchObject({ number: "C-2026-0099", amends, issuedOn: "2026-05-04" });
    expect(canonicalContent(reviewedForm(signed))).toBe(canonicalContent(compose(null)));
  });

  it.each<readonly [Standing, RegExp]>([
    [{ kind: "pending" }, /still being made/],
    [{ kind: "withdrawn", reason, at: "2026-05-01T08:00:00.000Z" }, /withdrawn since 2026-05-01/],
    [{ kind: "amended", successor: "C-9", reason, at: "2026-05-01T08:00:00.000Z" }, /amended by C-9/],
    [{ kind: "replaced", successor: "C-9", reason, at: "2026-05-01T08:00:00.000Z" }, /replaced by C-9/],
  ])("is not asked for of one that is $kind", (standing, said) => {
    const asked = decideAsk({
      ...{ content: short, standing, failures: 0, isAskedAlready: false },
      ...{ kind: "amendment" as const, corrections: { serial: "X" } },
    });
    expect(asked).toMatchObject({ ok: false, refusal: { code: "wrong-state" } });
    if (!asked.ok) expect(asked.refusal.message).toMatch(said);
  });

  it("is asked for of one whose making failed: that may be for good", () => {
    const asked = { ...{ content: short, isAskedAlready: false, kind: "amendment" as const }, failures: 1 };
    expect(decideAsk({ ...asked, standing: { kind: "pending" }, corrections: { serial: "X" } }).ok).toBe(
      true,
    );
  });

  it("is told in one sentence to whoever holds the earlier one", () => {
    expect(standingSentence("C-1", { kind: "valid" })).toBe("C-1 is valid.");
    expect(standingSentence("C-1", { kind: "pending" })).toMatch(/being made/);
  });

  it.each(["amended", "replaced", "withdrawn"])("is told by letter where one is %s", (kind) => {
    const [news, ...others] = newsOf(`certificate.${kind}`);
    // A withdrawal of what is not made yet may be what the letter of the others waited for.
    expect(others.map((one) => one.kind)).toEqual(kind === "withdrawn" ? ["certificate-ready"] : []);
    const facts = { name: "Nora", laboratory: "L", orderNumber: "O-1", promisedOn: null, count: 1 };
    const letter = news!.compose({ ...facts, link: "https://x.example/portal/orders/O-1" });
    expect(news).toMatchObject({ kind: `certificate-${kind}`, to: "customer" });
    expect(letter.subject).toContain("O-1");
    expect(letter.body).toContain("https://x.example/portal/orders/O-1");
  });
});
