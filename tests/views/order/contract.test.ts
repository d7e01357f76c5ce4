import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { changeOrder } from "@/lib/operations/order/change";
import { raiseDifference } from "@/lib/operations/order/difference-raise";
import { settleDifference } from "@/lib/operations/order/difference-settle";
import { noteOrder } from "@/lib/operations/order/note";
import { orderContractView } from "@/lib/views/order/contract";
import { orderFormView } from "@/lib/views/order/order-form";
import { typedCapabilityView } from "@/lib/views/order/typed-capability";
import { refusalOf } from "../../support/front-desk";
import { accepted, orderInput } from "../../support/orders";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

describe("the contract of an order", () => {
  it("shows reviews, changes, differences and notes as they were made, with who", async () => {
    const number = await accepted(bench, orderInput(bench.northern.customerId));
    const raised = { number, text: "1200 °C asked" };
    const { differenceId } = await execute(raiseDifference, bench.frontDesk, raised, benchClock);
    const settled = { number, differenceId, text: "1150 °C", agreedWith: "Nora North" };
    await execute(settleDifference, bench.frontDesk, settled, benchClock);
    const form = await orderFormView(bench.frontDesk, number, benchClock());
    const change = {
      ...form,
      note: "soon",
      ...{ reason: "in a hurry", agreedWith: "Nora North", externalProviders: "none" },
      ...{ requirementsUnderstood: "on", capabilityAndResources: "on", methodSuitable: "on" },
    };
    await execute(changeOrder, bench.frontDesk, change as never, benchClock);
    const note = { number, kind: "told-customer" as const, text: "on Friday", isForCustomer: "on" };
    await execute(noteOrder, bench.technician, note, benchClock);
    const contract = await orderContractView(bench.frontDesk, number);
    expect(contract).toMatchObject({
      reviews: [
        { sequence: 1, isChange: false, who: "Ada Desk" },
        { sequence: 2, isChange: true, who: "Ada Desk" },
      ],
      differences: [{ text: "1200 °C asked", settlement: { agreedWith: "Nora North", who: "Ada Desk" } }],
      changes: [
        {
          reason: "in a hurry",
          differences: [{ where: "Note", before: "", after: "soon" }],
          who: "Ada Desk",
        },
      ],
      notes: [{ kind: "Told the customer", text: "on Friday", isForCustomer: true, who: "Tom Bench" }],
      mayDiffer: true,
      mayNote: true,
    });
    expect(contract.reviews[0]?.answers.map(({ answer }) => answer)).toEqual([
      "Yes",
      "Yes",
      "None is used",
      "Yes",
    ]);
    expect(await orderContractView(bench.technician, number)).toMatchObject({
      mayDiffer: false,
      mayNote: true,
    });
    expect(await refusalOf(orderContractView(bench.northern.actor, number))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("an order that is being typed", () => {
  const line = {
    ...{ typeLetter: "K", protection: "metal-sheath", temperatureUnit: "C", setpoints: "600 1000 1250" },
    ...{ tolerance: "own", ownLimit: "0.1", performedAt: "laboratory", providerId: "" },
  };
  const rule = { decisionRule: "guarded", guardBandRatio: "1", falseAcceptancePercent: "" };
  const ask = (typed: object) =>
    typedCapabilityView(bench.frontDesk, { lines: [{ ...line, ...typed }], rule }, benchClock());

  it("is answered point by point, and nothing is stored", async () => {
    const before = await inLaboratory((tx) => tx.auditEvent.count());
    const { answers, summary } = await ask({});
    expect(answers.map(({ setpoint, can, state }) => [setpoint, can, state])).toEqual([
      ["600 °C", "yes", "not-decidable"],
      ["1000 °C", "yes", "not-decidable"],
      ["1250 °C", "no", "unknown"],
    ]);
    expect(summary).toBe("2 of 3 points can be done here; 2 not decidable.");
    expect(await ask({ setpoints: "6oo" })).toEqual({ answers: [], summary: "" });
    expect(await inLaboratory((tx) => tx.auditEvent.count())).toBe(before);
  });

  it("is answered to whoever records orders", async () => {
    const asked = typedCapabilityView(bench.technician, { lines: [line], rule }, benchClock());
    expect(await refusalOf(asked)).toMatchObject({ code: "not-permitted" });
  });
});
