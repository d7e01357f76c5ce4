import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { tokenIn } from "@/lib/domain/machine/program";
import { WireOrder, WireOrderPage } from "@/lib/domain/machine/wire/order";
import { execute } from "@/lib/operations/execute";
import { admitProgram } from "@/lib/operations/machine/admit-program";
import { makeLaboratoryToken, makeToken } from "@/lib/operations/machine/make-token";
import { requestWorkOnce } from "@/lib/operations/machine/request-work";
import { revokeToken } from "@/lib/operations/machine/revoke-token";
import { wireOrdersView, wireOrderView } from "@/lib/views/machine/wire-orders";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "@/tests/support/front-desk";

let lab: FrontDesk;

beforeAll(async () => {
  lab = await openFrontDesk();
});
afterAll(() => lab?.close());

const all = { name: "Plant system", scopes: ["orders:read", "orders:write", "certificates:read"], days: 30 };
const bearer = (token: string): string => `Bearer ${token}`;
const later = (seconds: number) => () => new Date(clock().getTime() + seconds * 1000);

const work = {
  purchaseOrder: "PO-77",
  lines: [
    {
      typeLetter: "N",
      construction: "3 mm mineral-insulated, 500 mm",
      protection: "metal-sheath",
      quantity: 2,
      temperatureUnit: "F",
      setpoints: [1000, 1500],
    },
  ],
};

const northern = async () => {
  const { id, token } = await execute(makeToken, lab.northern.actor, all, clock);
  const admitted = await admitProgram(bearer(token), "orders:read", clock);
  if (admitted.kind !== "admitted") throw new Error(admitted.kind);
  return { id, token, program: admitted.program };
};

describe("a token", () => {
  it("is shown once and stored nowhere, not in the audit log either", async () => {
    const { token } = await northern();
    expect(tokenIn(bearer(token))).toBe(token);
    const stored = await inScope({ kind: "laboratory" }, async (tx) =>
      JSON.stringify([await tx.accessToken.findMany(), await auditSentences()]),
    );
    expect(stored).not.toContain(token);
    expect(stored).toContain(token.slice(0, 10));
  });

  it("opens what it was made for, until its day, and not after it was revoked", async () => {
    const made = await execute(makeToken, lab.northern.actor, { ...all, scopes: ["orders:read"] }, clock);
    const ask = (at = clock, scope: "orders:read" | "certificates:read" = "orders:read") =>
      admitProgram(bearer(made.token), scope, at);
    expect((await ask()).kind).toBe("admitted");
    expect((await ask(clock, "certificates:read")).kind).toBe("closed");
    expect((await ask(later(30 * 86_400 - 1))).kind).toBe("admitted");
    expect((await ask(later(30 * 86_400))).kind).toBe("unknown");
    await execute(revokeToken, lab.northern.actor, { id: made.id }, clock);
    expect((await ask()).kind).toBe("unknown");
    expect(await refusalOf(execute(revokeToken, lab.northern.actor, { id: made.id }, clock))).toMatchObject({
      code: "wrong-state",
    });
  });

  it("is nobody else's to revoke, nor anybody's who may not set things for their customer", async () => {
    const { id } = await northern();
    expect(await refusalOf(execute(revokeToken, lab.southern.actor, { id }, clock))).toMatchObject({
      code: "not-found",
    });
    const reader = { ...lab.northern.actor, roles: ["customer"] } as typeof lab.northern.actor;
    for (const attempt of [
      execute(makeToken, reader, all, clock),
      execute(revokeToken, reader, { id }, clock),
    ])
      expect(await refusalOf(attempt)).toMatchObject({ code: "not-permitted" });
  });

  it.each([
    null,
    "",
    "Bearer",
    "Bearer x",
    "Basic emf_x",
    `Bearer emf_${"a".repeat(43)}`,
    `bearer emf_${"a".repeat(43)}`,
  ])("is not: %j", async (header) => {
    expect((await admitProgram(header, "orders:read", clock)).kind).toBe("unknown");
  });

  it("may ask 120 times a minute and then waits, whatever others ask", async () => {
    const [first, second] = [await northern(), await northern()];
    const at = later(600);
    const asked = await Promise.all(
      Array.from({ length: 130 }, () => admitProgram(bearer(first.token), "orders:read", at)),
    );
    const kinds = (kind: string) => asked.filter((answer) => answer.kind === kind).length;
    expect([kinds("admitted"), kinds("too-many")]).toEqual([120, 10]);
    expect((await admitProgram(bearer(second.token), "orders:read", at)).kind).toBe("admitted");
    expect((await admitProgram(bearer(first.token), "orders:read", later(660))).kind).toBe("admitted");
  });

  it("of the laboratory reads and requests no work", async () => {
    const manager = { ...lab.frontDesk, roles: ["quality-manager"] } as typeof lab.frontDesk;
    expect(await refusalOf(execute(makeLaboratoryToken, manager, all, clock))).toMatchObject({
      fields: { scopes: expect.stringContaining("customer") },
    });
    const { token } = await execute(makeLaboratoryToken, manager, { ...all, scopes: ["orders:read"] }, clock);
    const admitted = await admitProgram(bearer(token), "orders:read", clock);
    expect(admitted).toMatchObject({ kind: "admitted", program: { customerId: null } });
  });
});

