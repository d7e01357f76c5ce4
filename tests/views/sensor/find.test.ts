import { afterAll, beforeAll, expect, it } from "vitest";
import { findSensorView } from "@/lib/views/sensor/find";
import { type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

it("finds a sensor by its label, its tag or its serial in either case; all of them where a serial came twice", async () => {
  const first = await accepted(desk, orderInput(desk.northern.customerId));
  const second = await accepted(desk, orderInput(desk.southern.customerId));
  const [a, b] = await received(desk, first, "Ab 12\n100%_x");
  const [again] = await received(desk, second, "Ab 12");
  const tags = async (typed: string) =>
    (await findSensorView(desk.technician, typed)).sensors.map(({ tag }) => tag);
  expect(await tags(a!)).toEqual([a]);
  expect(await tags(`https://calibration.example/sensors/${b}`)).toEqual([b]);
  expect(await tags("Ab 12")).toEqual([again, a]);
  expect(await tags("aB 12")).toEqual([again, a]);
  expect(await tags("100%_x")).toEqual([b]);
  expect(await tags("100%_X")).toEqual([b]);
  // A serial is no pattern.
  for (const nothing of ["%", "100%", "1__%_x", "T-999999", "", "A\u200bb 12"])
    expect(await tags(nothing)).toEqual([]);
});

it("is for those who work here", async () => {
  expect(await refusalOf(findSensorView(desk.northern.actor, "A1"))).toMatchObject({ code: "not-permitted" });
});
