import { expect, it } from "vitest";
import { lotPart, lotPartText } from "@/lib/domain/certificate/lot-part";
import { decideWholeLot, type LotSensor, openLots } from "@/lib/domain/certificate/open-lots";

const sensor = (id: string, change: Partial<LotSensor> = {}): LotSensor => ({
  ...{ id, tag: `T-${id}`, lineId: "a", isPerLot: true, isDone: false, obstacle: "" },
  ...change,
});

it("covers what is open of each line in the run, and names what of it stands in the way", () => {
  const held = sensor("3", { obstacle: "It is on hold." });
  expect(
    openLots([
      sensor("1"),
      sensor("2", { isDone: true }),
      held,
      sensor("4", { lineId: "b" }),
      sensor("5", { lineId: "c", isPerLot: false }),
    ]),
  ).toEqual([
    { lineId: "a", sensors: [sensor("1")], leftOut: [held] },
    { lineId: "b", sensors: [sensor("4", { lineId: "b" })], leftOut: [] },
  ]);
});

it("is signed for whole", () => {
  expect(decideWholeLot([sensor("1"), sensor("2")], ["2", "1"]).ok).toBe(true);
  expect(decideWholeLot([sensor("1"), sensor("2")], ["1"])).toMatchObject({
    refusal: { message: expect.stringContaining("T-2 of this run would not be on it") },
  });
});

it("says which part of the lot it is; an amendment is no part of its own", () => {
  expect(lotPartText(lotPart([], 3, 3))).toBe("one certificate for the lot of 3");
  expect(lotPartText(lotPart([], 10, 14))).toBe("part 1 of the lot: 10 of 14 sensors");
  const first = ["x", "y"];
  expect(lotPart([first, first.toReversed()], 4, 14)).toEqual({ part: 2, covers: 4, of: 14 });
});
