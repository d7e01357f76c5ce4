import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { agreementOf, onOneEnd } from "@/lib/domain/order/decide-roll-ends";
import type { ReportForm } from "@/lib/domain/order/options";
import type { Tx } from "../in-scope";
import type { ReviewSensor } from "../review/load-review-run";
import { loadRollsOf } from "../roll/load-rolls";

/** Each member told by what the customer agreed that of its roll this end is reported alone, where it is. */
export const withOneEnds = async (
  tx: Tx,
  { order }: Pick<ReviewSensor["line"], "order">,
  report: ReportForm,
  members: readonly BundleMember[],
): Promise<readonly BundleMember[]> => {
  const rolls = await loadRollsOf(tx, order);
  const ids = [...new Set(members.map(({ sensorId }) => sensorId))];
  const agreed = new Map(
    onOneEnd(rolls, ids, report).flatMap((roll) => {
      const agreement = agreementOf(rolls, roll);
      return agreement ? roll.tags.map((tag) => [tag, agreement] as const) : [];
    }),
  );
  return members.map((member) => {
    const agreement = agreed.get(member.parts.sensor.tag);
    return agreement
      ? {
          ...member,
          parts: { ...member.parts, oneEndAgreed: `${agreement.text} (${agreement.agreedWith})` },
        }
      : member;
  });
};
