import { canonical } from "@/lib/domain/audit/canonical";
import type { IntakeFinding } from "@/lib/domain/intake/findings";
import type { OrderLine } from "@/lib/domain/order/types";
import type { SensorAtIntake } from "@/lib/domain/sensor/schema";
import type { Tx } from "../in-scope";
import { nextNumbers } from "../number/next-number";

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
  const numbers = await nextNumbers(tx, "sensor", sensors.length);
  const tagged = sensors.map((sensor, index) => ({ ...sensor, tag: sensorTag(numbers[index]!) }));
  const rows = await tx.sensor.createManyAndReturn({
    data: tagged.map(({ tag, serial, build }) => ({
      tag,
      customerId,
      orderLineId: line.id,
      serial,
      typeLetter: line.typeLetter,
      construction: line.construction,
      protection: line.protection,
      build: canonical(build),
    })),
    select: { id: true, tag: true },
  });
  const idOf = new Map(rows.map(({ id, tag }) => [tag, id]));
  const stored = tagged.map(({ tag }) => ({ id: idOf.get(tag) as string, tag }));
  await tx.intake.createMany({
    data: tagged.map((sensor, index) => ({
      sensorId: stored[index]!.id,
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
    })),
  });
  return stored;
};
