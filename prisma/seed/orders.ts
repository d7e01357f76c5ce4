import { acceptOrder } from "@/lib/operations/order/accept";
import { recordOrder } from "@/lib/operations/order/record";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { type SimulatedSensor, sensors } from "@/lib/station/simulation/scenario";
import type { Cast } from "./people";
import type { Teller } from "./teller";

const everySetpoint = "300 500 700 900 1100";

/** Like sensors of one customer make one line. */
type Like = [SimulatedSensor, ...SimulatedSensor[]];

const linesOf = (customer: SimulatedSensor["customer"]): Like[] => {
  const lines = new Map<string, Like>();
  for (const sensor of sensors.filter((candidate) => candidate.customer === customer)) {
    const key = `${sensor.type} ${sensor.toleranceClass} ${sensor.construction}`;
    const known = lines.get(key);
    lines.set(key, known ? [...known, sensor] : [sensor]);
  }
  return [...lines.values()];
};

const checksOf = (type: SimulatedSensor["type"]) =>
  type === "S"
    ? { loopResistanceOhm: "1.9", insulationMegaohm: "" }
    : { loopResistanceOhm: "11.2", insulationMegaohm: "900" };

/** The four questions of the contract review, answered. */
export const accepted = {
  requirementsUnderstood: true,
  capabilityAndResources: true,
  externalProviders: "none" as const,
  methodSuitable: true,
  toldCustomer: true,
};

type OrderStory = {
  readonly customer: SimulatedSensor["customer"];
  readonly customerId: string;
  readonly purchaseOrder: string;
  readonly agreedBy: string;
  /** Each customer agreed a rule of their own; both stand in one load. */
  readonly rule: { readonly decisionRule: "guarded" | "simple"; readonly guardBandRatio: string };
};

/** One order of the full run: recorded, accepted, its sensors taken in. Returns each serial's tag. */
const tellOrder = async (
  { tell, at, day }: Teller,
  { desk }: Cast,
  story: OrderStory,
): Promise<Map<string, string>> => {
  const lines = linesOf(story.customer);
  const { number } = await tell(recordOrder, desk, at(12, "10:20"), {
    customerId: story.customerId,
    purchaseOrder: story.purchaseOrder,
    ...story.rule,
    decisionRuleAgreedBy: story.agreedBy,
    decisionRuleAgreedOn: day(12),
    lines: lines.map((like) => ({
      typeLetter: like[0].type,
      construction: like[0].construction,
      protection: like[0].protection,
      quantity: String(like.length),
      setpoints: everySetpoint,
      tolerance: like[0].toleranceClass,
      temperatureUnit: "C" as const,
    })),
  });
  await tell(acceptOrder, desk, at(12, "11:00"), { number, version: 1, ...accepted });
  const tags = new Map<string, string>();
  for (const [index, line] of lines.entries()) {
    const serials = line.map((sensor) => sensor.serial);
    const { tags: given } = await tell(receiveSensors, desk, at(8, "14:10"), {
      orderNumber: number,
      position: index + 1,
      receivedOn: day(8),
      serials: serials.join("\n"),
      condition: "as-described",
      polarity: "ok",
      typeCheck: "ok",
      ...checksOf(line[0].type),
    });
    serials.forEach((serial, at) => {
      tags.set(serial, given[at] ?? "");
    });
  }
  return tags;
};

/** The two orders that share the furnace, and one that is still at the desk. */
export const tellOrders = async (teller: Teller, cast: Cast): Promise<Map<string, string>> => {
  const brandt = await tellOrder(teller, cast, {
    customer: "A",
    customerId: cast.customers.brandt,
    purchaseOrder: "PO-99120",
    agreedBy: "Ines Höfle",
    rule: { decisionRule: "guarded", guardBandRatio: "1" },
  });
  const oakes = await tellOrder(teller, cast, {
    customer: "B",
    customerId: cast.customers.oakes,
    purchaseOrder: "OB/3381",
    agreedBy: "Teodor Lisowski",
    rule: { decisionRule: "simple", guardBandRatio: "" },
  });
  await teller.tell(recordOrder, cast.desk, teller.at(1, "15:40"), {
    customerId: cast.customers.oakes,
    purchaseOrder: "OB/3402",
    lines: [
      {
        typeLetter: "N",
        construction: "Mineral-insulated, 6 mm, alloy sheath, grounded junction",
        protection: "metal-sheath",
        quantity: "4",
        setpoints: "600 1200 1650 2000",
        tolerance: "none",
        temperatureUnit: "F",
      },
    ],
  });
  return new Map([...brandt, ...oakes]);
};
