import { expect, it } from "vitest";
import { orderProgress } from "@/lib/domain/order/progress";

const states = (...given: Parameters<typeof orderProgress>) =>
  orderProgress(...given)
    .steps.map(({ state }) => state)
    .join(" ");

it("stands where its slowest sensor stands, and never beyond what has arrived", () => {
  expect(states("recorded", 2, [])).toBe("now next next next next");
  expect(states("accepted", 2, [])).toBe("done now next next next");
  expect(states("accepted", 2, ["collected"])).toBe("done now next next next");
  expect(states("accepted", 2, ["issued", "loaded"])).toBe("done done now next next");
  expect(states("accepted", 2, ["issued", "in-review"])).toBe("done done done now next");
  expect(states("completed", 2, ["issued", "issued"])).toBe("done done done done now");
  expect(states("completed", 2, ["collected", "collected"])).toBe("done done done done done");
  expect(states("cancelled", 2, ["received", "received"])).toBe("stopped next next next next");
});
