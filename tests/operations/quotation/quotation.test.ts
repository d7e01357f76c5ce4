import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { readOffer } from "@/lib/domain/quotation/content";
import { conformityWords } from "@/lib/domain/quotation/point-words";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Role } from "@/lib/domain/staff/roles";
import { acknowledgeOrder } from "@/lib/operations/agreement/acknowledge";
import { agreeByLink } from "@/lib/operations/agreement/agree-by-link";
import { agreeInPortal } from "@/lib/operations/agreement/agree-in-portal";
import { recordAgreement } from "@/lib/operations/agreement/record";
import { execute } from "@/lib/operations/execute";
import { acceptOrder } from "@/lib/operations/order/accept";
import { amendOrder } from "@/lib/operations/order/amend";
import { makeQuotation } from "@/lib/operations/quotation/make";
import { offerStandingView } from "@/lib/views/quotation/offer-standing";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { offered, publicUrl, recordedPrices } from "../../support/offers";
import { answers, lineInput, orderInput, recorded } from "../../support/orders";
import { pdfPages } from "../../support/pdf-text";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const laboratory = { kind: "laboratory" } as const;
const link: Actor = { kind: "system", name: "link" };
const open = { decisionRuleAgreedBy: "", decisionRuleAgreedOn: "", purchaseOrder: "" };
const order = (more: object = {}) =>
  recorded(desk, orderInput(desk.northern.customerId, { ...open, ...more }));
const quotationOf = (number: string) =>
  inScope(laboratory, (tx) => tx.quotation.findUniqueOrThrow({ where: { number } }));
const orderOf = (number: string) =>
  inScope(laboratory, (tx) => tx.order.findUniqueOrThrow({ where: { number } }));
const counts = () =>
  inScope(laboratory, async (tx) => ({
    quotations: await tx.quotation.count(),
    papers: await tx.orderDocument.count(),
    links: await tx.customerLink.count(),
    mails: await tx.mailMessage.count(),
    agreements: await tx.agreement.count(),
  }));
const hashOf = async (number: string) => Buffer.from((await quotationOf(number)).contentHash).toString("hex");
const yes = { answer: "agreed", purchaseOrder: "PO 77", remark: "" } as const;

describe("an offer", () => {
  it("is refused, and leaves nothing, while something asked for has no price", async () => {
    const before = await counts();
    const refusal = await refusalOf(offered(desk, await order()));
    expect(refusal.message).toContain("line 1, type K: calibration");
    expect(await counts()).toEqual(before);
    await recordedPrices(desk);
  });

  it("says what is offered, hashed, numbered without a gap, as a paper, a link and a mail", async () => {
    const number = await order();
    const first = await offered(desk, number);
    const second = await offered(desk, await order());
    expect([first.number, second.number]).toEqual(["Q-2026-0001", "Q-2026-0002"]);
    const row = await quotationOf(first.number);
    expect(Buffer.from(row.contentHash)).toEqual(createHash("sha256").update(row.content).digest());
    expect(row).toMatchObject({ totalAmount: 3 * 5 * 2500 + 3 * 1250, currency: "GBP", orderVersion: 1 });
    const content = readOffer(row.content);
    expect(content.lines[0]?.points.map(({ setpoint }) => setpoint)).toEqual(
      [300, 500, 700, 900, 1000].map((at) => `${at} °C`),
    );
    expect(content.rule.plain).toContain("less 1 times the uncertainty U");
    // No bench stands in this database: that nothing can be done so is said, with the desk's reason.
    expect(content.remarks[0]).toMatch(/^Cannot be done as things stand: line 1: .* No furnace config/);
    const paper = await inScope(laboratory, (tx) =>
      tx.orderDocument.findUniqueOrThrow({
        where: { kind_number: { kind: "quotation", number: first.number } },
      }),
    );
    const text = (await pdfPages(paper.bytes)).join(" ");
    for (const part of [
      "Quotation",
      number,
      "Northern Heat Treatment",
      "300 °C",
      "412.50",
      "Until 2026-04-30",
    ])
      expect(text).toContain(part);
    const mail = await inScope(laboratory, (tx) =>
      tx.mailMessage.findFirstOrThrow({ where: { kind: "quotation" } }),
    );
    expect(mail.recipient).toBe("desk@example.org");
    expect(mail.body).toContain(`${publicUrl}/agree/`);
    expect(mail.body.replace(first.token, "")).not.toMatch(/412|GBP|type K|300 °C/);
    const hashes = await inScope(laboratory, (tx) =>
      tx.customerLink.findMany({ select: { tokenHash: true } }),
    );
    expect(hashes.map(({ tokenHash }) => tokenHash)).toContain(
      createHash("sha256").update(first.token).digest("hex"),
    );
    expect(JSON.stringify(hashes)).not.toContain(first.token);
    expect((await auditSentences()).join("\n")).toContain(
      `made offer ${first.number} for order ${number}: GBP`,
    );
  });

  it("is made by whoever records orders, for open orders, for a year at most", async () => {
    const number = await order();
    const make = (actor: Actor, validUntil: string) =>
      execute(makeQuotation, actor, { number, validUntil, publicUrl }, clock);
    expect((await refusalOf(make(desk.technician, "2026-04-30"))).code).toBe("not-permitted");
    expect((await refusalOf(make(desk.frontDesk, "2026-03-03"))).fields).toHaveProperty("validUntil");
    expect((await refusalOf(make(desk.frontDesk, "2027-06-01"))).fields).toHaveProperty("validUntil");
    const empty = await order({ lines: [{ ...lineInput, setpoints: "" }] });
    expect((await refusalOf(offered(desk, empty))).message).toContain("no setpoints");
  });

  it("says of a class without a rule that none is agreed, and not that nobody asked", async () => {
    const none = { decisionRule: "none", guardBandRatio: "", ...open } as const;
    const lines = [lineInput, { ...lineInput, tolerance: "none" as const }];
    const made = await offered(desk, await order({ ...none, lines }));
    const content = readOffer((await quotationOf(made.number)).content);
    const words = content.lines.map(({ points }) =>
      points.map(({ conformity }) => conformityWords[conformity]),
    );
    expect(words.map((said) => [...new Set(said)])).toEqual([["no rule agreed"], ["not asked for"]]);
    expect(content.remarks.join()).toContain(
      "no decision rule is agreed, so pass or fail is not stated: line 1:",
    );
    expect(content.remarks[0]).not.toContain("line 2");
  });
});