describe("a request for work", () => {
  it("becomes one requested order however often it is sent, at once too", async () => {
    const { program } = await northern();
    const key = "0c5f7a52-0001";
    const sent = await Promise.all(
      Array.from({ length: 8 }, () => requestWorkOnce(program, key, work, clock)),
    );
    expect(new Set(sent.map(({ number }) => number)).size).toBe(1);
    expect(sent.filter(({ isNew }) => isNew)).toHaveLength(1);
    const order = await wireOrderView(program, sent[0]!.number);
    expect(WireOrder.parse(order)).toMatchObject({
      state: "requested",
      purchaseOrder: "PO-77",
      quantity: 2,
      lines: [{ setpoints: ["1000", "1500"], temperatureUnit: "F" }],
    });
    expect((await auditSentences()).at(-1)).toBe(
      `order.requested: requested work as order ${sent[0]!.number}: 1 line, 2 sensors`,
    );
  });

  it("is nothing to another customer's program", async () => {
    const { program } = await northern();
    const { number } = await requestWorkOnce(program, "0c5f7a52-0002", work, clock);
    const made = await execute(makeToken, lab.southern.actor, all, clock);
    const admitted = await admitProgram(bearer(made.token), "orders:read", clock);
    if (admitted.kind !== "admitted") throw new Error(admitted.kind);
    expect(await wireOrderView(admitted.program, number)).toBeNull();
    expect((await wireOrdersView(admitted.program, null)).orders).toEqual([]);
    // The same key of somebody else is another request.
    expect((await requestWorkOnce(admitted.program, "0c5f7a52-0002", work, clock)).isNew).toBe(true);
  });

  it.each([
    ["no key", null, work, "requestKey"],
    ["a short key", "short", work, "requestKey"],
    ["no lines", "0c5f7a52-0003", { lines: [] }, "request.lines"],
    ["not JSON of ours", "0c5f7a52-0004", "text", "request"],
    ["a field of ours they may not set", "0c5f7a52-0005", { ...work, state: "accepted" }, "request"],
    [
      "a setpoint below absolute zero",
      "0c5f7a52-0006",
      { lines: [{ ...work.lines[0], setpoints: [-4000] }] },
      "lines.0.setpoints",
    ],
  ])("with %s is refused at its place, and nothing is stored", async (_what, key, request, field) => {
    const { program } = await northern();
    const before = await wireOrdersView(program, null);
    const refusal = await refusalOf(requestWorkOnce(program, key, request, clock));
    expect(refusal.code).toBe("invalid");
    expect(Object.keys(refusal.fields ?? {})).toContain(field);
    expect(await wireOrdersView(program, null)).toEqual(before);
  });

  it("is listed 50 a page, none lost and none twice", async () => {
    const { program } = await northern();
    for (let at = 0; at < 52; at++) await requestWorkOnce(program, `0c5f7a52-1${at}00`, work, clock);
    const first = WireOrderPage.parse(await wireOrdersView(program, null));
    const second = WireOrderPage.parse(await wireOrdersView(program, first.next));
    const numbers = [...first.orders, ...second.orders].map(({ number }) => number);
    expect(first.orders).toHaveLength(50);
    expect([second.next, new Set(numbers).size]).toEqual([null, numbers.length]);
    expect(numbers).toEqual(numbers.toSorted().toReversed());
  });
});
