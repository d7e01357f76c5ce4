import { describe, expect, it } from "vitest";
import { nextOfOrder, orderThread } from "@/lib/domain/order/thread";
import { sensorThread } from "@/lib/domain/sensor/thread";

const told = (...parts: Parameters<typeof orderThread>) =>
  orderThread(...parts)
    .filter(({ state }) => state !== "next")
    .map(({ label, state }) => `${label}: ${state}`);

describe("the thread of an order", () => {
  it("stands at the first bead that not all of its sensors have passed", () => {
    expect(told("recorded", 2, [])).toEqual(["Ordered: done", "Accepted: now"]);
    expect(told("accepted", 2, ["received"]).at(-1)).toBe("Received 1 of 2: now");
    expect(told("accepted", 2, ["in-review", "issued"]).slice(-2)).toEqual([
      "Evaluated: done",
      "Reviewed 1 of 2: now",
    ]);
    expect(told("completed", 2, ["collected", "collected"]).at(-1)).toBe("Collected: done");
    expect(told("cancelled", 2, [])).toEqual(["Ordered: done", "Cancelled: stopped"]);
  });

  it("of a cancelled order says what is here and goes back", () => {
    expect(told("cancelled", 3, ["received", "received"]).slice(2)).toEqual([
      "Received 2 of 3: done",
      "Cancelled: stopped",
      "Collected: now",
    ]);
    expect(told("cancelled", 2, ["received", "collected"]).at(-1)).toBe("Collected 1 of 2: now");
    expect(told("cancelled", 1, ["collected"]).at(-1)).toBe("Collected: done");
    expect(told("cancelled", 2, ["issued", "received"])).toContain("Issued 1 of 2: done");
  });

  it("counts in no furnace what is never loaded", () => {
    const back = { forProvider: { quantity: 0, sensors: [] }, unmeasured: ["collected"] as const };
    expect(told("accepted", 4, ["received", "received", "received"], back).at(-1)).toBe("Loaded: now");
    expect(told("accepted", 3, ["issued", "loaded"], back)).toContain("Measured 1 of 2: now");
    const provider = { forProvider: { quantity: 2, sensors: ["issued"] as const }, unmeasured: [] };
    expect(told("accepted", 3, ["loaded"], provider)).toContain("Received 2 of 3: now");
    // Nothing is ours to measure: no bead of the furnace at all.
    const all = { forProvider: { quantity: 1, sensors: ["issued"] as const }, unmeasured: [] };
    expect(told("accepted", 1, [], all)).toEqual([
      ...["Ordered: done", "Accepted: done", "Received: done", "Issued: done", "Collected: now"],
    ]);
  });

  it("says whose turn it is", () => {
    expect(nextOfOrder("accepted", 2, ["received", "received"])).toBe("A technician loads 2 sensors.");
    const aside = { replaced: 0, toHandBack: 0, forProvider: 1 };
    expect(nextOfOrder("accepted", 2, ["received", "received"], aside)).toBe("A technician loads 1 sensor.");
    expect(nextOfOrder("accepted", 2, ["received", "issued"], aside)).toMatch(
      /^An external provider measures 1 sensor/,
    );
    const held = { replaced: 0, toHandBack: 0, onHold: 1 };
    expect(nextOfOrder("accepted", 1, ["received"], held)).toBe(
      "1 sensor on hold waits until somebody settles why.",
    );
    expect(nextOfOrder("accepted", 1, ["received"], { ...held, isAsked: true })).toContain(
      "customer’s answer",
    );
    expect(nextOfOrder("accepted", 2, ["received", "received"], held)).toBe("A technician loads 1 sensor.");
    expect(nextOfOrder("completed", 1, ["issued"])).toBe("The front desk hands 1 sensor back.");
    const withdrawn = { replaced: 0, toHandBack: 0, withdrawn: 1 };
    expect(nextOfOrder("completed", 1, ["issued"], withdrawn)).toBe(
      "The front desk hands 1 sensor back. Its certificate is withdrawn: agree with the customer first.",
    );
    expect(nextOfOrder("completed", 3, ["issued", "issued", "issued"], withdrawn)).toMatch(
      /^The front desk hands 3 sensors back\. The certificate of 1 of them is withdrawn/,
    );
    expect(nextOfOrder("completed", 1, ["collected"])).toBe("Nothing is left to do here.");
    expect(nextOfOrder("cancelled", 2, ["received"])).toBe("The front desk hands 1 sensor back.");
  });
});

describe("the thread of a sensor", () => {
  it.each([
    ["received", "loaded"],
    ["loaded", "measured"],
    ["measured", "evaluated"],
    ["evaluated", "in-review"],
    ["in-review", "in-review"],
    ["issued", "collected"],
  ] as const)("of one that is %s is at work on %s", (state, bead) => {
    const beads = sensorThread(state, false);
    expect(beads.filter((one) => one.state === "now").map(({ key }) => key)).toEqual([bead]);
    expect(beads.find(({ key }) => key === "received")?.state).toBe("done");
  });

  it("ends behind its last bead, or early without a certificate", () => {
    expect(sensorThread("collected", false).every(({ state }) => state === "done")).toBe(true);
    expect(sensorThread("collected", true).at(-1)?.state).toBe("stopped");
  });
});