describe("an answer to it", () => {
  const byLink = (token: string, contentHash: string, more: object = {}) =>
    execute(agreeByLink, link, { token, name: "Nora North", contentHash, ...yes, ...more }, clock);

  it("by the link: kept with what was shown, settles the rule and the purchase order, once", async () => {
    const number = await order();
    const offer = await offered(desk, number);
    const hash = await hashOf(offer.number);
    expect((await refusalOf(byLink(offer.token, hash, { name: " " }))).fields).toHaveProperty("name");
    expect((await refusalOf(byLink(offer.token, "0".repeat(64)))).code).toBe("changed-meanwhile");
    await byLink(offer.token, hash);
    const said = await inScope(laboratory, (tx) =>
      tx.agreement.findFirstOrThrow({ orderBy: { saidAt: "desc" } }),
    );
    expect(said).toMatchObject({
      answer: "agreed",
      cameBy: "link",
      saidByName: "Nora North",
      saidById: null,
    });
    expect(Buffer.from(said.contentHash).toString("hex")).toBe(hash);
    expect(await orderOf(number)).toMatchObject({
      decisionRuleAgreedBy: "Nora North",
      purchaseOrder: "PO 77",
      version: 2,
    });
    const again = await refusalOf(byLink(offer.token, hash));
    const unknown = await refusalOf(byLink("a".repeat(43), hash));
    const over = await refusalOf(
      execute(
        agreeByLink,
        link,
        { token: offer.token, name: "N", contentHash: hash, ...yes },
        () => new Date("2026-05-01T00:00:01Z"),
      ),
    );
    expect([again.message, over.message]).toEqual([unknown.message, unknown.message]);
    expect((await auditSentences()).join("\n")).not.toContain("Nora");
    // With the rule agreed the order can be accepted.
    const agreed = { ...answers, version: 2, number, toldCustomer: "on" } as const;
    expect((await execute(acceptOrder, desk.frontDesk, agreed, clock)).openOffer).toBeNull();
  });

  it("is taken once where the link is pressed five times at once", async () => {
    const offer = await offered(desk, await order());
    const hash = await hashOf(offer.number);
    const all = await Promise.allSettled(Array.from({ length: 5 }, () => byLink(offer.token, hash)));
    expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
  });

  it("is refused where the order was changed since, and where a newer offer was made; says so; stores nothing", async () => {
    const number = await order();
    const old = await offered(desk, number);
    const newer = await offered(desk, number);
    const before = await counts();
    expect((await refusalOf(byLink(old.token, await hashOf(old.number)))).message).toContain("Another offer");
    const amended = {
      ...orderInput(desk.northern.customerId, { ...open, lines: [{ ...lineInput, quantity: "4" }] }),
    };
    const { customerId: _, ...terms } = amended;
    await execute(amendOrder, desk.frontDesk, { ...terms, number, version: 1 }, clock);
    const changed = await refusalOf(byLink(newer.token, await hashOf(newer.number)));
    expect(changed).toMatchObject({ code: "changed-meanwhile" });
    expect(changed.message).toContain("order was changed");
    expect(await counts()).toEqual(before);
  });

  it("is not undone by what changes no terms: an accepted order can still be agreed to", async () => {
    const number = await recorded(desk, orderInput(desk.northern.customerId));
    const offer = await offered(desk, number);
    // Whoever accepts reads that it is open, and is told so once more.
    const shown = await offerStandingView(desk.frontDesk, number, clock());
    expect(shown).toMatchObject({ number: offer.number, standing: "open", isNews: false });
    const review = { ...answers, number, toldCustomer: "on" } as const;
    const done = await execute(acceptOrder, desk.frontDesk, review, clock);
    expect(done.openOffer).toEqual({ number: offer.number, validUntil: "2026-04-30" });
    expect(await offerStandingView(desk.frontDesk, number, clock())).toBeNull();
    await byLink(offer.token, await hashOf(offer.number));
    // Its own purchase order number stays.
    expect((await orderOf(number)).purchaseOrder).toBe("PO 4711");
  });

  it("in the portal: by who may order, of their own customer alone", async () => {
    const offer = await offered(desk, await order());
    const contentHash = await hashOf(offer.number);
    const say = (actor: Actor) =>
      execute(agreeInPortal, actor, { quotation: offer.number, contentHash, ...yes }, clock);
    const as = (actor: Actor, ...roles: Role[]): Actor =>
      actor.kind === "customer" ? { ...actor, roles } : actor;
    expect((await refusalOf(say(as(desk.northern.actor, "customer")))).code).toBe("not-permitted");
    const foreign = as(desk.southern.actor, "customer", "customer-orderer");
    expect((await refusalOf(say(foreign))).code).toBe("not-found");
    await say(as(desk.northern.actor, "customer", "customer-orderer"));
    const said = await inScope(laboratory, (tx) =>
      tx.agreement.findFirstOrThrow({ where: { cameBy: "portal" } }),
    );
    expect(said.saidByName).toBe("Nora North");
  });

  it("to the desk: with who and how it came; declined, it settles nothing", async () => {
    const number = await order();
    const offer = await offered(desk, number);
    const said = {
      quotation: offer.number,
      name: "Nora North",
      contentHash: await hashOf(offer.number),
      ...yes,
    };
    expect((await refusalOf(execute(recordAgreement, desk.frontDesk, said, clock))).fields).toHaveProperty(
      "remark",
    );
    await execute(
      recordAgreement,
      desk.frontDesk,
      { ...said, answer: "declined", remark: "By telephone, too dear" },
      clock,
    );
    expect(await orderOf(number)).toMatchObject({
      decisionRuleAgreedBy: null,
      purchaseOrder: null,
      version: 1,
    });
    expect((await auditSentences()).at(-1)).toContain("recorded that the customer declined offer");
  });

  it("cannot be written to another offer's hash, in the database itself", async () => {
    const offer = await quotationOf((await offered(desk, await order())).number);
    const forged = inScope(laboratory, (tx) =>
      tx.agreement.create({
        data: {
          ...{ quotationId: offer.id, orderId: offer.orderId, customerId: offer.customerId },
          ...{ answer: "agreed", cameBy: "desk", saidByName: "x", saidAt: clock() },
          contentHash: Buffer.alloc(32),
        },
      }),
    );
    await expect(forged).rejects.toThrow();
  });
});

