import { acceptOrder } from "@/lib/operations/order/accept";
import { raiseDifference } from "@/lib/operations/order/difference-raise";
import { recordOrder } from "@/lib/operations/order/record";
import { requestWorkInPortal } from "@/lib/operations/portal/request-work";
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
  readonly language: "en" | "en-de";
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
      language: story.language,
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

/** Orders that wait: one to be reviewed, one for an audited customer with a difference open, one requested in the portal. */
const tellAtTheDesk = async ({ tell, at }: Teller, { desk, customers, buyers }: Cast): Promise<void> => {
  await tell(recordOrder, desk, at(1, "15:40"), {
    customerId: customers.oakes,
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
        groupName: "Lehr, zone 2",
        sets: "both",
        annealCelsius: "450",
        annealHours: "2",
        tableStep: "50",
        budget: true,
        evidence: true,
      },
    ],
  });
  const audited = await tell(recordOrder, desk, at(1, "16:05"), {
    customerId: customers.brandt,
    purchaseOrder: "PO-99204",
    urgency: "express",
    ruleSet: "audited-heat-treatment",
    decisionRule: "guarded",
    guardBandRatio: "1",
    lines: [
      {
        typeLetter: "K",
        construction: "Fibreglass-insulated pair, 0.5 mm, cut from the roll",
        protection: "bare-wire",
        quantity: "2",
        setpoints: "700 950 1200 1450 1700",
        tolerance: "own",
        ownLimit: "2",
        temperatureUnit: "F",
        useFrom: "700",
        useTo: "1700",
        intervalChoice: "agreed",
        largestInterval: "250",
        groupName: "Furnace 3, load thermocouples",
        report: "per-lot",
        countingRule: "earlier-counts-if-they-agree",
      },
    ],
  });
  await tell(raiseDifference, desk, at(1, "16:10"), {
    number: audited.number,
    text: "± 2 °F by guarded acceptance is asked; the U to expect leaves nothing that could pass. Offered: their standard’s own class, or simple acceptance.",
  });
  await tell(requestWorkInPortal, buyers.oakes, at(1, "18:20"), {
    purchaseOrder: "OB/3417",
    wishes: "Two of the four are needed back within the week, if that can be done.",
    kinds: [
      {
        typeLetter: "N",
        construction: "Mineral-insulated, 3 mm, 1 m long, miniature plug",
        protection: "metal-sheath",
        quantity: "4",
        temperatureUnit: "C",
        setpoints: "400 700 1000",
        tolerance: "2",
        groupName: "Spare set",
      },
    ],
  });
};

/** The two orders that share the furnace, and those that are still at the desk. */
export const tellOrders = async (teller: Teller, cast: Cast): Promise<Map<string, string>> => {
  const brandt = await tellOrder(teller, cast, {
    customer: "A",
    customerId: cast.customers.brandt,
    purchaseOrder: "PO-99120",
    agreedBy: "Ines Höfle",
    rule: { decisionRule: "guarded", guardBandRatio: "1" },
    language: "en-de",
  });
  const oakes = await tellOrder(teller, cast, {
    customer: "B",
    customerId: cast.customers.oakes,
    purchaseOrder: "OB/3381",
    agreedBy: "Teodor Lisowski",
    rule: { decisionRule: "simple", guardBandRatio: "" },
    language: "en",
  });
  await tellAtTheDesk(teller, cast);
  return new Map([...brandt, ...oakes]);
};
