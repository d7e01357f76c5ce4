import { describe, expect, it } from "vitest";
import {
  canOrderBecome,
  decideAmendment,
  decideCancellation,
  isOrderFinished,
  orderStates,
} from "@/lib/domain/order/transitions";

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
    expect(isOrderFinished(2, ["issued", "collected"])).toBe(true);
    expect(isOrderFinished(3, ["issued", "collected"])).toBe(false);
    expect(isOrderFinished(2, ["issued", "in-review"])).toBe(false);
  });

  it("do not throw away work that has begun", () => {
    expect(decideCancellation("accepted", [{ tag: "T-000001", state: "received" }]).ok).toBe(true);
    expect(decideCancellation("accepted", [{ tag: "T-000001", state: "loaded" }])).toMatchObject({
      refusal: { code: "wrong-state", message: expect.stringContaining("T-000001") },
    });
    expect(decideCancellation("completed", []).ok).toBe(false);
  });
});
