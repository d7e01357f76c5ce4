import { describe, expect, it } from "vitest";
import { composeAmendment } from "@/lib/domain/amendment/compose-amendment";
import { saidOtherwise } from "@/lib/domain/amendment/said-otherwise";
import type { Message } from "@/lib/domain/certificate/catalogue/message";
import { english } from "@/lib/domain/certificate/catalogue/settle";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import { howWritten } from "@/lib/domain/certificate/how-written";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import { demand } from "@/lib/domain/refusal";
import { meanings } from "@/lib/domain/signing/meaning";
import { inventedParts } from "../../support/certificate-parts";

/* A certificate that takes the place of another, in the languages of that one. All of it is invented. */

const issue = (number: string, sequence = 7) => ({
  ...{ number, issuedOn: "2026-03-09", exception: "" },
  signatory: {
    ...{ name: "Sam Signer", role: "Signatory" },
    ...{ at: "2026-03-09T10:00:00.000Z", meaning: meanings["reviewed-and-authorised"] },
  },
  authenticity: { address: `https://lab.example.test/authenticity/${number}` },
  log: { sequence, hash: String(sequence).padStart(64, "0") },
});
const amends = {
  kind: "amendment",
  number: "C-2026-0001",
  contentHash: "cd".repeat(32),
  reason: "The serial number was wrong.",
} as const;
const first = (language: "en" | "en-de") =>
  demand(composeCertificate(inventedParts(), issue("C-2026-0001"), howWritten({ language })));
const corrections = {
  ...{ serial: "4712", condition: "Scratched at the sheath", remark: "Serial as engraved." },
  ...{ protection: "alumina-sheath" as const, material: "Lot 8, roll 2", receivedOn: "2026-02-19" },
};
const remarked = "Remark on this change, no opinion or interpretation of the results: Serial as engraved.";

describe("an amendment", () => {
  it("has a translation of everything that is said now, and keeps those of what stays", () => {
    const before = first("en-de");
    const after = demand(composeAmendment(before, amends, corrections, issue("C-2026-0002")));
    const german = after.translations?.[0]?.texts ?? {};
    expect(german.Signatory).toBe("Zeichnungsberechtigt");
    expect(german[meanings["reviewed-and-authorised"]]).toMatch(/geprüft und gebe sie frei/);
    for (const given of [amends.reason, corrections.condition, corrections.material])
      expect(german[given], given).toBe("Wortlaut wie angegeben, nicht übersetzt.");
    // Nobody takes it for an opinion of somebody who is authorised for them, in either language.
    expect(after.statements).toContain(remarked);
    expect(german[remarked]).toBe(
      "Bemerkung zu dieser Änderung, keine Meinung oder Interpretation der Ergebnisse: „Serial as engraved.“ (Wortlaut wie angegeben)",
    );
    expect(after.item).toMatchObject({ protection: "Closed alumina sheath", material: "Lot 8, roll 2" });
    expect(german["Closed alumina sheath"]).toBe("Geschlossenes Aluminiumoxidrohr");
    expect(after.receivedOn).toBe("2026-02-19");
    const {
      [before.item.condition]: gone,
      [before.item.protection]: _,
      ...kept
    } = before.translations?.[0]?.texts ?? {};
    expect(german).toMatchObject(kept);
    expect(gone).toBeDefined();
    expect(german).not.toHaveProperty([before.item.condition]);
    expect(after.rows).toEqual(before.rows);
  });

  it("identifies each change of information: what it was, and what it is now (7.8.8.1)", () => {
    const before = first("en-de");
    const asked = { ...corrections, customerName: before.customer.name, purchaseOrder: "" };
    const after = demand(composeAmendment(before, amends, asked, issue("C-2026-0002")));
    const { item, receivedOn } = before;
    // What was typed and is as it was before is no change.
    expect(after.amends?.changes).toEqual([
      { what: "Purchase order", was: before.order.purchaseOrder, now: "" },
      { what: "Serial number", was: item.serial, now: "4712" },
      { what: "Protection", was: item.protection, now: "Closed alumina sheath" },
      { what: "Lot, roll, end", was: item.material ?? "", now: "Lot 8, roll 2" },
      { what: "Received on", was: receivedOn, now: "2026-02-19" },
      { what: "Condition at receipt", was: item.condition, now: "Scratched at the sheath" },
      { what: "Remark", was: "", now: "Serial as engraved." },
    ]);
    expect(after.translations?.[0]?.texts).toMatchObject({ "Received on": "Eingegangen am" });
    const replaced = composeAmendment(before, { ...amends, kind: "replacement" }, asked, null);
    expect(demand(replaced).amends).not.toHaveProperty("changes");
    const lot = { ...before, sets: [{ ...before, kind: "as-received" as const }] };
    const [ofOne] = saidOtherwise(lot as unknown as typeof before, after, { serial: "4712" });
    expect(english(ofOne!.what as Message)).toBe(`Serial number ${item.tag}`);
  });

  it("gives its reviewed form again", () => {
    const reviewed = demand(composeAmendment(first("en-de"), amends, corrections, null));
    const signed = demand(composeAmendment(first("en-de"), amends, corrections, issue("C-2026-0002")));
    expect(canonicalContent(reviewedForm(signed))).toBe(canonicalContent(reviewed));
  });

  it("says where the log stood when it was signed itself, and not where it stood before", () => {
    const { log } = demand(composeAmendment(first("en"), amends, {}, issue("C-2026-0002", 19)));
    expect(log).toEqual(issue("", 19).log);
    const { log: _, ...unlogged } = issue("C-2026-0002");
    expect(demand(composeAmendment(first("en"), amends, {}, unlogged))).not.toHaveProperty("log");
  });

  it("of a certificate from before there was a catalogue says nothing of one", () => {
    const { catalogue: _, ...old } = first("en");
    const after = demand(composeAmendment(old, amends, {}, issue("C-2026-0002")));
    expect(after).not.toHaveProperty("catalogue");
    expect(after).not.toHaveProperty("translations");
    expect(after).toMatchObject({ number: "C-2026-0002", amends, rows: old.rows });
  });
});
