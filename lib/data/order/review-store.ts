import { canonical } from "@/lib/domain/audit/canonical";
import type { CapabilityAnswer } from "@/lib/domain/order/capability";
import { ReviewAnswers } from "@/lib/domain/order/review";
import type { Tx } from "../in-scope";

type NewReview = {
  readonly orderId: string;
  readonly customerId: string;
  readonly occasion: "acceptance" | "change";
  readonly answers: ReviewAnswers;
  /** What the platform answered then: frozen, since standards and characterisations move on. */
  readonly capability: readonly CapabilityAnswer[];
  /** The version that was reviewed. */
  readonly orderVersion: number;
  readonly reviewedById: string;
  readonly reviewedAt: Date;
};

/** The order is locked by whoever reviews it, so that no two take one number. Answers the number. */
export const insertReview = async (tx: Tx, review: NewReview): Promise<number> => {
  const sequence = (await tx.orderReview.count({ where: { orderId: review.orderId } })) + 1;
  await tx.orderReview.create({
    data: {
      ...review,
      sequence,
      answers: canonical(review.answers),
      capability: canonical(review.capability.map((answer) => ({ ...answer, help: [...answer.help] }))),
    },
  });
  return sequence;
};

/** Reviews of an order, the first one first. What the platform answered is read back as it was written then. */
export const loadReviews = async (tx: Tx, orderId: string) => {
  const rows = await tx.orderReview.findMany({ where: { orderId }, orderBy: { sequence: "asc" } });
  return rows.map((row) => ({
    sequence: row.sequence,
    occasion: row.occasion,
    answers: ReviewAnswers.parse(JSON.parse(row.answers)),
    capability: JSON.parse(row.capability) as readonly CapabilityAnswer[],
    orderVersion: row.orderVersion,
    reviewedById: row.reviewedById,
    reviewedAt: row.reviewedAt,
  }));
};
