import { hex } from "@/lib/data/hex";
import { loadIntakePolicy } from "@/lib/data/intake/intake-policy-store";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadRolls } from "@/lib/data/roll/load-rolls";
import { sensorsStillHere } from "@/lib/data/sensor/still-here";
import { sha256 } from "@/lib/data/sha256";
import { assessIntake } from "@/lib/domain/intake/assess-intake";
import { listRefusal } from "@/lib/domain/intake/file-refusal";
import { failedChecks } from "@/lib/domain/intake/findings";
import { groupByLine } from "@/lib/domain/intake/group-by-line";
import { sharedAndOwn } from "@/lib/domain/intake/preview";
import { countedSensors } from "@/lib/domain/order/counted-sensors";
import type { RollsOfOrder } from "@/lib/domain/order/decide-roll-ends";
import { onlyOneEnd } from "@/lib/domain/order/roll-ends";
import type { Order } from "@/lib/domain/order/types";
import { Refused } from "@/lib/domain/refusal";
import { decideReceipt } from "@/lib/domain/sensor/rules";
import { stillHereAs } from "@/lib/domain/sensor/still-here";
import type { Actor } from "@/lib/domain/staff/actor";
import { readSensorFile } from "@/lib/files/sensor-list/read-sensor-file";
import { answer, found } from "../view";

type Asked = { readonly number: string; readonly position: number | null; readonly bytes: Uint8Array };

const demandRoom = (order: Order, groups: ReturnType<typeof groupByLine>): void => {
  const received = order.lines.flatMap(({ position, sensors }) =>
    sensors.map(({ serial, tag, isReplaced }) => ({ serial, tag, position, isReplaced })),
  );
  const problems = groups.flatMap(({ position, sensors }) => {
    const { quantity } = order.lines.find((line) => line.position === position)!;
    const decided = decideReceipt(order.state, { position, quantity, received }, sensors);
    return decided.ok ? [] : [decided.refusal.fields?.serials ?? decided.refusal.message];
  });
  if (problems.length > 0) throw new Refused(listRefusal(problems));
};

type Listed = ReturnType<typeof groupByLine>[number]["sensors"];

/** As the order asks for the other end afterwards: what a provider measures stands as an end, and waits for none. */
const oneEndIn = (order: Order, sensors: Listed, { ruleSet, pieces }: RollsOfOrder): readonly string[] => {
  if (ruleSet === "none") return [];
  const away = order.lines.filter(({ marks }) => marks.providerId !== null).map(({ position }) => position);
  const isAway = ({ position }: Listed[number]) => away.includes(position);
  return onlyOneEnd(
    sensors.filter((sensor) => !isAway(sensor)).map(({ build }) => build),
    [
      ...sensors.filter(isAway).map(({ build }) => build),
      ...pieces.filter(({ standing }) => standing !== "gone"),
    ],
  );
};

/** What a list would take in: how many for which line, what they share, what differs, what is outside the limits. Nothing is stored. */
export const intakePreviewView = (actor: Actor, { number, position, bytes }: Asked) =>
  answer(actor, "sensor.receive", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const read = readSensorFile(bytes, order.lines, position);
    if (!read.ok) throw new Refused(listRefusal(read.problems));
    const groups = groupByLine(read.sensors);
    demandRoom(order, groups);
    const known = await sensorsStillHere(tx, order);
    const { policy } = await loadIntakePolicy(tx);
    return {
      format: read.format,
      sha256: hex(sha256(bytes)),
      count: read.sensors.length,
      /** Under a rule set: rolls of which one end alone would be here. */
      oneEnd: oneEndIn(order, read.sensors, await loadRolls(tx, order)),
      groups: groups.map(({ position: at, sensors }) => {
        const line = order.lines.find((each) => each.position === at)!;
        const { shared, own } = sharedAndOwn(sensors);
        return {
          position: at,
          typeLetter: line.typeLetter,
          construction: line.construction,
          toCome: line.quantity - countedSensors(line.sensors).length,
          shared,
          sensors: sensors.map((sensor, index) => ({
            row: sensor.line,
            serial: sensor.serial,
            own: own[index] ?? [],
            stillHereAs: stillHereAs(known, { serial: sensor.serial, typeLetter: line.typeLetter }),
            outside: failedChecks(assessIntake(policy, line.typeLetter, sensor)),
          })),
        };
      }),
    };
  });

export type IntakePreview = Awaited<ReturnType<typeof intakePreviewView>>;
