import { afterAll, beforeAll, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { printLabels } from "@/lib/operations/sensor/print-labels";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";
import { pdfPages } from "../../support/pdf-text";

let desk: FrontDesk;
beforeAll(async () => {
  desk = await openFrontDesk();
});
afterAll(() => desk.close());

const publicOrigin = "https://calibration.example";

it("prints one label a sensor, without the customer's name, each time with its audit events", async () => {
  const orderNumber = await accepted(desk, orderInput(desk.northern.customerId));
  const tags = await received(desk, orderNumber, "A1\nB2");
  const print = (tag: string) =>
    execute(printLabels, desk.frontDesk, { orderNumber, tag, publicOrigin }, clock);
  const pages = await pdfPages((await print("")).bytes);
  expect(pages).toHaveLength(2);
  expect(pages[1]).toContain(tags[1]);
  expect(pages.join(" ")).not.toContain("Northern");
  await print(tags[0]!);
  expect((await auditSentences()).slice(-3)).toEqual([
    `sensor.label-printed: printed the label of sensor ${tags[0]}`,
    `sensor.label-printed: printed the label of sensor ${tags[1]}`,
    `sensor.label-printed: printed the label of sensor ${tags[0]} again`,
  ]);
  const onSheet = (startAt: string) =>
    execute(
      printLabels,
      desk.frontDesk,
      { orderNumber, tag: "", publicOrigin, layout: "a4-3x8", startAt },
      clock,
    );
  expect(await pdfPages((await onSheet("23")).bytes)).toHaveLength(1);
  expect(await pdfPages((await onSheet("24")).bytes)).toHaveLength(2);
  const before = await auditSentences();
  expect((await refusalOf(onSheet("25"))).fields?.startAt).toContain(
    "24 labels: write a whole number from 1 to 24",
  );
  expect((await refusalOf(onSheet("0"))).fields?.startAt).toContain("from 1");
  expect(await auditSentences()).toEqual(before);
  expect(await refusalOf(print("T-999999"))).toMatchObject({ code: "not-found" });
});

it("is for those who take sensors in", async () => {
  const input = { orderNumber: "O-2026-0001", publicOrigin };
  for (const actor of [desk.signatory, desk.northern.actor])
    expect(await refusalOf(execute(printLabels, actor, input, clock))).toMatchObject({
      code: "not-permitted",
    });
});
