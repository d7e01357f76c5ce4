import { describe, expect, it } from "vitest";
import {
  canOrderBecome,
  decideAmendment,
  decideCancellation,
  isOrderFinished,
  orderStates,
} from "@/lib/domain/order/transitions";
import type { SensorState } from "@/lib/domain/sensor/transitions";

const states = (...of: SensorState[]) => of.map((state) => ({ state }));

describe("the states of an order", () => {
  it("go one way", () => {
    const ways = orderStates.flatMap((from) =>
      orderStates.filter((to) => canOrderBecome(from, to)).map((to) => `${from} > ${to}`),
    );
    expect(ways).toEqual([
      "requested > recorded",
      "requested > cancelled",
      "recorded > accepted",
      "recorded > cancelled",
      "accepted > completed",
      "accepted > cancelled",
    ]);
  });

  it("fix the lines once accepted", () => {
    expect(orderStates.filter((state) => decideAmendment(state).ok)).toEqual(["recorded"]);
  });

  it("are complete when each sensor ordered came and is done", () => {
    expect(isOrderFinished(2, states("issued", "collected"))).toBe(true);
    expect(isOrderFinished(3, states("issued", "collected"))).toBe(false);
    expect(isOrderFinished(2, states("issued", "in-review"))).toBe(false);
    const gone = { state: "collected", isReplaced: true } as const;
    expect(isOrderFinished(2, [...states("issued"), gone]), "another is awaited").toBe(false);
    expect(isOrderFinished(2, [...states("issued", "issued"), gone])).toBe(true);
    expect(isOrderFinished(1, [...states("issued"), { ...gone, state: "received" }])).toBe(false);
  });

  it("do not throw away work that has begun", () => {
    expect(decideCancellation("accepted", [{ tag: "T-000001", state: "received" }]).ok).toBe(true);
    expect(decideCancellation("accepted", [{ tag: "T-000001", state: "loaded" }])).toMatchObject({
      refusal: { code: "wrong-state", message: expect.stringContaining("T-000001") },
    });
    expect(decideCancellation("completed", []).ok).toBe(false);
  });
});
