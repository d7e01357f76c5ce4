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
});

it("of a cancelled order says so, and what goes back", () => {
  expect(states("cancelled", 2, [])).toBe("done stopped");
  const here = orderProgress("cancelled", 2, ["received", "collected"]);
  expect(here.steps.map(({ label }) => label)).toEqual(["Ordered", "Received", "Cancelled", "Handed back"]);
  expect(here.steps.at(-1)?.state).toBe("now");
  expect(here.next).toBe("This order was cancelled. 1 sensor of yours is still here and goes back to you.");
  expect(states("cancelled", 1, ["collected"])).toBe("done done stopped done");
});

it("says what it waits for where the work does not go on", () => {
  const next = (...given: Parameters<typeof orderProgress>) => orderProgress(...given).next;
  expect(next("accepted", 1, ["received"], { held: 1 })).toContain("stands still until something");
  expect(next("accepted", 1, ["received"], { held: 1, isAsked: true })).toContain("your answer");
  expect(next("accepted", 2, ["received", "received"], { held: 1 })).toBe("We measure your sensors.");
  const another = { replaced: 1, replacedSerials: ["W1"] };
  expect(next("accepted", 1, [], another)).toBe(
    "We wait for another sensor in the place of W1. Send or bring it, with the order number.",
  );
  expect(next("accepted", 3, ["received"], another)).toMatch(
    /^2 of 3 have not reached us yet: send or bring them.*place of W1/,
  );
});

it("says what of it is still to come, and what is gone already", () => {
  const offered = (offer: "waiting" | "declined") => orderProgress("recorded", 1, [], { offer }).next;
  expect(offered("waiting")).toBe("Our offer waits for your answer.");
  expect(offered("declined")).toContain("You declined our offer");
  expect(orderProgress("accepted", 1, [], { offer: "waiting" }).next).toMatch(/^Send or bring/);
  const ten = orderProgress("accepted", 10, ["loaded", "loaded", "issued", "collected"]);
  expect(ten.next).toBe("6 of 10 have not reached us yet: send or bring them, with the order number.");
  expect(ten.steps.at(-1)?.label).toBe("1 of 10 handed back");
  expect(orderProgress("accepted", 2, []).next).toMatch(/^Send or bring your sensors/);
  expect(orderProgress("accepted", 2, ["received"]).next).toMatch(/^1 of 2 has not .* send or bring it,/);
  const three = orderProgress("completed", 3, ["issued", "issued", "collected"]);
  expect(three.steps.at(-1)).toEqual({ label: "1 of 3 handed back", state: "now" });
  expect(three.next).toMatch(/^Collect the others/);
  expect(orderProgress("completed", 2, ["issued", "collected"]).next).toMatch(/^Collect the other one/);
  const back = orderProgress("completed", 1, ["collected"]);
  expect(back.steps.at(-1)?.label).toBe("Handed back");
});

it("lets what goes back unmeasured keep nothing from going on", () => {
  expect(states("accepted", 2, ["received", "issued"], { goingBack: 1 })).toBe("done done done done now");
  expect(states("accepted", 2, ["received", "received"], { goingBack: 1 })).toBe("done done now next next");
  const back = orderProgress("accepted", 1, ["received"], { goingBack: 1 });
  expect(back.steps.map(({ label, state }) => `${label} ${state}`)).toEqual([
    ...["Ordered done", "Received done", "Handed back now"],
  ]);
  expect(back.next).toContain("unmeasured");
  expect(states("completed", 1, ["collected"], { goneUnmeasured: 1 })).toBe("done done done");
});
