import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { changePlace } from "@/lib/operations/custody/change-place";
import { disposeSensor } from "@/lib/operations/custody/dispose";
import { moveSensors } from "@/lib/operations/custody/move";
import { recordPlace } from "@/lib/operations/custody/record-place";
import { setRetention } from "@/lib/operations/custody/set-retention";
import { execute } from "@/lib/operations/execute";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { sensorCustodyView } from "@/lib/views/custody/sensor-custody";
import { storageView } from "@/lib/views/custody/storage";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, orderInput, received } from "../../support/orders";

let desk: FrontDesk;
let tags: readonly string[];
beforeAll(async () => {
  desk = await openFrontDesk();
  const order = await accepted(desk, orderInput(desk.northern.customerId));
  tags = await received(desk, order, "A1\nB2\nC3");
  const place = { code: "S-01", name: "Dry cabinet", conditions: "below 40 % relative humidity" };
  await execute(recordPlace, desk.frontDesk, place, clock);
});
afterAll(() => desk.close());

const move = (input: object) =>
  execute(
    moveSensors,
    desk.technician,
    { tags: tags[0]!, kind: "stored", placeCode: "S-01", ...input },
    clock,
  );
const fieldsOf = async (work: Promise<unknown>) => Object.keys((await refusalOf(work)).fields ?? {});
const kinds = async (tag: string) =>
  (await sensorCustodyView(desk.frontDesk, tag)).steps.map(({ label }) => label);

describe("custody", () => {
  it("begins with the receipt and follows the scanned labels onto a shelf, all or none", async () => {
    expect(await kinds(tags[0]!)).toEqual(["Received"]);
    expect(await fieldsOf(move({ tags: `${tags[0]} T-999999` }))).toEqual(["tags"]);
    expect(await fieldsOf(move({ placeCode: "S-99" }))).toEqual(["placeCode"]);
    expect(await fieldsOf(move({ tags: " " }))).toEqual(["tags"]);
    expect(await kinds(tags[0]!)).toEqual(["Received"]);
    // As a scanner types them: the address of the label's code, or the tag, one a line.
    await move({ tags: `https://laboratory.example/sensors/${tags[0]}\n${tags[1]?.toLowerCase()}` });
    expect(await sensorCustodyView(desk.frontDesk, tags[0]!)).toMatchObject({ where: "in S-01 Dry cabinet" });
    const { places } = await storageView(desk.frontDesk, clock());
    expect(places).toMatchObject([{ code: "S-01", tags: [tags[0], tags[1]] }]);
    expect((await auditSentences()).at(-1)).toBe(
      `custody.moved: recorded put into storage in S-01: ${tags[0]}, ${tags[1]}`,
    );
  });

  it("names the provider, and does not shelve what is away", async () => {
    expect(await fieldsOf(move({ kind: "to-provider", placeCode: "" }))).toEqual(["whom"]);
    await move({ kind: "to-provider", placeCode: "", whom: "Another laboratory (invented)" });
    expect(await fieldsOf(move({}))).toEqual(["tags"]);
    await move({ kind: "from-provider", placeCode: "", whom: "Another laboratory (invented)" });
    await move({});
    expect((await kinds(tags[0]!)).slice(2)).toEqual([
      "Sent to a provider",
      "Back from a provider",
      "Put into S-01 Dry cabinet",
    ]);
  });

  it("ends with the hand-over, or with a disposal on the customer's word", async () => {
    await execute(
      collectSensor,
      desk.frontDesk,
      { tag: tags[1]!, handedOver: "in-person", reason: "asked back" },
      clock,
    );
    expect(await fieldsOf(move({ tags: tags[1] }))).toEqual(["tags"]);
    const dispose = (instruction: string, actor = desk.frontDesk) =>
      execute(disposeSensor, actor, { tag: tags[2]!, instruction }, clock);
    expect(await fieldsOf(dispose(" "))).toEqual(["instruction"]);
    expect((await refusalOf(dispose("told", desk.technician))).code).toBe("not-permitted");
    await dispose("Nora North wrote so on 2026-03-03");
    expect(await sensorCustodyView(desk.frontDesk, tags[2]!)).toMatchObject({
      where: "disposed of",
      mayDispose: false,
    });
    expect(await fieldsOf(move({ tags: tags[2] }))).toEqual(["tags"]);
  });

  it("keeps places by their code, and shelves nothing in one that is no longer used", async () => {
    const again = { code: "S-01", name: "Another" };
    expect(await fieldsOf(execute(recordPlace, desk.frontDesk, again, clock))).toEqual(["code"]);
    const { id, version } = await inScope({ kind: "laboratory" }, (tx) => tx.storagePlace.findFirstOrThrow());
    const change = { id, version, name: "Dry cabinet", active: false };
    expect((await refusalOf(execute(changePlace, desk.technician, change, clock))).code).toBe(
      "not-permitted",
    );
    await execute(changePlace, desk.frontDesk, change, clock);
    expect((await refusalOf(execute(changePlace, desk.frontDesk, change, clock))).code).toBe(
      "changed-meanwhile",
    );
    expect(await fieldsOf(move({}))).toEqual(["placeCode"]);
  });

  it("is kept for the days the laboratory sets", async () => {
    await inScope({ kind: "laboratory" }, (tx) =>
      tx.laboratory.create({ data: { name: "L", addressLines: "1 Street", contact: "c" } }),
    );
    const { retention } = await storageView(desk.frontDesk, clock());
    expect(retention.days).toBe(30);
    const set = (days: number) =>
      execute(setRetention, desk.frontDesk, { version: retention.version, days }, clock);
    expect(await fieldsOf(set(0))).toEqual(["days"]);
    await set(14);
    expect((await storageView(desk.frontDesk, clock())).retention.days).toBe(14);
    expect((await refusalOf(set(15))).code).toBe("changed-meanwhile");
  });
});
