import type { Found, GateCheck } from "../finding";
import { outerDiameterOf } from "../outer-diameter";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { celsius, millimetre } from "../words";

const source = "DAkkS-DKD-R 5-4, Annex B (block calibrators)";

const narrow = (subject: string, reason: string): Found => ({
  code: "bore-too-narrow",
  outcome: "breach",
  subject,
  reason,
  remedy: "Choose a wider bore or another configuration. Nothing is forced into a hot tube.",
  source: "the furnace's record",
});

const inBlock = (plan: GatePlan, policy: GatePolicy): readonly Found[] => {
  const rule = policy.boreClearance;
  const highest = Math.max(...plan.setpointsCelsius);
  const most = highest <= rule.belowCelsius ? rule.belowMillimetre : rule.aboveMillimetre;
  return plan.sensors.flatMap(({ tag, build }): readonly Found[] => {
    const place = plan.places.find((one) => one.tag === tag)?.place;
    const bore = plan.configuration.bores.find((one) => one.place === place)?.diameterMillimetre;
    const diameter = outerDiameterOf(build);
    if (bore === undefined || diameter === null) return [];
    const clearance = bore - diameter;
    if (clearance < 0)
      return [narrow(tag, `${millimetre(diameter)} do not go into a bore of ${millimetre(bore)}.`)];
    return clearance <= most
      ? []
      : [
          {
            code: "bore-clearance",
            outcome: "breach",
            subject: tag,
            reason: `${millimetre(clearance)} of air stand about it in its bore; at ${celsius(highest)} at most ${millimetre(most)}.`,
            remedy: "Choose a narrower bore or put a sleeve about it.",
            source: rule.source,
          },
        ];
  });
};

/** In a bare tube the cross-sections of the bundle have to find room in that of the tube: Σ d² ≤ D². */
const inTube = ({ sensors, configuration }: GatePlan): readonly Found[] => {
  const known = sensors.flatMap(({ tag, build }) => {
    const diameter = outerDiameterOf(build);
    return diameter === null ? [] : [{ tag, diameter }];
  });
  const tube = configuration.tubeMillimetre;
  const squares = known.reduce((sum, { diameter }) => sum + diameter * diameter, 0);
  return squares <= tube * tube
    ? []
    : [
        narrow(
          "",
          `The bundle cannot go into the tube of ${millimetre(tube)}: its cross-sections add up to more.`,
        ),
      ];
};

export const boreFit = {
  code: "bore-clearance",
  heading: "immersion",
  fine: "Everything whose diameter is known fits its bore, without too much air about it.",
  source,
  assess: (plan: GatePlan, policy: GatePolicy) =>
    plan.configuration.kind === "equalising-block" ? inBlock(plan, policy) : inTube(plan),
} as const satisfies GateCheck;
