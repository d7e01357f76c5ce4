import { inScope } from "@/lib/data/in-scope";
import { conditionChoices } from "@/lib/domain/question/labels";
import { moveSensors } from "@/lib/operations/custody/move";
import { recordPlace } from "@/lib/operations/custody/record-place";
import { closeNonconformity } from "@/lib/operations/nonconformity/close";
import { enterNonconformity } from "@/lib/operations/nonconformity/enter";
import { openNonconformity } from "@/lib/operations/nonconformity/open";
import { stateEffect } from "@/lib/operations/nonconformity/state-effect";
import { tellCustomers } from "@/lib/operations/nonconformity/tell-customers";
import { acceptOrder } from "@/lib/operations/order/accept";
import { recordOrder } from "@/lib/operations/order/record";
import { askAboutHold } from "@/lib/operations/question/ask";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { accepted } from "./orders";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** Where the demonstration is reached unless told otherwise. */
const publicUrl = "http://127.0.0.1:3000";
const laboratory = { kind: "laboratory" } as const;

/** Storage places, and the certified sensors of one customer in one of them. */
const tellStorage = async ({ tell, at }: Teller, { desk, technician, customers }: Cast): Promise<void> => {
  for (const place of [
    { code: "S-01", name: "Incoming shelf", conditions: "room, out of the sun" },
    { code: "S-02", name: "Dry cabinet", conditions: "below 40 % relative humidity" },
  ])
    await tell(recordPlace, desk, at(60), place);
  const issued = await inScope(laboratory, (tx) =>
    tx.sensor.findMany({ where: { state: "issued", customerId: customers.brandt }, orderBy: { tag: "asc" } }),
  );
  await tell(moveSensors, technician, at(2, "11:00"), {
    tags: issued.map(({ tag }) => tag).join("\n"),
    kind: "stored",
    placeCode: "S-02",
    condition: "clean, as measured",
  });
};

/** A sensor that came with a bent tip: on hold since, with a question that waits for the customer. */
const tellHold = async ({ tell, at, day }: Teller, { desk, customers }: Cast): Promise<void> => {
  const { number } = await tell(recordOrder, desk, at(2, "09:30"), {
    customerId: customers.oakes,
    purchaseOrder: "OB/3410",
    lines: [
      {
        typeLetter: "K",
        construction: "Mineral-insulated, 3 mm, 500 mm long",
        protection: "metal-sheath",
        quantity: "1",
        setpoints: "300 500 700",
        tolerance: "none",
        temperatureUnit: "C",
      },
    ],
  });
  await tell(acceptOrder, desk, at(2, "09:45"), { number, version: 1, ...accepted });
  await tell(receiveSensors, desk, at(1, "10:05"), {
    orderNumber: number,
    position: 1,
    receivedOn: day(1),
    serials: "OB-3410-1",
    condition: "deviates",
    conditionNote: "the sheath is bent by about 30° near the tip",
    polarity: "ok",
    typeCheck: "ok",
  });
  const hold = await inScope(laboratory, (tx) =>
    tx.hold.findFirstOrThrow({ orderBy: { placedAt: "desc" }, select: { id: true } }),
  );
  await tell(askAboutHold, desk, at(1, "10:10"), {
    holdId: hold.id,
    text: "The sheath of this sensor came bent by about 30° near its tip. Bent back, it may read otherwise than before. How shall we go on?",
    choices: [...conditionChoices],
    publicUrl,
  });
};

const stepOf = async (number: string, text: string) => {
  const { version } = await inScope(laboratory, (tx) =>
    tx.nonconformity.findUniqueOrThrow({ where: { number }, select: { version: true } }),
  );
  return { number, version, text };
};

/** A complaint that was answered and closed, and a finding that is still open. */
const tellQuality = async (
  { tell, at }: Teller,
  { desk, technician, manager, customers }: Cast,
): Promise<void> => {
  const order = await inScope(laboratory, (tx) =>
    tx.order.findFirstOrThrow({ where: { customerId: customers.brandt }, orderBy: { recordedAt: "asc" } }),
  );
  const { number } = await tell(openNonconformity, desk, at(6, "09:20"), {
    kind: "complaint",
    subjectKind: "order",
    subjectName: order.number,
    title: "No word that the sensors had come",
    description: "The customer telephoned: they had heard nothing for two days after the delivery.",
  });
  const effect = await stepOf(number, "None: no result is concerned.");
  await tell(stateEffect, manager, at(6, "11:00"), { ...effect, deltaCelsius: 0 });
  for (const [kind, text] of [
    ["correction", "Told the customer by telephone on the same day that all sensors are here."],
    ["cause", "The desk wrote its messages by hand, at the end of the week."],
    [
      "corrective-action",
      "Sensors are now taken in on the platform on the day they come, and the customer sees it.",
    ],
  ] as const)
    await tell(enterNonconformity, desk, at(5, "10:00"), { ...(await stepOf(number, text)), kind });
  const answer = "You were right: a word was due on the day. Receipt now shows in the portal at once.";
  await tell(tellCustomers, manager, at(5, "14:00"), { ...(await stepOf(number, answer)), publicUrl });
  const looked = await stepOf(
    number,
    "Looked at the intake of the following days: each was taken in on its day.",
  );
  await tell(closeNonconformity, manager, at(1, "16:00"), looked);
  const { number: warm } = await tell(openNonconformity, technician, at(1, "08:50"), {
    kind: "nonconforming-work",
    subjectKind: "equipment",
    subjectName: "TH-01",
    title: "Room thermometer left beside the window",
    description: "It stood in the sun for a morning, so the room temperature of that morning reads high.",
  });
  // Examined, so that it keeps no run from its signature; what comes of it is still to be recorded.
  const examined = "None: nothing was measured on that morning, and the room temperature enters no result.";
  await tell(stateEffect, manager, at(1, "09:30"), { ...(await stepOf(warm, examined)), deltaCelsius: 0 });
};

/** What stands still, where sensors lie, and what was found. All of it invented. */
export const tellHolds = async (teller: Teller, cast: Cast): Promise<void> => {
  await tellStorage(teller, cast);
  await tellHold(teller, cast);
  await tellQuality(teller, cast);
};
