import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { changesSince } from "@/lib/domain/order/changes-since";
import { execute } from "@/lib/operations/execute";
import { repeatOrder } from "@/lib/operations/order/repeat";
import { recordPrice } from "@/lib/operations/price/record";
import { repeatOrderView } from "@/lib/views/order/repeat";
import { auditSentences, clock, type FrontDesk, openFrontDesk, refusalOf } from "../../support/front-desk";
import { accepted, lineInput, orderInput } from "../../support/orders";

let desk: FrontDesk;
let number: string;
beforeAll(async () => {
  desk = await openFrontDesk();
  number = await accepted(
    desk,
    orderInput(desk.northern.customerId, {
      lines: [
        lineInput,
        { ...lineInput, temperatureUnit: "F", setpoints: "600 1200.50", tolerance: "own", ownLimit: "5" },
      ],
    }),
  );
});
afterAll(() => desk.close());

const nextYear = () => new Date("2027-03-04T09:12:00Z");
const laboratory = { kind: "laboratory" } as const;
const wholeOrder = (which: string) =>
  inScope(laboratory, (tx) =>
    tx.order.findUniqueOrThrow({
      where: { number: which },
      include: {
        lines: { orderBy: { position: "asc" }, include: { setpoints: { orderBy: { position: "asc" } } } },
      },
    }),
  );
const asked = async (which: string) =>
  (await wholeOrder(which)).lines.map(
    ({ id: _id, orderId: _order, version: _version, setpoints, ...line }) => ({
      ...line,
      setpoints: setpoints.map(({ typed, celsius }) => [typed, celsius]),
    }),
  );

describe("repeating an order", () => {
  it("makes the same work once more, as it was typed, with what belongs to one time left open", async () => {
    expect((await refusalOf(execute(repeatOrder, desk.technician, { number }, nextYear))).code).toBe(
      "not-permitted",
    );
    expect(
      (await refusalOf(execute(repeatOrder, desk.frontDesk, { number: "O-1999-0001" }, nextYear))).code,
    ).toBe("not-found");
    const made = await execute(repeatOrder, desk.frontDesk, { number }, nextYear);
    expect(made).toEqual({ number: "O-2027-0001", changes: [] });
    expect(await asked(made.number)).toEqual(await asked(number));
    const { id } = await wholeOrder(number);
    expect(await wholeOrder(made.number)).toMatchObject({
      ...{ state: "recorded", origin: "repeat", repeatsOrderId: id, purchaseOrder: null, promisedOn: null },
      ...{
        decisionRule: "guarded",
        guardBandRatio: 1,
        decisionRuleAgreedBy: null,
        acceptedAt: null,
        version: 1,
      },
    });
    expect((await auditSentences()).slice(-2)).toEqual([
      "order.recorded: recorded order O-2027-0001: 2 lines, 6 sensors",
      `order.repeated: made order O-2027-0001 as ${number} was`,
    ]);
  });

  it("says what is not as it was", async () => {
    const price = {
      key: "calibration",
      title: "Point",
      per: "point",
      typeLetter: "",
      validFrom: "2026-03-04",
    } as const;
    await execute(recordPrice, desk.frontDesk, { ...price, amount: "20" }, clock);
    await execute(recordPrice, desk.frontDesk, { ...price, amount: "25", validFrom: "2027-01-01" }, clock);
    const view = await repeatOrderView(desk.frontDesk, number, nextYear());
    expect(view.changes).toEqual(["price by the list: was GBP 420.00, is GBP 525.00"]);
    const inside = { state: "inside", capability: "0.80 °C" } as const;
    expect(
      changesSince({
        procedure: { before: "Tube furnace, revision 1", now: "Tube furnace, revision 2" },
        points: [
          { position: 1, setpoint: "600 °C", before: inside, now: { state: "outside", capability: "" } },
          { position: 1, setpoint: "700 °C", before: inside, now: { ...inside, capability: "1.0 °C" } },
          { position: 1, setpoint: "800 °C", before: inside, now: inside },
        ],
        price: { before: 1, now: null, currency: "GBP" },
      }),
    ).toEqual([
      "procedure: was Tube furnace, revision 1, is Tube furnace, revision 2",
      "line 1 at 600 °C: was in scope, U at least 0.80 °C, is outside the scope",
      "line 1 at 700 °C: was in scope, U at least 0.80 °C, is in scope, U at least 1.0 °C",
      "price by the list: was GBP 0.01, is not wholly priced",
    ]);
  });
});
