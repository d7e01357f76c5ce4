import { describe, expect, it } from "vitest";
import { nextOfSensor } from "@/lib/domain/sensor/thread";

describe("what is next of a sensor", () => {
  const answered = { isToBeReturned: false, isAnswerOpen: false };

  it("is the technician's turn only where nothing holds it", () => {
    expect(nextOfSensor("received")).toBe("a technician loads it.");
    expect(nextOfSensor("received", [answered])).toContain("ends the hold");
    expect(nextOfSensor("received", [answered, { ...answered, isAnswerOpen: true }])).toContain(
      "customer answers",
    );
    expect(nextOfSensor("received", [{ ...answered, isToBeReturned: true }])).toContain("back unmeasured");
    expect(nextOfSensor("issued", [answered])).toBe("the front desk hands it back.");
    expect(nextOfSensor("issued", [], "completed", true)).toContain("its certificate is withdrawn");
    expect(nextOfSensor("collected", [], "completed", true)).toBe("nothing is left to do here.");
  });
});
