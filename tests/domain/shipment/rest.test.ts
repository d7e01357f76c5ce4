import { describe, expect, it } from "vitest";
import { restForCustomer, restOnNote } from "@/lib/domain/shipment/rest";

const rest = (remaining: number, finished: number) => ({ remaining, finished });

describe("what is not sent back yet", () => {
  it("is promised “when finished” only where it is not finished", () => {
    for (const say of [restForCustomer, restOnNote]) {
      expect(say(rest(3, 0))).toContain("when");
      expect(say(rest(3, 1))).toMatch(/1 is finished.*when/);
      expect(say(rest(3, 2))).toMatch(/2 are finished.*when/);
      for (const count of [1, 3]) {
        expect(say(rest(count, count))).toContain("another delivery");
        expect(say(rest(count, count))).not.toContain("when");
      }
      expect(say(rest(0, 0))).toContain("Nothing of this order");
    }
  });

  it("promises nothing of what is awaited in the place of another", () => {
    expect(restForCustomer({ remaining: 1, finished: 0, awaited: 1 })).toBe(
      "Nothing of this order is left with us. The order waits for another sensor in the place of the one that is not measured.",
    );
    expect(restForCustomer({ remaining: 2, finished: 0, awaited: 1 })).toMatch(
      /^The other one of this order follows when it is finished\. The order waits for another/,
    );
    expect(restOnNote({ remaining: 2, finished: 1, awaited: 1 })).toMatch(
      /finished already.*Awaited: another/,
    );
  });

  it("tells what lies here from what never came", () => {
    const few = { remaining: 9, finished: 0, missing: 6 };
    expect(restOnNote(few)).toBe("3 of this order; they follow when finished. 6 have not reached us.");
    expect(restForCustomer(few)).toBe(
      "3 of this order are still with us and follow when finished. 6 have not reached us.",
    );
    expect(restForCustomer({ ...few, finished: 1 })).toMatch(
      /still with us: 1 is finished already.*6 have not/,
    );
    expect(restForCustomer({ ...few, finished: 3 })).toContain("finished already, and follow with another");
    expect(restForCustomer({ remaining: 1, finished: 0, missing: 1 })).toBe(
      "Nothing of this order is left with us. 1 has not reached us.",
    );
    for (const say of [restForCustomer, restOnNote])
      expect(say({ remaining: 4, finished: 0, awaited: 1, missing: 2 })).toMatch(
        /1 of this order.* 2 have not reached us\. .*another sensor in the place of/,
      );
  });

  it("counts one as one", () => {
    expect(restOnNote(rest(1, 0))).toBe("1 of this order; it follows when finished.");
    expect(restOnNote(rest(1, 1))).toBe(
      "1 of this order, finished already; it follows with another delivery.",
    );
    expect(restForCustomer(rest(1, 1))).toBe(
      "The last one of this order is finished too and follows with another delivery.",
    );
  });
});