describe("the acknowledgment of an order", () => {
  it("is sent for an accepted order, numbered after it, at the agreed price, again after each press", async () => {
    const number = await order();
    const press = () => execute(acknowledgeOrder, desk.frontDesk, { number, publicUrl }, clock);
    expect((await refusalOf(press())).code).toBe("wrong-state");
    const offer = await offered(desk, number);
    const contentHash = await hashOf(offer.number);
    await execute(agreeByLink, link, { token: offer.token, name: "Nora North", contentHash, ...yes }, clock);
    await execute(acceptOrder, desk.frontDesk, { ...answers, version: 2, number, toldCustomer: "on" }, clock);
    expect((await press()).number).toBe(`${number}-A1`);
    expect((await press()).number).toBe(`${number}-A2`);
    const paper = await inScope(laboratory, (tx) =>
      tx.orderDocument.findUniqueOrThrow({
        where: { kind_number: { kind: "acknowledgment", number: `${number}-A1` } },
      }),
    );
    const text = (await pdfPages(paper.bytes)).join(" ");
    for (const part of ["Order acknowledgment", "Agreed by Nora North on 2026-03-04", "PO 77", "412.50"])
      expect(text).toContain(part);
    expect(
      await inScope(laboratory, (tx) => tx.mailMessage.count({ where: { kind: "acknowledgment" } })),
    ).toBe(2);
  });
});
