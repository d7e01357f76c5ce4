import { differenceOf } from "../parts/difference";
import { isSameSetpoint } from "../parts/same-setpoint";
import type { Draft } from "./catalogue/message";
import { setpointText } from "./compose-rows";
import type { CertificateContent } from "./content";
import type { DerivedMember } from "./derived-member";
import { changeStatement } from "./texts-of-parts";

type Changes = readonly Draft<NonNullable<CertificateContent["changes"]>[number]>[];

const measuredOf = (members: readonly DerivedMember[], kind: DerivedMember["kind"]) =>
  members
    .filter((member) => member.kind === kind)
    .flatMap(({ parts }) => parts.points.flatMap((point) => (point.state === "measured" ? [point] : [])));

/** From as received to after annealing, of each sensor that has both, where both were measured. */
export const composeChanges = (members: readonly DerivedMember[]): Changes =>
  [...new Set(members.map(({ sensorId }) => sensorId))].flatMap((sensorId): Changes => {
    const own = members.filter((member) => member.sensorId === sensorId);
    const first = own[0];
    const before = measuredOf(own, "as-received");
    const rows = measuredOf(own, "after-anneal").flatMap((after) => {
      const earlier = before.find((one) => isSameSetpoint(one.nominalCelsius, after.nominalCelsius));
      if (!earlier || !first) return [];
      const { printed } = differenceOf(earlier, after);
      return [
        {
          setpoint: setpointText(first.parts.order, after.nominalCelsius),
          changeCelsius: printed.celsius,
          expandedCelsius: printed.expandedCelsius,
        },
      ];
    });
    return first && rows.length > 0
      ? [{ tag: first.parts.sensor.tag, rows, statement: changeStatement }]
      : [];
  });
