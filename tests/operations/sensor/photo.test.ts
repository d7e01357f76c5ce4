import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { execute } from "@/lib/operations/execute";
import { addPhoto } from "@/lib/operations/sensor/add-photo";
import { photoView } from "@/lib/views/sensor/photo";
import { sensorView } from "@/lib/views/sensor/sensor";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";
import { jpeg } from "../../support/photos";

let desk: FrontDesk;
let tag: string;
beforeAll(async () => {
  desk = await openFrontDesk();
  const number = await accepted(desk, orderInput(desk.northern.customerId));
  tag = (await received(desk, number, "A1"))[0]!;
});
afterAll(() => desk.close());

const add = (bytes: Uint8Array, actor = desk.frontDesk, caption = "Dent at 40 mm") =>
  execute(addPhoto, actor, { tag, caption, bytes }, clock);
const count = () => inScope({ kind: "laboratory" }, (tx) => tx.sensorPhoto.count());

it("keeps a photo without where it was taken, shows it to staff and its own customer, and says so in the log", async () => {
  const { id } = await add(jpeg(640, 480));
  for (const actor of [desk.technician, desk.northern.actor]) {
    const photo = await photoView(actor, id);
    expect(photo).toMatchObject({ mediaType: "image/jpeg", fileName: `${tag}.jpg` });
    expect(Buffer.from(photo.bytes).toString("latin1")).not.toContain("GPS");
  }
  expect((await sensorView(desk.technician, tag)).photos).toEqual([
    { id, width: 640, height: 480, caption: "Dent at 40 mm", takenAt: clock().toISOString() },
  ]);
  expect((await auditSentences()).at(-1)).toMatch(
    /^sensor.photo-added: added a photo of sensor T-\d{6} \(640 × 480/,
  );
});

it("is not there for another customer, nor by a made-up name", async () => {
  const { id } = await add(jpeg(10, 10));
  for (const [actor, which] of [
    [desk.southern.actor, id],
    [desk.technician, "../../etc/passwd"],
    [desk.technician, "00000000-0000-4000-8000-000000000000"],
  ] as const)
    expect(await refusalOf(photoView(actor, which))).toMatchObject({ code: "not-found" });
});

it("is refused at its field where it is no image, and from those who take nothing in; nothing is kept", async () => {
  const before = [await count(), await auditSentences()];
  expect(await refusalOf(add(new TextEncoder().encode("<svg/>")))).toMatchObject({
    code: "invalid",
    fields: { photo: expect.stringContaining("no JPEG, PNG or WebP") },
  });
  expect((await refusalOf(add(jpeg(10, 10), desk.frontDesk, "a\u202eb"))).fields?.caption).toContain(
    "U+202E",
  );
  for (const actor of [desk.signatory, desk.northern.actor])
    expect(await refusalOf(add(jpeg(10, 10), actor))).toMatchObject({ code: "not-permitted" });
  expect([await count(), await auditSentences()]).toEqual(before);
});
