import { canonical } from "@/lib/domain/audit/canonical";
import type { IntakeFinding } from "@/lib/domain/intake/findings";
import type { OrderLine } from "@/lib/domain/order/types";
import type { SensorAtIntake } from "@/lib/domain/sensor/schema";
import type { Tx } from "../in-scope";
import { nextNumber } from "../number/next-number";

type Intake = {
  readonly customerId: string;
  readonly line: OrderLine;
  /** YYYY-MM-DD */
  readonly receivedOn: string;
  readonly takenInById: string;
  readonly takenInAt: Date;
};

/** As taken in, with what the checks against the policy of that day found. */
export type AssessedSensor = SensorAtIntake & { readonly findings: readonly IntakeFinding[] };

export const sensorTag = (number: number): string => `T-${String(number).padStart(6, "0")}`;

/** Stores the sensors with their intake records, in the order given; each gets the laboratory's own tag. */
export const insertSensors = async (
  tx: Tx,
  intake: Intake,
  sensors: readonly AssessedSensor[],
): Promise<readonly { readonly id: string; readonly tag: string }[]> => {
  const { customerId, line } = intake;
  const stored: { id: string; tag: string }[] = [];
  for (const sensor of sensors) {
    const tag = sensorTag(await nextNumber(tx, "sensor"));
    const { id } = await tx.sensor.create({
      data: {
        tag,
        customerId,
        orderLineId: line.id,
        serial: sensor.serial,
        typeLetter: line.typeLetter,
        construction: line.construction,
        protection: line.protection,
        build: canonical(sensor.build),
      },
      select: { id: true },
    });
    await tx.intake.create({
      data: {
        sensorId: id,
        customerId,
        receivedOn: new Date(intake.receivedOn),
        condition: sensor.condition,
        conditionNote: sensor.conditionNote,
        loopResistanceOhm: sensor.loopResistanceOhm,
        insulationMegaohm: sensor.insulationMegaohm,
        polarity: sensor.polarity,
        typeCheck: sensor.typeCheck,
        grounding: sensor.grounding,
        findings: canonical(sensor.findings),
        takenInById: intake.takenInById,
        takenInAt: intake.takenInAt,
      },
    });
    stored.push({ id, tag });
  }
  return stored;
};
